import type { ConductorFeature, ConductorLayer, Design, Layer, Material } from '../design'
import { readEnds } from '../materials'
import { roundToDigits } from '../numerics'
import type { MissingInput, ZoneLayerResult, ZoneResult } from '../results'
import type { LineConductor, LineSection } from '../signals'
import { inSentence } from '../units'

/** What a line's cross-section is read from. */
export interface LineGround {
  readonly design: Design
  readonly findMaterial: (materialId: string) => Material | null
  /** What stands between the conductors of a layer in a zone; null is air. */
  readonly findFill: (zoneId: string, layerId: string) => Material | null
  /** The hatch that artwork draws on a plane in a zone; null where none was measured. */
  readonly findDrawnHatch: (zoneId: string, layerId: string) => DrawnHatch | null
}

/** Bars of a hatched plane as they are drawn. */
interface DrawnHatch {
  readonly barMm: number
  readonly pitchMm: number
  /** Share of the area that the openings take. */
  readonly openFraction: number
}

/** An end of what tolerances and constants allow, or the middle. `low` is the end with the least impedance. */
export type Corner = 'low' | 'nominal' | 'high'

/** A line in a zone, as far as the construction says. */
export type ZoneLine =
  | {
      readonly kind: 'solvable'
      /**
       * @param distanceTimes  how many times as thick as stated the dielectrics to the reference are
       * @param coverTimes     the same of the dielectrics on the other side; 0 leaves the copper bare
       */
      readonly makeSection: (
        corner: Corner,
        widthMm: number,
        distanceTimes?: number,
        coverTimes?: number,
      ) => LineSection
      /** With a second line beside it, upright, on another conductor layer of the section; null where that layer is not in it. */
      readonly addLine: (layerId: string, widthMm: number, ownWidthMm: number, offsetMm: number) => LineSection | null
      /** Dielectrics to the reference together. */
      readonly distanceUm: number
      /** Dielectrics on the other side together, up to air or the next plane; 0 is bare. */
      readonly coverUm: number
      /** Another reading of the planes, under which the impedance is higher; null where there is one reading alone. */
      readonly open: {
        readonly because: string
        readonly says: string
        readonly makeSection: (widthMm: number) => LineSection
        /** Share of the plane that is copper, where it is hatched. */
        readonly coverageFraction: number | null
      } | null
      readonly remarks: readonly string[]
    }
  | { readonly kind: 'missing'; readonly missing: readonly MissingInput[] }
  | { readonly kind: 'unclear'; readonly because: string; readonly decidedBy: string }

const AIR = 1

/**
 * How far an etched conductor is taken to be narrower or wider than drawn: shops that agree on an impedance hold about a tenth of the width and
 * compensate the artwork. Common practice, no published source.
 */
const ETCHED_WIDTH_TOLERANCE_PCT = 10
export const ETCHED_WIDTH_CAUTION = `The range takes the etched width at ±${ETCHED_WIDTH_TOLERANCE_PCT} % and its sides between upright and sloped: agree on both with the fabricator.`

/** Conductors beside a slot in a plane, in heights of the section: farther off they add nothing that shows. */
const SIDE_PLANE_HEIGHTS = 12

/**
 * The cross-section of a conductor with a stated impedance in one zone: its own copper as finished, the dielectrics to its reference layer,
 * and what lies on its other side, up to the next plane or to air.
 *
 * Rules  A plane, and a shield film, end the section; conductors on other signal layers are left out, and said so. Dielectrics lie flat: a
 *        cover that follows the conductors is taken as its adhesive filling the gaps. Range: thicknesses and permittivities at the end that
 *        lowers or raises the impedance, all together; the width by the tolerance of etching; sides upright at the low end, and the narrow face
 *        less by the copper's thickness at the high one (our choice: no etch factor by thickness is published).
 */
