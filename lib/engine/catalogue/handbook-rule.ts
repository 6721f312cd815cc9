import type { EvaluationContext } from '../context'
import { callByName } from '../design'
import type { Outcome } from '../results'
import type { SourceKey } from '../sources'
import { getRadiusRangeMm, listBends, notComputedSection } from './checks'
import { cannotTell, decide, makeSourceLimit, notApplicable, notComputed, notComputedFrom } from './decide'
import { withinRadiusRule } from './model-reach'
import { withinStatedUse } from './stated-cycles'

/** Each inside radius against the minimum of the handbook formula. Where that comes to less than nothing it says nothing. */
export function checkHandbookRule(context: EvaluationContext): Outcome[] {
  return listBends(context).map(({ bend, result, index, place }) => {
    const unknown = notComputedSection({ bend, result, index, place })
    if (unknown !== null) return unknown
    if (result.conductors.length === 0)
      return notApplicable(`no conductor runs through ${callByName('bend', bend.name)}`, [place])
    if (bend.use === null)
      return notComputed(['bends', index, 'use'], `use of ${callByName('bend', bend.name)}`, [place])
    const { clamped, warning } = result.handbook
    if (clamped) {
      return notApplicable(
        `the handbook formula has no floor and comes to less than 0 for the section of ${callByName('bend', bend.name)}`,
        [place],
      )
    }
    if (result.handbook.minRadiusMm === null && warning !== null && result.missing.length === 0) {
      return cannotTell(
        `the handbook radius of ${callByName('bend', bend.name)}`,
        { because: warning, decidedBy: 'qualify by test' },
        [place],
      )
    }
    if (result.handbook.minRadiusMm === null) {
      return result.missing.length > 0
        ? notComputedFrom(result.missing, [place])
        : notComputed(
            ['bends', index, 'zoneId'],
            `handbook radius for the layers of ${callByName('bend', bend.name)}`,
            [place],
          )
    }
    // The single-sided form was read; the others are recalled.
    const sourceKey: SourceKey = result.conductors.length === 1 ? 'ipc2223' : 'ipc2223Recalled'
    const decided = decide({
      value: bend.insideRadiusMm,
      range: getRadiusRangeMm(bend),
      limitRange: result.handbook.minRadiusRangeMm ?? undefined,
      limit: makeSourceLimit({
        key: 'handbookRadiusMm',
        value: result.handbook.minRadiusMm,
        unit: 'mm',
        sense: 'at-least',
        sourceKey,
      }),
      places: [place],
      what: `inside radius of ${callByName('bend', bend.name)}`,
      equation: result.handbook.formula,
      cautions: warning === null ? [] : [warning],
      remark: result.disagreement[0],
    })
    return withinStatedUse(bend, withinRadiusRule(result, decided), place)
  })
}
