import type { EvaluationContext } from '../../../context'
import type { Outcome, ZoneLayerResult, ZoneResult } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { hasCopper } from '../../needs'

export const stackSymmetry = defineItem({
  id: 'stack-symmetry',
  section: 'materials',
  severity: 'major',
  question: 'Is each rigid zone built alike above and below its middle?',
  titles: { meets: 'Rigid zones are symmetric', fails: 'A rigid zone is not symmetric and may warp' },
  appliesTo: { needs: ['rigid-zones'], says: 'parts with a rigid zone' },
  limits: ['stackAsymmetryFraction', 'copperImbalanceFraction'],
  sourceKeys: ['exactArithmetic'],
  restsOn: [...SECTION_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.zones
      .filter(({ kind }) => kind === 'rigid')
      .flatMap((zone): Outcome[] => {
        const worst = findWorstAsymmetry(zone)
        const built = decide({
          value: worst.fraction,
          limit: context.getLimit('stackAsymmetryFraction'),
          places: [
            placeOf('zone', { id: zone.zoneId, name: zone.name }),
            ...worst.layers.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name })),
          ],
          what: `difference between mirrored layers of ${zone.name}`,
          equation: 'copper layers, and laminate and prepreg between them, first against last',
          remark: worst.remark,
        })
        return [built, ...checkCopperArea(context, zone)]
      }),
})

/** Copper pulls by its volume: a plane against a few conductors warps a board whose foils are alike. */
function checkCopperArea(context: EvaluationContext, zone: ZoneResult): Outcome[] {
  const copper = zone.layers.filter(hasCopper)
  const pairs = copper.slice(0, Math.floor(copper.length / 2)).flatMap((upper, at) => {
    const lower = copper[copper.length - 1 - at]
    const volumes = [upper, lower].map((layer) =>
      layer === undefined || layer.coverageFraction === null ? null : layer.nominalUm * layer.coverageFraction,
    )
    const [above, below] = volumes
    if (lower === undefined || above == null || below == null) return []
    return [{ upper, lower, fraction: Math.abs(above - below) / Math.max(above, below) }]
  })
  const [worst] = pairs.toSorted((a, b) => b.fraction - a.fraction)
  if (worst === undefined) return []
  return [
    decide({
      value: worst.fraction,
      limit: context.getLimit('copperImbalanceFraction'),
      places: [
        placeOf('zone', { id: zone.zoneId, name: zone.name }),
        ...[worst.upper, worst.lower].map(({ layerId, name }) => placeOf('layer', { id: layerId, name })),
      ],
      what: `difference between the copper of mirrored layers of ${zone.name}`,
      equation: 'thickness times share of the area that is copper, first against last',
    }),
  ]
}

interface Asymmetry {
  readonly fraction: number
  readonly layers: readonly ZoneLayerResult[]
  readonly remark?: string
}

/** What shrinks and stiffens enough to warp a board, besides copper. Films, adhesives and masks do not. */
const STIFF_KINDS: readonly string[] = ['rigid-laminate', 'no-flow-prepreg']

/**
 * Copper layers are paired, first with last, and so are the spans of laminate and prepreg between them and outside of them. A pair's thicknesses are
 * compared, as a share of the thicker.
 */
function findWorstAsymmetry(zone: ZoneResult): Asymmetry {
  const copper: ZoneLayerResult[] = []
  const spans: ZoneLayerResult[][] = [[]]
  for (const layer of zone.layers) {
    if (hasCopper(layer)) {
      copper.push(layer)
      spans.push([])
    } else if (STIFF_KINDS.includes(layer.kind)) spans.at(-1)?.push(layer)
  }
  let worst: Asymmetry = { fraction: 0, layers: [] }
  for (const pairs of [copper.map((layer) => [layer]), spans]) {
    for (let first = 0; first < Math.floor(pairs.length / 2); first += 1) {
      const found = compare(pairs[first] ?? [], pairs[pairs.length - 1 - first] ?? [])
      if (found.fraction > worst.fraction) worst = found
    }
  }
  return worst
}

function compare(upper: readonly ZoneLayerResult[], lower: readonly ZoneLayerResult[]): Asymmetry {
  const [upperUm, lowerUm] = [sumUm(upper), sumUm(lower)]
  const thicker = Math.max(upperUm, lowerUm)
  return {
    fraction: thicker === 0 ? 0 : Math.abs(upperUm - lowerUm) / thicker,
    layers: [...upper, ...lower],
    remark: `${nameLayers(upper)} above, ${inSentence(upperUm, 'um')}, and ${nameLayers(lower)} below, ${inSentence(lowerUm, 'um')}, should match.`,
  }
}

const sumUm = (layers: readonly ZoneLayerResult[]): number => layers.reduce((sum, { nominalUm }) => sum + nominalUm, 0)

const nameLayers = (layers: readonly ZoneLayerResult[]): string =>
  layers.length === 0 ? 'no laminate or prepreg' : layers.map(({ name }) => name).join(' and ')