export function describeZoneLine(
  conductor: ConductorFeature & { readonly widthMm: number },
  position: number,
  zone: ZoneResult,
  ground: LineGround,
): ZoneLine {
  const { layers } = zone
  const at = layers.findIndex(({ layerId }) => layerId === conductor.layerId)
  const referenceAt = layers.findIndex(({ layerId }) => layerId === conductor.impedance.referenceLayerId)
  const own = layers[at]
  const reference = layers[referenceAt]
  if (own === undefined || reference === undefined || !hasCopper(reference)) {
    return unclear(
      `the reference layer has no copper in ${zone.name}`,
      'let the reference go on there, or name another',
    )
  }
  const referenceLayer = findConductorLayer(ground, reference.layerId)
  if (referenceLayer === null || referenceLayer.role === 'signal') {
    return unclear(`${reference.name} carries no plane`, 'name a plane as reference')
  }
  const drawnHatch = ground.findDrawnHatch(zone.zoneId, reference.layerId)
  if (drawnHatch === null && (referenceLayer.planePattern === null || referenceLayer.planePattern === 'none')) {
    return {
      kind: 'missing',
      missing: [
        {
          path: ['construction', 'layers', layerPosition(ground, reference.layerId), 'planePattern'],
          label: `pattern of the plane on ${reference.name}`,
        },
      ],
    }
  }
  if (referenceLayer.planePattern === 'split') {
    const { referenceUnbroken } = conductor.impedance
    if (referenceUnbroken === null) {
      return {
        kind: 'missing',
        missing: [
          {
            path: ['features', 'conductors', position, 'impedance', 'referenceUnbroken'],
            label: `whether the split plane on ${reference.name} goes on without a gap under ${conductor.name}`,
          },
        ],
      }
    }
    if (!referenceUnbroken) {
      return unclear(
        `a gap of the split plane on ${reference.name} runs under ${conductor.name}`,
        'lead it over unbroken plane, or close the gap under it',
      )
    }
  }
  const step = referenceAt > at ? 1 : -1
  const between = walk(layers, referenceAt - step, -step, at)
  const outward = walk(layers, at - step, -step)
  const beyond = takeUpToPlane(outward, ground)
  const missing = [...between, own, ...beyond.layers].flatMap((layer) => findUnknown(layer, zone, ground))
  if (missing.length > 0) return { kind: 'missing', missing }
  if (conductor.impedance.kind === null) {
    return {
      kind: 'missing',
      missing: [
        {
          path: ['features', 'conductors', position, 'impedance', 'kind'],
          label: `single or pair, of ${conductor.name}`,
        },
      ],
    }
  }
  if (conductor.impedance.kind === 'pair' && conductor.spaceMm === null) {
    return {
      kind: 'missing',
      missing: [
        {
          path: ['features', 'conductors', position, 'spaceMm'],
          label: `space between the lines of ${conductor.name}`,
        },
      ],
    }
  }

  const pitchUm = conductor.impedance.kind === 'pair' ? 1000 * (conductor.widthMm + (conductor.spaceMm ?? 0)) : null
  const foilFace = findFoilFace(outward, ground)
  const slabOf = (layer: ZoneLayerResult, corner: Corner, isBetween: boolean) => ({
    thicknessUm: thicknessAt(layer, corner, isBetween),
    relativePermittivity: permittivityAt(layer, zone, corner, ground),
  })
  const isThere = ({ thicknessUm }: { thicknessUm: number }) => thicknessUm > 0
  const makeConductors = (corner: Corner, widthMm: number, bottomUm: number): LineConductor[] => {
    const thicknessUm = copperAt(own, corner)
    const share = corner === 'nominal' ? 0 : ((corner === 'low' ? 1 : -1) * ETCHED_WIDTH_TOLERANCE_PCT) / 100
    const wideUm = widthMm * 1000 * (1 + share)
    const narrowUm = corner === 'high' ? Math.max(wideUm - thicknessUm, wideUm / 4) : wideUm
    const faces = foilFace === 'outward' ? [narrowUm, wideUm] : [wideUm, narrowUm]
    const make = (name: string, centreUm: number): LineConductor => ({
      name,
      centreUm,
      bottomUm,
      bottomWidthUm: faces[0] ?? wideUm,
      topWidthUm: faces[1] ?? wideUm,
      thicknessUm,
    })
    if (pitchUm === null) return [make('the line', 0)]
    return [make('one line', -pitchUm / 2), make('the other line', pitchUm / 2)]
  }
  const makeSection = (corner: Corner, widthMm: number, distanceTimes = 1, coverTimes = 1): LineSection => {
    const under = between
      .map((layer) => slabOf(layer, corner, true))
      .filter(isThere)
      .map((slab) => ({ ...slab, thicknessUm: slab.thicknessUm * distanceTimes }))
    const level = {
      thicknessUm: copperAt(own, corner),
      relativePermittivity: fillAt(own, zone, corner, ground),
    }
    const over = beyond.layers
      .map((layer) => slabOf(layer, corner, false))
      .filter(isThere)
      .map((slab) => ({ ...slab, thicknessUm: slab.thicknessUm * coverTimes }))
    const isBare = coverTimes === 0 && beyond.plane === null
    return {
      slabs: isBare ? under : [...under, level, ...over],
      hasPlaneBelow: true,
      hasPlaneAbove: beyond.plane !== null,
      conductors: makeConductors(corner, widthMm, sum(under)),
    }
  }

  const remarks = [...between, ...beyond.layers]
    .filter((layer) => layer.kind === 'conductor' && hasCopper(layer))
    .map(({ name }) => `Conductors on ${name} are not in the section.`)
  if (beyond.plane?.kind === 'shield-film')
    remarks.push(`${beyond.plane.name} is taken as a plane: it is one where it is grounded.`)

  // What is drawn is what is made: a hatch that was stated otherwise is a contradiction of its own.
  const slotted = referenceLayer.planePattern === 'hatched' || drawnHatch !== null
  const far = beyond.plane === null ? null : findConductorLayer(ground, beyond.plane.layerId)
  const isFarUnsure = far !== null && (far.role === 'mixed' || far.planePattern !== 'solid')
  let open: Extract<ZoneLine, { kind: 'solvable' }>['open'] = null
  if (slotted) {
    const statedHatch = ground.design.construction.zones
      .find(({ id }) => id === zone.zoneId)
      ?.presence.find(({ layerId }) => layerId === reference.layerId)?.hatch
    const hatch = drawnHatch ?? statedHatch
    if (hatch === null || hatch === undefined) {
      const zoneAt = ground.design.construction.zones.findIndex(({ id }) => id === zone.zoneId)
      const presenceAt =
        ground.design.construction.zones[zoneAt]?.presence.findIndex(({ layerId }) => layerId === reference.layerId) ??
        0
      return {
        kind: 'missing',
        missing: [
          {
            path: ['construction', 'zones', zoneAt, 'presence', presenceAt, 'hatch'],
            label: `bar and pitch of the hatch on ${reference.name} in ${zone.name}`,
          },
        ],
      }
    }
    const slotUm = 1000 * (hatch.pitchMm - hatch.barMm) * Math.SQRT2
    const behind = takeUpToPlane(walk(layers, referenceAt + step, step), ground)
    const lacking = behind.layers.flatMap((layer) => findUnknown(layer, zone, ground))
    if (lacking.length > 0) return { kind: 'missing', missing: lacking }
    open = {
      because: `the plane on ${reference.name} is hatched${drawnHatch === null ? '' : `, with bars of ${inSentence(roundToDigits(drawnHatch.barMm, 4), 'mm')} at a pitch of ${inSentence(roundToDigits(drawnHatch.pitchMm, 4), 'mm')} measured in the artwork`}, and no reliable relation for hatched planes is published`,
      says: 'a slot as wide as an opening is across its diagonal all along',
      coverageFraction: drawnHatch === null ? reference.coverageFraction : 1 - drawnHatch.openFraction,
      makeSection: (widthMm) => {
        const solid = makeSection('nominal', widthMm)
        const below = behind.layers
          .toReversed()
          .map((layer) => slabOf(layer, 'nominal', false))
          .filter(isThere)
        const plane = {
          thicknessUm: reference.nominalUm,
          relativePermittivity: fillAt(reference, zone, 'nominal', ground),
        }
        // The plane's face towards the line: its thickness adds nothing that shows.
        const raisedUm = sum(below) + plane.thicknessUm
        const sideUm = SIDE_PLANE_HEIGHTS * (sum(solid.slabs) + slotUm) + (pitchUm ?? 0)
        const side = (name: string, sign: number): LineConductor => ({
          name,
          centreUm: (sign * (slotUm + sideUm)) / 2,
          bottomUm: raisedUm,
          bottomWidthUm: sideUm,
          topWidthUm: sideUm,
          thicknessUm: 0,
          isGrounded: true,
        })
        return {
          slabs: [...below, plane, ...solid.slabs],
          hasPlaneBelow: behind.plane !== null,
          hasPlaneAbove: solid.hasPlaneAbove,
          conductors: [
            ...solid.conductors.map((each) => ({ ...each, bottomUm: each.bottomUm + raisedUm })),
            side('plane on one side', -1),
            side('plane on the other side', 1),
          ],
        }
      },
    }
  } else if (isFarUnsure && beyond.plane !== null) {
    const farPlane = beyond.plane
    const through = takeUpToPlane(walk(layers, layers.indexOf(farPlane) - step, -step), ground).layers
    const lacking = through.flatMap((layer) => findUnknown(layer, zone, ground))
    if (lacking.length > 0) return { kind: 'missing', missing: lacking }
    open = {
      because: `whether ${farPlane.name} has copper over ${conductor.name} is not stated`,
      says: `no copper on ${farPlane.name} over it`,
      coverageFraction: null,
      makeSection: (widthMm) => {
        const closed = makeSection('nominal', widthMm)
        const level = {
          thicknessUm: farPlane.nominalUm,
          relativePermittivity: fillAt(farPlane, zone, 'nominal', ground),
        }
        const rest = through.map((layer) => slabOf(layer, 'nominal', false)).filter(isThere)
        return { ...closed, slabs: [...closed.slabs, level, ...rest], hasPlaneAbove: false }
      },
    }
  }
  return {
    kind: 'solvable',
    makeSection,
    addLine: (layerId, otherMm, widthMm, offsetMm) => {
      const section = makeSection('nominal', widthMm)
      let bottomUm = 0
      for (const layer of [...between, own, ...beyond.layers]) {
        if (layer.layerId === layerId && layer !== own && layer.kind === 'conductor') {
          const other: LineConductor = {
            name: 'the other line',
            centreUm: offsetMm * 1000,
            bottomUm,
            bottomWidthUm: otherMm * 1000,
            topWidthUm: otherMm * 1000,
            thicknessUm: layer.nominalUm,
          }
          return { ...section, conductors: [...section.conductors.slice(0, 1), other] }
        }
        bottomUm += layer.nominalUm
      }
      return null
    },
    distanceUm: between.reduce((total, layer) => total + layer.nominalUm, 0),
    coverUm: [...beyond.layers].reduce<number>((total, { nominalUm }) => total + nominalUm, 0),
    open,
    remarks,
  }
}

