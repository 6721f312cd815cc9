import { findRatioTable } from '../bending'
import type { EvaluationContext } from '../context'
import { callByName } from '../design'
import type { Outcome, ZoneResult } from '../results'
import type { SourceKey } from '../sources'
import { inSentence } from '../units'
import { BRIEF_PLACE, getRadiusRangeMm, listBends, notComputedSection } from './checks'
import { cannotTell, decide, makeNoneAllowed, makeSourceLimit, notComputed } from './decide'
import { withinRadiusRule } from './model-reach'
import { withinStatedUse } from './stated-cycles'

/** The ratio of each inside radius to its thickness against the chosen table. */
export function checkRatioRule(context: EvaluationContext): Outcome[] {
  const { ratioTableKey } = context.design.brief
  if (ratioTableKey !== null && findRatioTable(ratioTableKey) === null) {
    return [notComputed(['brief', 'ratioTableKey'], `table of ratios "${ratioTableKey}"`, [BRIEF_PLACE])]
  }
  return listBends(context).map(({ bend, result, index, place, zone }) => {
    if (bend.use === null)
      return notComputed(['bends', index, 'use'], `use of ${callByName('bend', bend.name)}`, [place])
    const unknown = notComputedSection({ bend, result, index, place })
    if (unknown !== null) return unknown
    const { actual, required, tableKey, tableName, surfaceStrainPct } = result.ratio
    if (result.ratio.advisedAgainst) {
      return {
        ...decide({
          value: 1,
          limit: makeNoneAllowed('bendsAdvisedAgainstCount', getTableSource(tableKey)),
          places: [place],
          what: `uses in ${callByName('bend', bend.name)} that the table advises against`,
          equation: 'use and conductor layers as the table lists them',
        }),
        summary: `"${tableName}" advises against ${result.conductors.length} conductor layers in ${callByName('bend', bend.name)} in this use, at any radius.`,
      }
    }
    if (required === null) {
      return cannotTell(
        `the ratio of ${callByName('bend', bend.name)}`,
        {
          because: `"${tableName}" has no figure for this use and construction`,
          decidedBy: 'choose a table that has one, or go by strain',
        },
        [place],
        { value: { value: actual, unit: 'ratio' } },
      )
    }
    const thicknessMm = result.sectionThicknessUm / 1000
    const radius = getRadiusRangeMm(bend)
    const spread = getThicknessSpreadMm(zone)
    const decided = decide({
      value: actual,
      range: { low: radius.low / (thicknessMm + spread.plus), high: radius.high / (thicknessMm - spread.minus) },
      limit: makeSourceLimit({
        key: 'radiusToThicknessRatio',
        value: required,
        unit: 'ratio',
        sense: 'at-least',
        sourceKey: getTableSource(tableKey),
      }),
      places: [place],
      what: `radius to thickness in ${callByName('bend', bend.name)}`,
      equation: 'inside radius / finished thickness',
      remark: `Table: ${tableName}. A ratio of ${inSentence(actual)} means ${inSentence(surfaceStrainPct, 'pct')} at the outer surface.`,
    })
    return withinStatedUse(bend, withinRadiusRule(result, decided), place)
  })
}

const getTableSource = (tableKey: string): SourceKey => findRatioTable(tableKey)?.source ?? 'commonPractice'

/** How far a zone's thickness may differ from nominal. */
function getThicknessSpreadMm(zone: ZoneResult | null): { minus: number; plus: number } {
  if (zone === null) return { minus: 0, plus: 0 }
  const { low, high } = zone.worstCaseUm
  // A tolerance may take a zone to a hundredth of its thickness, as in a bend.
  return {
    minus: Math.min(zone.thicknessUm - low, 0.99 * zone.thicknessUm) / 1000,
    plus: (high - zone.thicknessUm) / 1000,
  }
}
