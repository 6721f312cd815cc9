import type { TolerancedLayer } from '../bending'
import { yieldStrainPct } from '../bending'
import { type Bend, callByName, type Material } from '../design'
import { describeDefaultSpreads } from '../materials'
import type { MissingInput, ModelLimit } from '../results'
import { listCopperSpreads, listFilmSpreads } from './bend-spreads'
import { type CopperForm, describeCopper } from './copper-form'
import type { DesignIndex } from './design-index'
import { type CopperPart, layPlating } from './plating-in-section'
import { findYieldStrainPct } from './yield-strain'
import type { SectionCopper, SectionLayer, ZoneSection } from './zone-section'

/** A bend's section: its zone's layers from the inside face outward, parted into leaves at unbonded gaps. */
export interface BendSection {
  readonly leaves: readonly LeafSection[]
  /** One fewer than leaves. */
  readonly gapsUm: readonly number[]
  readonly thicknessUm: number
  readonly conductors: readonly ConductorInBend[]
  /** Where no model reaches the section: figures are then guides only. */
  readonly modelLimits: readonly ModelLimit[]
  /** Materials whose yield is a labelled default. */
  readonly cautions: readonly string[]
}

export interface LeafSection {
  readonly leafIndex: number
  /** With tolerances, and the spread of every constant. */
  readonly layers: readonly TolerancedLayer[]
  readonly sources: readonly SectionLayer[]
}

/** The copper of one material of a conductor layer that has copper in the bend: its foil, or what a plating process put on it. */
export interface ConductorInBend {
  readonly leafIndex: number
  readonly source: SectionLayer
  readonly copper: SectionCopper
  /** Of the layer in the bent section that is this copper. */
  readonly bendLayerId: string
  readonly material: Material
  readonly foil: NonNullable<Material['foil']>
  readonly yieldStrainPct: number
  /** Copper that was plated on this foil; null where there is none, and on plated copper itself. */
  readonly plating: ConductorInBend | null
  /** Weibull slope from own flex tests, in place of the one that the brief or the default gives. */
  readonly testedSlope?: number
  /** Share of the relation's lives that own flex tests reached, below 1; absent where they say nothing against it. */
  readonly testedLifeFraction?: number
}

/** A tolerance may take a layer to a hundredth of its thickness, not to nothing: the section must keep its order. */
const LEAST_REMAINING_FRACTION = 0.01

/**
 * Lays a zone's layers out for a bend. Layers that came to nothing (an adhesive that flowed away entirely, a conductor
 * layer without copper here) are left out. Foil and plating are layers of their own. It is a pure function of the zone's finished layers and
 * their materials.
 *
 * @returns the missing inputs instead where a layer's material is not known
 */
export function buildBendSection(
  zoneSection: ZoneSection,
  insideFace: Bend['insideFace'],
  index: DesignIndex,
): BendSection | { readonly missing: readonly MissingInput[] } {
  const ordered = insideFace === 'top' ? zoneSection.layers : zoneSection.layers.toReversed()
  const missing: MissingInput[] = []
  const leaves: {
    leafIndex: number
    layers: TolerancedLayer[]
    sources: SectionLayer[]
  }[] = []
  const gapsUm: number[] = []
  const conductors: ConductorInBend[] = []
  const modelLimits: ModelLimit[] = []
  const cautions = new Set<string>()
  const defaults = new Set<string>()
  let thicknessUm = 0
  let pendingGapUm = 0
  let isLeafOpen = false
  for (const [at, source] of ordered.entries()) {
    if (source.layer.kind === 'unbonded-gap') {
      // Air outside the outermost leaf bends nothing; between leaves it sets the outer one's radius.
      if (leaves.length > 0) pendingGapUm += source.nominalUm
      isLeafOpen = false
      continue
    }
    if (source.nominalUm <= 0) continue
    if (source.material === null) {
      missing.push({
        path: ['construction', 'layers', source.position, 'materialId'],
        label: `material of ${callByName('layer', source.layer.name)}`,
      })
      continue
    }
    if (!isLeafOpen) {
      if (leaves.length > 0) {
        gapsUm.push(pendingGapUm)
        thicknessUm += pendingGapUm
        pendingGapUm = 0
      }
      leaves.push({ leafIndex: leaves.length, layers: [], sources: [] })
      isLeafOpen = true
    }
    const leaf = leaves[leaves.length - 1]
    if (leaf === undefined) continue
    thicknessUm += source.nominalUm
    const { copper, material } = source
    if (copper === null) {
      const made = makeFilmLayer(source, material, cautions)
      leaf.layers.push({ ...made, spreads: listFilmSpreads(material, made.yieldStrainPct ?? null, defaults) })
      leaf.sources.push(source)
      continue
    }
    if (material.foil === null) {
      missing.push({
        path: ['construction', 'layers', source.position, 'materialId'],
        label: `foil data of ${material.name} in ${callByName('layer', source.layer.name)}`,
      })
      continue
    }
    const form = describeCopper({ source, copper, material, zoneSection, index })
    if ('missing' in form) {
      missing.push(form.missing)
      continue
    }
    if (form.modelLimit !== null) modelLimits.push(form.modelLimit)
    const laid = layPlating(ordered, at, index)
    if ('missing' in laid) {
      missing.push(laid.missing)
      continue
    }
    const made = laid.parts.map((part) => {
      const layer = makeCopperLayer(part, copper, form, cautions)
      leaf.layers.push({ ...layer, spreads: listAllSpreads(layer, part.material, copper, defaults) })
      leaf.sources.push(source)
      return makeConductor(leaf.leafIndex, source, copper, part, form)
    })
    const foil = made.find(({ bendLayerId }) => bendLayerId === source.layer.id)
    const plating = made.find(({ bendLayerId }) => bendLayerId !== source.layer.id) ?? null
    if (foil !== undefined) conductors.push({ ...foil, plating })
    else if (plating !== null) conductors.push(plating)
  }
  if (leaves.length === 0 && missing.length === 0) {
    missing.push({
      path: ['construction', 'zones', index.design.construction.zones.indexOf(zoneSection.zone), 'presence'],
      label: `layers of ${callByName('zone', zoneSection.zone.name)}`,
    })
  }
  return missing.length > 0
    ? { missing }
    : {
        leaves,
        gapsUm,
        thicknessUm,
        conductors,
        modelLimits,
        cautions: [...cautions, ...describeDefaultSpreads(defaults)],
      }
}