/** What carries the field of a line, or of a pair: its copper, and the dielectric to the reference on both sides of it. */
export const findFieldAcrossUm = (
  { distanceUm }: Extract<ZoneLine, { kind: 'solvable' }>,
  { widthMm, spaceMm, impedance }: Pick<ConductorFeature, 'spaceMm' | 'impedance'> & { readonly widthMm: number },
): number => 1000 * (impedance.kind === 'pair' ? 2 * widthMm + (spaceMm ?? 0) : widthMm) + 2 * distanceUm

const unclear = (because: string, decidedBy: string): ZoneLine => ({ kind: 'unclear', because, decidedBy })

const hasCopper = ({ kind, coverageFraction, nominalUm }: ZoneLayerResult): boolean =>
  kind === 'conductor' && (coverageFraction ?? 0) > 0 && nominalUm > 0

const sum = (slabs: readonly { readonly thicknessUm: number }[]) =>
  slabs.reduce((total, { thicknessUm }) => total + thicknessUm, 0)

/** Layers from one index on, in one direction, up to another that is left out, or to the face of the part. */
function walk(
  layers: readonly ZoneLayerResult[],
  from: number,
  step: number,
  until: number | null = null,
): ZoneLayerResult[] {
  const found: ZoneLayerResult[] = []
  for (let at = from; at !== until; at += step) {
    const layer = layers[at]
    if (layer === undefined) break
    found.push(layer)
  }
  return found
}

