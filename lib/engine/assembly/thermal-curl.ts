import {
  curlRisePct,
  type ExpandingLayer,
  effectiveModulusGpa,
  type TolerancedLayer,
  thermalCurvaturePerMm,
} from '../bending'
import { type Brief, FLAT_ZONE_KINDS, type Material } from '../design'
import { readEnds } from '../materials'
import { groupBy, type Span } from '../numerics'
import type { MissingInput, QuantityRange, ThermalCurlResult } from '../results'
import { buildBendSection, type LeafSection } from './bend-section'
import type { DesignIndex } from './design-index'
import { spanOfModulus, spanOfThickness } from './elastic-stack'
import type { SectionLayer, ZoneSection } from './zone-section'

const NOTHING = {
  atDegC: null,
  curvaturePerMm: null,
  curvatureRangePerMm: null,
  risePct: null,
  riseRangePct: null,
} satisfies Omit<ThermalCurlResult, 'missing'>

/**
 * How a zone curls that is meant to lie flat, and lies free: flat at `brief.flatAtDegC`, at the end of its service range that is farther from there.
 *
 * Model    each bonded leaf by thermalCurvaturePerMm; the one that curls most stands for the zone
 * Holds    elastic layers. Adhesives that soften, creep, and moisture are not in it.
 * Range    one material's expansion and stiffness are alike in all its layers, thickness varies layer by layer; each input at the end that
 *          curls the zone further, or less far
 * @returns null for zones that are not meant to lie flat
 * Source   SOURCES.bimetal
 */
export function computeThermalCurl(section: ZoneSection, index: DesignIndex): ThermalCurlResult | null {
  const { zone } = section
  if (!FLAT_ZONE_KINDS.has(zone.kind)) return null
  const zonePath = ['construction', 'zones', index.design.construction.zones.indexOf(zone)]
  const missing: MissingInput[] = listMissingTemperatures(index.design.brief)
  const sides = [zone.lengthMm, zone.widthMm].filter((side) => side !== null)
  if (sides.length === 0) missing.push({ path: [...zonePath, 'lengthMm'], label: `length of ${zone.name}` })
  const bent = buildBendSection(section, 'top', index)
  if ('missing' in bent) return { missing: [...missing, ...bent.missing], ...NOTHING }
  const seen = new Set<string>()
  for (const leaf of bent.leaves) missing.push(...listMissingExpansions(leaf, seen))
  if (missing.length > 0) return { missing, ...NOTHING }
  const { atDegC, changeDegC } = findFarthest(index.design.brief)
  let worst: { nominal: number; range: QuantityRange } | null = null
  for (const leaf of bent.leaves) {
    const curl = curlOfLeaf(leaf, changeDegC)
    if (worst === null || reach(curl.range) > reach(worst.range)) worst = curl
  }
  if (worst === null) return { missing, ...NOTHING }
  const { nominal, range } = worst
  const lengthMm = Math.max(...sides)
  const crossesFlat = range.low < 0 && range.high > 0
  const least = crossesFlat ? 0 : Math.min(Math.abs(range.low), Math.abs(range.high))
  return {
    missing,
    atDegC,
    curvaturePerMm: nominal,
    curvatureRangePerMm: range,
    risePct: curlRisePct(nominal, lengthMm),
    riseRangePct: { low: curlRisePct(least, lengthMm), high: curlRisePct(reach(range), lengthMm) },
  }
}

const reach = ({ low, high }: QuantityRange): number => Math.max(Math.abs(low), Math.abs(high))

function listMissingTemperatures({ flatAtDegC, operatingMinDegC, operatingMaxDegC }: Brief): MissingInput[] {
  const missing: MissingInput[] = []
  if (flatAtDegC === null) {
    missing.push({ path: ['brief', 'flatAtDegC'], label: 'temperature at which the part lies flat' })
  }
  if (operatingMinDegC === null)
    missing.push({ path: ['brief', 'operatingMinDegC'], label: 'lowest operating temperature' })
  if (operatingMaxDegC === null)
    missing.push({ path: ['brief', 'operatingMaxDegC'], label: 'highest operating temperature' })
  return missing
}

/** Curl grows with the distance from the flat temperature, so one end of the service range decides. */
function findFarthest({ flatAtDegC, operatingMinDegC, operatingMaxDegC }: Brief) {
  const from = flatAtDegC ?? 0
  const [cold, hot] = [operatingMinDegC ?? from, operatingMaxDegC ?? from]
  const atDegC = Math.abs(cold - from) > Math.abs(hot - from) ? cold : hot
  return { atDegC, changeDegC: atDegC - from }
}

