import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { type BendUnderCheck, getRadiusRangeMm, listBends, notComputedSection, notComputedUse } from '../../checks'
import { decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'
import { BEND_PLACE_INPUTS, SECTION_INPUTS } from '../../item-inputs'

export const forming = defineItem({
  id: 'forming',
  section: 'geometry',
  severity: 'major',
  question: 'Is it settled how each bend is formed, by whom, and with springback allowed for?',
  titles: { meets: 'Forming is settled', fails: 'A bend is formed in a way that does not hold its radius' },
  appliesTo: { needs: ['standing-bends'], says: 'designs with a bend that stands in service' },
  limits: ['handFormedRadiusRatio'],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.forming', 'bends.*.use', ...BEND_PLACE_INPUTS, ...SECTION_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'bends[].forming.springbackAllowed', worse: 'no' }],
  check: (context) => listBends(context).flatMap((bend) => checkForming(context, bend)),
})

function checkForming(context: EvaluationContext, checked: BendUnderCheck): Outcome[] {
  const { bend, result, index, place } = checked
  if (bend.use === null) return [notComputedUse(checked)]
  if (bend.use === 'dynamic') return [notApplicable(`${callByName('bend', bend.name)} moves in service`, [place])]
  const { method, by, springbackAllowed } = bend.forming
  const term = (field: keyof typeof bend.forming, label: string) => ({
    path: ['bends', index, 'forming', field],
    label: `${label} ${callByName('bend', bend.name)}`,
    value: bend.forming[field],
  })
  const outcomes: Outcome[] = [
    checkGiven({
      terms: [
        term('method', 'how somebody forms'),
        term('by', 'who forms'),
        term('springbackAllowed', 'whether springback is allowed for at'),
      ],
      places: [place],
      whenGiven: `How ${callByName('bend', bend.name)} is formed is stated.`,
      sourceKey: 'commonPractice',
      rests: 'stated',
    }),
  ]
  if (springbackAllowed === false) {
    outcomes.push({
      kind: 'said',
      verdict: 'fails',
      rests: 'stated',
      sourceKey: 'commonPractice',
      places: [place],
      summary: `Nothing allows for the springback of ${callByName('bend', bend.name)}.`,
    })
  }
  if (method === 'by-hand' && by !== null) {
    const unknown = notComputedSection(checked)
    if (unknown !== null) return [...outcomes, unknown]
    const thicknessMm = result.sectionThicknessUm / 1000
    const radius = getRadiusRangeMm(bend)
    outcomes.push(
      decide({
        value: bend.insideRadiusMm / thicknessMm,
        range: { low: radius.low / thicknessMm, high: radius.high / thicknessMm },
        limit: context.getLimit('handFormedRadiusRatio'),
        places: [place],
        what: `radius to thickness of ${callByName('bend', bend.name)}, formed by hand`,
        equation: 'inside radius / finished thickness',
        isStated: true,
      }),
    )
  }
  return outcomes
}
