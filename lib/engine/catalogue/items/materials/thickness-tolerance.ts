import type { ZoneResult } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const thicknessTolerance = defineItem({
  id: 'thickness-tolerance',
  section: 'materials',
  severity: 'minor',
  question: 'Does the finished thickness of each zone stay within its tolerance?',
  titles: {
    meets: 'Each zone stays within its thickness tolerance',
    fails: 'A zone spreads more than its thickness tolerance',
  },
  appliesTo: { needs: ['zones'], says: 'designs with zones' },
  limits: ['thicknessTolerancePct'],
  sourceKeys: [],
  restsOn: [...SECTION_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const limit = context.getLimit('thicknessTolerancePct')
    // A zone in which no layer has any thickness (no copper, adhesive all flowed away) has no tolerance either.
    return context.zones
      .filter((zone) => zone.thicknessUm > 0)
      .map((zone) => {
        const halfSpreadPct = (range: ZoneResult['worstCaseUm']) =>
          ((range.high - range.low) / 2 / zone.thicknessUm) * 100
        const statistical = halfSpreadPct(zone.rootSumSquareUm)
        return decide({
          value: statistical,
          range: { low: statistical, high: Math.max(statistical, halfSpreadPct(zone.worstCaseUm)) },
          limit,
          places: [placeOf('zone', { id: zone.zoneId, name: zone.name })],
          what: `half the thickness spread of ${zone.name}`,
          equation: 'root sum square; upper end of the range is the worst case',
          remark: describeGrowth(zone),
        })
      })
  },
})

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