/** Layers up to the first that is, or may be, a plane there. */
function takeUpToPlane(outward: readonly ZoneLayerResult[], ground: LineGround) {
  const at = outward.findIndex((layer) => {
    if (layer.kind === 'shield-film') return true
    if (layer.kind === 'stiffener') return isMetal(layer, ground)
    if (!hasCopper(layer)) return false
    const own = findConductorLayer(ground, layer.layerId)
    return own !== null && own.role !== 'signal' && own.planePattern !== 'none'
  })
  return at < 0 ? { layers: outward, plane: null } : { layers: outward.slice(0, at), plane: outward[at] ?? null }
}

const isMetal = ({ materialId }: ZoneLayerResult, ground: LineGround) =>
  materialId !== null && ground.findMaterial(materialId)?.kind === 'metal-sheet'

function findConductorLayer({ design }: LineGround, layerId: string): ConductorLayer | null {
  const layer = design.construction.layers.find(({ id }) => id === layerId)
  return layer?.kind === 'conductor' ? layer : null
}

const layerPosition = ({ design }: LineGround, layerId: string) =>
  design.construction.layers.findIndex(({ id }) => id === layerId)

/** The foil lay on its base film, or on the adhesive of its clad, with its wide face. */
function findFoilFace(outward: readonly ZoneLayerResult[], { design }: LineGround): 'outward' | 'inward' {
  const kinds = outward
    .slice(0, 2)
    .map(({ layerId }) => design.construction.layers.find(({ id }) => id === layerId)?.kind)
  const isBase = (kind: Layer['kind'] | undefined) => kind === 'base-film' || kind === 'rigid-laminate'
  return isBase(kinds[0]) || (kinds[0] === 'adhesive' && isBase(kinds[1])) ? 'outward' : 'inward'
}