function listMissingExpansions({ sources }: LeafSection, seen: Set<string>): MissingInput[] {
  const missing: MissingInput[] = []
  for (const source of sources) {
    for (const material of [source.material, fillOf(source)]) {
      if (material === null || material.expansionPpmPerC !== null || seen.has(material.id)) continue
      seen.add(material.id)
      missing.push({
        path: ['construction', 'layers', source.position, 'materialId'],
        label: `thermal expansion of ${material.name}`,
      })
    }
  }
  return missing
}

/** Material between the conductors of a layer that does not cover its zone. */
const fillOf = ({ copper }: SectionLayer): Material | null =>
  copper === null || copper.coverageFraction >= 1 ? null : copper.fillMaterial

interface Curling {
  /** Layers with one key vary together. */
  readonly key: string
  readonly thicknessUm: Span
  readonly modulusGpa: Span
  readonly expansionPpmPerC: Span
}

function curlOfLeaf(leaf: LeafSection, changeDegC: number): { nominal: number; range: QuantityRange } {
  const layers = leaf.layers.map((layer, at): Curling => {
    const source = leaf.sources[at]
    return {
      key: `${source?.material?.id}/${source === undefined ? '' : (fillOf(source)?.id ?? '')}`,
      thicknessUm: spanOfThickness(layer),
      modulusGpa: spanOfModulus(layer, effectiveModulusGpa(layer.id, layer)),
      expansionPpmPerC: spanOfExpansion(layer, source),
    }
  })
  const state = layers.map(
    ({ thicknessUm, modulusGpa, expansionPpmPerC }): { -readonly [K in keyof ExpandingLayer]: number } => ({
      thicknessUm: thicknessUm.nominal,
      modulusGpa: modulusGpa.nominal,
      expansionPpmPerC: expansionPpmPerC.nominal,
    }),
  )
  const nominal = thermalCurvaturePerMm(state, changeDegC)
  const inputs = listInputs(layers)
  /** Sets one input in all layers that it belongs to. */
  const set = ({ quantity, at }: Input, end: keyof Span) => {
    for (const each of at) {
      const [layer, into] = [layers[each], state[each]]
      if (layer !== undefined && into !== undefined) into[quantity] = layer[quantity][end]
    }
  }
  // One look at one end tells which way an input curls the leaf.
  const rises = inputs.map((input) => {
    const probe = input.at.some((at) => hasRoomAbove(layers[at]?.[input.quantity])) ? 'high' : 'low'
    set(input, probe)
    const curvature = thermalCurvaturePerMm(state, changeDegC)
    set(input, 'nominal')
    return curvature > nominal === (probe === 'high')
  })
  const at = (isHigh: boolean) => {
    for (const [each, input] of inputs.entries()) set(input, rises[each] === isHigh ? 'high' : 'low')
    return thermalCurvaturePerMm(state, changeDegC)
  }
  const [low, high] = [at(false), at(true)]
  return { nominal, range: { low: Math.min(low, high, nominal), high: Math.max(low, high, nominal) } }
}

const hasRoomAbove = (span: Span | undefined): boolean => span !== undefined && span.high > span.nominal

interface Input {
  readonly quantity: keyof ExpandingLayer
  readonly at: readonly number[]
}

function listInputs(layers: readonly Curling[]): Input[] {
  const byKey = groupBy(layers.entries(), ([, { key }]) => key)
  return [
    ...[...byKey.values()].flatMap((own): Input[] => {
      const at = own.map(([index]) => index)
      return [
        { quantity: 'expansionPpmPerC', at },
        { quantity: 'modulusGpa', at },
      ]
    }),
    ...layers.map((_, at): Input => ({ quantity: 'thicknessUm', at: [at] })),
  ]
}

/** Copper with gaps pulls with what fills them, each by its stiffness and share. */
function spanOfExpansion({ conductor, modulusGpa }: TolerancedLayer, source: SectionLayer | undefined): Span {
  const own = spanOf(source?.material ?? null)
  const fill = source === undefined ? null : fillOf(source)
  if (conductor === undefined || fill === null) return own
  const copperShare = conductor.coverageFraction * modulusGpa
  const share = copperShare / (copperShare + (1 - conductor.coverageFraction) * conductor.fillModulusGpa)
  const between = spanOf(fill)
  const mix = (end: keyof Span) => share * own[end] + (1 - share) * between[end]
  return { low: mix('low'), nominal: mix('nominal'), high: mix('high') }
}

function spanOf(material: Material | null): Span {
  const number = material?.expansionPpmPerC ?? null
  if (number === null) return { low: 0, nominal: 0, high: 0 }
  const { low, high } = readEnds('expansionPpmPerC', number)
  return { low, nominal: number.value, high }
}
