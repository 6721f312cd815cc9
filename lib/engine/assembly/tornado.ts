import {
  findAxisUm,
  type LayerConstant,
  type Loading,
  readConstant,
  stripsOf,
  type TolerancedLayer,
  withConstant,
  yieldScaleOf,
} from '../bending'
import type { Bend, Design } from '../design'
import { computeAllowableStrain, type FatigueFoil } from '../life'
import { readEnds } from '../materials'
import { getFatigueFoil, readSurvivalDemand, type SurvivalDemand } from './bend-allowables'
import { loadingOf } from './bend-conductors'
import { computeConductorLife } from './bend-life'
import { type BendSection, buildBendSection, type ConductorInBend } from './bend-section'
import { indexDesign } from './design-index'
import { buildZoneSection } from './zone-section'

/** What one input does to a bend when it alone goes from one end of its range to the other. */
export interface Swing {
  readonly kind: 'thickness' | 'radius' | 'constant'
  /** Null for the radius, which is the bend's. */
  readonly layerId: string | null
  readonly layerName: string
  readonly quantity: SwingQuantity
  readonly low: number
  readonly nominal: number
  readonly high: number
  /** Strain of the copper that decides, with the input at its low and at its high end. */
  readonly strainAtLowPct: number
  readonly strainAtHighPct: number
  /** Life at the survival asked for; null where the bend is not dynamic. */
  readonly lifeAtLowCycles: number | null
  readonly lifeAtHighCycles: number | null
  /** Strain over allowable at its worse end, where there is an allowable; else the strain itself. */
  readonly worstShare: number
}

export type SwingQuantity = 'thicknessUm' | 'insideRadiusMm' | LayerConstant | 'tensileStrengthMpa' | 'fatigueDuctility'

export interface Tornado {
  readonly bendId: string
  readonly bendName: string
  readonly layerName: string
  readonly strainPct: number
  readonly survivalPct: number
  readonly survivalLifeCycles: number | null
  /** The input that moves the strain or the life most first. */
  readonly swings: readonly Swing[]
}

/**
 * How far each thickness, each constant and the radius, moved alone over its range, move strain and life of the copper that decides.
 *
 * Model    the bend computed anew at both ends of each input, all others at nominal: it shows what matters, and not how they add up, which
 *          the range of the bend does
 * @param governingLayerId  as the evaluation of the bend reports it
 * @returns null where the design has no such bend or it cannot be computed
 */
export function computeTornado(design: Design, bendId: string, governingLayerId: string | null): Tornado | null {
  const bend = design.bends.find(({ id }) => id === bendId)
  const index = indexDesign(design)
  const zone = bend === undefined ? undefined : index.zonesById.get(bend.zoneId)
  if (bend === undefined || zone === undefined) return null
  const section = buildBendSection(buildZoneSection(zone, index), bend.insideFace, index)
  if ('missing' in section) return null
  const conductor = section.conductors.find(({ copper }) => copper.layer.id === governingLayerId)
  if (conductor === undefined) return null
  const demand = readSurvivalDemand(design.brief)
  const subject = chooseSubject(bend, section, conductor, demand)
  const swings = listSwings(subject, () => true)
  const nominal = subject.at(subject.layers, subject.radiusMm, subject.foil)
  const reach = ({ strainAtLowPct, strainAtHighPct, lifeAtLowCycles, lifeAtHighCycles }: Swing): number => {
    const strain = Math.abs(Math.log(Math.max(strainAtHighPct, 1e-12) / Math.max(strainAtLowPct, 1e-12)))
    const life =
      lifeAtLowCycles === null || lifeAtHighCycles === null ? 0 : Math.abs(Math.log(lifeAtHighCycles / lifeAtLowCycles))
    return life > 0 ? life : strain
  }
  return {
    bendId,
    bendName: bend.name,
    layerName: conductor.copper.layer.name,
    strainPct: nominal.strainPct,
    survivalPct: demand.survivalPct,
    survivalLifeCycles: nominal.lifeCycles,
    swings: swings.toSorted((a, b) => reach(b) - reach(a)),
  }
}

/**
 * The constant that takes a bend nearest to, or farthest past, its allowable when it alone goes to its worse end; null where no constant
 * has a spread or nothing is allowed.
 */