/** Nearer to the reference a thinner dielectric lowers the impedance, on the other side a thicker one does. */
function thicknessAt(layer: ZoneLayerResult, corner: Corner, isBetween: boolean): number {
  if (corner === 'nominal') return layer.nominalUm
  return (corner === 'low') === isBetween ? layer.minUm : layer.maxUm
}

function copperAt({ nominalUm, minUm, maxUm }: ZoneLayerResult, corner: Corner): number {
  return corner === 'nominal' ? nominalUm : corner === 'low' ? maxUm : Math.max(minUm, nominalUm / 4)
}

const endOf = (material: Material | null, corner: Corner): number => {
  const constant = material?.relativePermittivity
  if (constant === null || constant === undefined) return AIR
  if (corner === 'nominal') return constant.value
  const { low, high } = readEnds('relativePermittivity', constant)
  return Math.max(1, corner === 'low' ? high : low)
}

const fillAt = (layer: ZoneLayerResult, zone: ZoneResult, corner: Corner, ground: LineGround) =>
  endOf(ground.findFill(zone.zoneId, layer.layerId), corner)

function permittivityAt(layer: ZoneLayerResult, zone: ZoneResult, corner: Corner, ground: LineGround): number {
  if (layer.kind === 'unbonded-gap') return AIR
  if (layer.kind === 'conductor') return fillAt(layer, zone, corner, ground)
  return endOf(layer.materialId === null ? null : ground.findMaterial(layer.materialId), corner)
}

/** A dielectric whose permittivity nobody stated. */
function findUnknown(layer: ZoneLayerResult, zone: ZoneResult, ground: LineGround): MissingInput[] {
  if (layer.kind === 'unbonded-gap' || layer.nominalUm === 0) return []
  const material =
    layer.kind === 'conductor'
      ? ground.findFill(zone.zoneId, layer.layerId)
      : layer.materialId === null
        ? null
        : ground.findMaterial(layer.materialId)
  if (layer.kind === 'conductor' && material === null) return []
  if (material !== null && material.relativePermittivity !== null) return []
  return [
    {
      path: ['construction', 'layers', layerPosition(ground, layer.layerId), 'materialId'],
      label: `relative permittivity of ${material?.name ?? layer.name}`,
    },
  ]
}