function makeConductor(
  leafIndex: number,
  source: SectionLayer,
  copper: SectionCopper,
  { id, material, foil }: CopperPart,
  { lateral }: CopperForm,
): ConductorInBend {
  return {
    leafIndex,
    source,
    copper,
    bendLayerId: id,
    material,
    foil,
    yieldStrainPct: yieldStrainPct({
      yieldStrengthMpa: foil.yieldStrengthMpa.value,
      modulusGpa: material.modulusGpa.value,
      poisson: material.poisson.value,
      lateral,
    }),
    plating: null,
  }
}

function makeFilmLayer(source: SectionLayer, material: Material, cautions: Set<string>): TolerancedLayer {
  const { nominalUm, minusUm, plusUm, layer } = source
  const filmYieldStrainPct = findYieldStrainPct(material, cautions)
  return {
    id: layer.id,
    thicknessUm: nominalUm,
    minusUm: Math.min(minusUm, nominalUm * (1 - LEAST_REMAINING_FRACTION)),
    plusUm,
    modulusGpa: material.modulusGpa.value,
    poisson: material.poisson.value,
    ...(filmYieldStrainPct === null ? {} : { yieldStrainPct: filmYieldStrainPct }),
  }
}

function makeCopperLayer(
  { id, thicknessUm, minusUm, plusUm, material, foil }: CopperPart,
  { fillMaterial }: SectionCopper,
  { widthFraction, widthFractionLow, lateral }: CopperForm,
  cautions: Set<string>,
): TolerancedLayer {
  const fillYieldStrainPct = fillMaterial === null ? null : findYieldStrainPct(fillMaterial, cautions)
  return {
    id,
    thicknessUm,
    minusUm: Math.min(minusUm, thicknessUm * (1 - LEAST_REMAINING_FRACTION)),
    plusUm,
    modulusGpa: material.modulusGpa.value,
    poisson: material.poisson.value,
    yieldStrengthMpa: foil.yieldStrengthMpa.value,
    lateral,
    conductor: {
      coverageFraction: widthFraction,
      fillModulusGpa: fillMaterial?.modulusGpa.value ?? 0,
      fillPoisson: fillMaterial?.poisson.value ?? 0,
      ...(fillYieldStrainPct === null ? {} : { fillYieldStrainPct }),
    },
    ...(widthFractionLow < widthFraction && {
      spreads: [{ constant: 'coverageFraction' as const, low: widthFractionLow, high: widthFraction }],
    }),
  }
}

function listAllSpreads(
  { conductor, spreads = [] }: TolerancedLayer,
  material: Material,
  { fillMaterial }: SectionCopper,
  defaults: Set<string>,
): NonNullable<TolerancedLayer['spreads']> {
  const hasGaps = (conductor?.coverageFraction ?? 1) < 1
  return [
    ...listCopperSpreads(
      { material, fill: hasGaps ? fillMaterial : null, fillYieldStrainPct: conductor?.fillYieldStrainPct ?? null },
      defaults,
    ),
    ...spreads,
  ]
}