export function findDecidingConstant(
  bend: Bend,
  section: BendSection,
  conductor: ConductorInBend,
  demand: SurvivalDemand,
): { readonly swing: Swing; readonly nominalShare: number; readonly layerName: string } | null {
  const subject = chooseSubject(bend, section, conductor, demand)
  const nominal = subject.strainAt(subject.layers, subject.radiusMm, subject.foil)
  if (nominal.allowablePct === null) return null
  let deciding: Swing | null = null
  for (const swing of listSwings(withoutLives(subject), (quantity) => !MINOR.has(quantity))) {
    if (deciding === null || swing.worstShare > deciding.worstShare) deciding = swing
  }
  return deciding === null
    ? null
    : {
        swing: deciding,
        nominalShare: nominal.strainPct / nominal.allowablePct,
        layerName: conductor.copper.layer.name,
      }
}

/** What a verdict hangs on is asked of every bend that is evaluated, and needs no life: allowable strain says the same. */
function withoutLives(subject: Subject): Subject {
  return { ...subject, at: (layers, radiusMm, foil) => subject.strainAt(layers, radiusMm, foil) }
}

/** Of foil and plating the copper with less to spare. */
function chooseSubject(bend: Bend, section: BendSection, conductor: ConductorInBend, demand: SurvivalDemand): Subject {
  const own = makeSubject(bend, section, conductor, demand)
  if (conductor.plating === null) return own
  const plating = makeSubject(bend, section, conductor.plating, demand)
  const shareOf = (subject: Subject): number => {
    const { strainPct, allowablePct } = subject.strainAt(subject.layers, subject.radiusMm, subject.foil)
    return strainPct / (allowablePct ?? Number.POSITIVE_INFINITY)
  }
  return shareOf(plating) > shareOf(own) ? plating : own
}

/** What no verdict hangs on in practice, or is no constant. */
const MINOR: ReadonlySet<SwingQuantity> = new Set(['thicknessUm', 'insideRadiusMm', 'poisson', 'coverageFraction'])

interface At {
  readonly strainPct: number
  readonly allowablePct: number | null
  readonly lifeCycles: number | null
}

interface Subject {
  readonly bend: Bend
  readonly layers: readonly TolerancedLayer[]
  readonly names: ReadonlyMap<string, string>
  readonly conductor: ConductorInBend
  readonly radiusMm: number
  readonly foil: FatigueFoil
  readonly at: (layers: readonly TolerancedLayer[], radiusMm: number, foil: FatigueFoil) => At
  /** The same without the life. */
  readonly strainAt: (layers: readonly TolerancedLayer[], radiusMm: number, foil: FatigueFoil) => At
}

function makeSubject(bend: Bend, section: BendSection, conductor: ConductorInBend, demand: SurvivalDemand): Subject {
  const leaf = section.leaves[conductor.leafIndex]
  if (leaf === undefined) throw new RangeError(`no leaf ${conductor.leafIndex}`)
  let insideUm = 0
  for (let at = 0; at < conductor.leafIndex; at += 1) {
    for (const { thicknessUm } of section.leaves[at]?.layers ?? []) insideUm += thicknessUm
    insideUm += section.gapsUm[at] ?? 0
  }
  const loading = loadingOf(bend)
  const strainOf = makeStrainOf(leaf.layers, conductor.bendLayerId, loading)
  const strainAt: Subject['strainAt'] = (layers, radiusMm, foil) => ({
    strainPct: strainOf(layers, radiusMm),
    allowablePct: findAllowed(bend, conductor, foil, demand),
    lifeCycles: null,
  })
  return {
    bend,
    layers: leaf.layers,
    names: new Map(leaf.layers.map(({ id }, at) => [id, leaf.sources[at]?.layer.name ?? id])),
    conductor,
    radiusMm: bend.insideRadiusMm + insideUm / 1000,
    foil: getFatigueFoil(conductor),
    strainAt,
    at: (layers, radiusMm, foil) => {
      const without = strainAt(layers, radiusMm, foil)
      const { strainPct } = without
      return {
        ...without,
        lifeCycles:
          bend.use === 'dynamic'
            ? computeConductorLife(foil, bend, demand.survival, {
                nominal: strainPct,
                range: { low: strainPct, high: strainPct },
              }).survivalCycles
            : null,
      }
    },
  }
}

/**
 * Deciding strain of one conductor, as computeBendStrain gives it, for layers of which few differ from those of the bend: what stays is not
 * worked out again.
 */
