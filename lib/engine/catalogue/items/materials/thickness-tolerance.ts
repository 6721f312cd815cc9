import type { EvaluationContext } from '../../../context'
import type { Limit, Outcome, ZoneResult } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide, makeDesignLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

const COMMON = {
  section: 'materials',
  limits: ['thicknessTolerancePct', 'thicknessToleranceUm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: WIDER_TOLERANCES,
} as const

export const thicknessTolerance = defineItem({
  ...COMMON,
  id: 'thickness-tolerance',
  severity: 'advice',
  question: 'Does the finished thickness of each zone that goes into no connector stay within its tolerance?',
  titles: {
    meets: 'Zones outside of connectors stay within their tolerance',
    fails: 'A zone outside of connectors spreads more than its tolerance',
  },
  appliesTo: { needs: ['zones'], says: 'zones that go into no connector' },
  restsOn: [...SECTION_INPUTS, 'features.connectors.*.zoneId'],
  check: (context) => checkZones(context, (zone) => !hasFit(context, zone), 'every zone goes into a connector'),
})

/** Where a connector waits for a thickness, the spread decides whether the end goes in. */
export const fittedThickness = defineItem({
  ...COMMON,
  id: 'fitted-thickness',
  severity: 'major',
  question: 'Does the finished thickness of each connector end stay within its tolerance?',
  titles: {
    meets: 'Connector ends stay within their tolerance',
    fails: 'A connector end spreads more than its tolerance',
  },
  appliesTo: { needs: ['zones'], says: 'connector ends' },
  restsOn: [...SECTION_INPUTS, 'features.connectors.*.zoneId'],
  check: (context) => {
    const isAsked = (zone: ZoneResult) => hasFit(context, zone)
    const unplaced = listUnplaced(context)
    const asked = context.zones.filter(isAsked)
    const { connectors } = context.design.features
    // A connector end that no connector names may be where one without a zone goes.
    const free = asked.filter((zone) => !connectors.some((connector) => connector.zoneId === zone.zoneId))
    if (unplaced.length <= free.length) return checkZones(context, isAsked, 'no zone goes into a connector')
    return asked.length === 0 ? unplaced : [...unplaced, ...checkZones(context, isAsked, '')]
  },
})

/** A connector whose zone nobody stated goes into one of them. */
const listUnplaced = ({ design }: EvaluationContext): Outcome[] =>
  design.features.connectors.flatMap((connector, at) =>
    connector.zoneId === null
      ? [
          notComputed(['features', 'connectors', at, 'zoneId'], `zone of ${connector.name}`, [
            placeOf('connector', connector),
          ]),
        ]
      : [],
  )

/** A connector end: its connector asks for this thickness. */
function hasFit({ design, zonesById }: EvaluationContext, { zoneId, kind }: ZoneResult): boolean {
  return (
    kind === 'finger' ||
    zonesById.get(zoneId)?.connectorWindow != null ||
    design.features.connectors.some((connector) => connector.zoneId === zoneId)
  )
}

function checkZones(context: EvaluationContext, isAsked: (zone: ZoneResult) => boolean, nothing: string): Outcome[] {
  // A zone in which no layer has any thickness (no copper, adhesive all flowed away) has no tolerance either.
  const zones = context.zones.filter((zone) => zone.thicknessUm > 0 && isAsked(zone))
  if (zones.length === 0) return [notApplicable(nothing)]
  return zones.map((zone) => {
    const limit = findLimit(context, zone)
    const halfSpread = (range: ZoneResult['worstCaseUm']) => {
      const um = (range.high - range.low) / 2
      return limit.unit === 'um' ? um : (um / zone.thicknessUm) * 100
    }
    const statistical = halfSpread(zone.rootSumSquareUm)
    return decide({
      value: statistical,
      range: { low: statistical, high: Math.max(statistical, halfSpread(zone.worstCaseUm)) },
      limit,
      places: [placeOf('zone', { id: zone.zoneId, name: zone.name })],
      what: `half the thickness spread of ${zone.name}`,
      equation: 'root sum square; upper end of the range is the worst case',
      remark: describeGrowth(zone),
    })
  })
}

/** A tolerance that is typed for the zone goes before all; else the larger of a share and a length, since thin film is not held to a tenth. */
function findLimit({ getLimit, zonesById }: EvaluationContext, { zoneId, thicknessUm }: ZoneResult): Limit {
  const typedUm = zonesById.get(zoneId)?.statedToleranceUm ?? null
  if (typedUm !== null) {
    return makeDesignLimit({
      key: 'statedThicknessToleranceUm',
      value: typedUm,
      unit: 'um',
      sense: 'at-most',
      sourceKey: 'exactArithmetic',
      name: 'tolerance on the drawing',
    })
  }
  const share = getLimit('thicknessTolerancePct')
  const length = getLimit('thicknessToleranceUm')
  return (share.value / 100) * thicknessUm >= length.value ? share : length
}

/** The layer that spreads most, and what plating adds. */
function describeGrowth(zone: ZoneResult): string {
  let widest = zone.layers[0]
  let platingUm = 0
  for (const layer of zone.layers) {
    if (widest === undefined || layer.varianceShareFraction > widest.varianceShareFraction) widest = layer
    platingUm += layer.copper?.platingUm ?? 0
  }
  const grown = platingUm > 0 ? ` of which plating ${inSentence(platingUm, 'um')}` : ''
  const share =
    widest === undefined || widest.varianceShareFraction === 0
      ? ''
      : `; most of the spread comes from ${widest.name} (${inSentence(widest.varianceShareFraction * 100, 'pct')} of the variance)`
  return `Nominal ${inSentence(zone.thicknessUm, 'um')}${grown}${share}.`
}