function makeStrainOf(
  nominal: readonly TolerancedLayer[],
  bendLayerId: string,
  loading: Loading,
): (layers: readonly TolerancedLayer[], radiusMm: number) => number {
  const own = nominal.findIndex(({ id }) => id === bendLayerId)
  const nominalStrips = nominal.map((layer) => stripsOf(layer))
  return (layers, radiusMm) => {
    const strips = layers.map((layer, at) => (layer === nominal[at] ? (nominalStrips[at] ?? []) : stripsOf(layer)))
    const stack = { thicknessUm: layers.map(({ thicknessUm }) => thicknessUm), strips }
    const insideRadiusUm = radiusMm * 1000
    const axisUm = findAxisUm(stack, { insideRadiusUm }, yieldScaleOf(loading))
    let innerUm = 0
    for (let at = 0; at < own; at += 1) innerUm += layers[at]?.thicknessUm ?? 0
    const outerUm = innerUm + (layers[own]?.thicknessUm ?? 0)
    return (100 * Math.max(Math.abs(innerUm - axisUm), Math.abs(outerUm - axisUm))) / (insideRadiusUm + axisUm)
  }
}

function findAllowed(
  bend: Bend,
  { foil: record }: ConductorInBend,
  foil: FatigueFoil,
  demand: SurvivalDemand,
): number | null {
  switch (bend.use) {
    case 'fold-once':
      return record.allowableFoldOncePct?.value ?? null
    case 'flex-to-install':
      return record.allowableInstallPct?.value ?? null
    case 'dynamic':
      return bend.requiredCycles === null
        ? null
        : computeAllowableStrain({
            foil,
            requiredCycles: Math.max(1, bend.requiredCycles),
            motion: bend.motion,
            survival: demand.survival,
          }).strainPct
    case null:
      return null
  }
}

function listSwings(subject: Subject, isWanted: (quantity: SwingQuantity) => boolean): Swing[] {
  const { layers, names, radiusMm, bend, foil, conductor } = subject
  const swings: Swing[] = []
  const add = (
    what: Pick<Swing, 'kind' | 'layerId' | 'layerName' | 'quantity' | 'low' | 'nominal' | 'high'>,
    at: (value: number) => At,
  ): void => {
    if (!(what.low < what.high) || !isWanted(what.quantity)) return
    const low = at(what.low)
    const high = at(what.high)
    const shareOf = ({ strainPct, allowablePct }: At): number => strainPct / (allowablePct ?? 1)
    swings.push({
      ...what,
      strainAtLowPct: low.strainPct,
      strainAtHighPct: high.strainPct,
      lifeAtLowCycles: low.lifeCycles,
      lifeAtHighCycles: high.lifeCycles,
      worstShare: Math.max(shareOf(low), shareOf(high)),
    })
  }
  const replace = (at: number, layer: TolerancedLayer): TolerancedLayer[] => layers.toSpliced(at, 1, layer)
  add(
    {
      kind: 'radius',
      layerId: null,
      layerName: '',
      quantity: 'insideRadiusMm',
      low: radiusMm - bend.radiusToleranceMm,
      nominal: radiusMm,
      high: radiusMm + bend.radiusToleranceMm,
    },
    (value) => subject.at(layers, value, foil),
  )
  for (const [at, layer] of layers.entries()) {
    const place = { layerId: layer.id, layerName: names.get(layer.id) ?? layer.id }
    add(
      {
        kind: 'thickness',
        ...place,
        quantity: 'thicknessUm',
        low: layer.thicknessUm - layer.minusUm,
        nominal: layer.thicknessUm,
        high: layer.thicknessUm + layer.plusUm,
      },
      (thicknessUm) => subject.at(replace(at, { ...layer, thicknessUm }), radiusMm, foil),
    )
    for (const { constant, low, high } of layer.spreads ?? []) {
      // The modulus of the copper that decides is in its strength over modulus too.
      const isOwnModulus = constant === 'modulusGpa' && layer.id === conductor.bendLayerId
      add(
        { kind: 'constant', ...place, quantity: constant, low, nominal: readConstant(layer, constant), high },
        (value) =>
          subject.at(
            replace(at, { ...layer, ...withConstant(layer, constant, value) }),
            radiusMm,
            isOwnModulus ? { ...foil, modulusGpa: value } : foil,
          ),
      )
    }
  }
  if (bend.use === 'dynamic') {
    for (const quantity of ['tensileStrengthMpa', 'fatigueDuctility'] as const) {
      const { low, high } = readEnds(quantity, conductor.foil[quantity])
      add(
        {
          kind: 'constant',
          layerId: conductor.bendLayerId,
          layerName: names.get(conductor.bendLayerId) ?? '',
          quantity,
          low,
          nominal: foil[quantity],
          high,
        },
        (value) => subject.at(layers, radiusMm, { ...foil, [quantity]: value }),
      )
    }
  }
  return swings
}
