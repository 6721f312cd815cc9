import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { type BendUnderCheck, listBends, notComputedUse } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const handlingCount = defineItem({
  id: 'handling-count',
  section: 'materials',
  severity: 'major',
  question: 'Is each bend worked no more often in assembly, test and service calls than its use covers?',
  titles: { meets: 'Handling stays within the use of each bend', fails: 'Handling makes a bend a dynamic one' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: ['handlingCycles'],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.inProduct.handlingCycles', 'bends.*.use', 'bends.*.requiredCycles'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'bends[].inProduct.handlingCycles', worse: 'larger' }],
  check: (context) => listBends(context).map((bend) => checkCount(context, bend)),
})

function checkCount(context: EvaluationContext, checked: BendUnderCheck): Outcome {
  const { bend, index, place } = checked
  const { handlingCycles } = bend.inProduct
  if (handlingCycles === null) {
    return notComputed(
      ['bends', index, 'inProduct', 'handlingCycles'],
      `how often ${callByName('bend', bend.name)} is worked in handling`,
      [place],
      'typed',
    )
  }
  const described = {
    value: handlingCycles,
    places: [place],
    what: `handling of ${callByName('bend', bend.name)}`,
    equation: 'count as typed',
    isTyped: true,
  }
  const few = decide({ ...described, limit: context.getLimit('handlingCycles') })
  if (few.verdict === 'meets') return few
  if (bend.use === null) return notComputedUse(checked)
  if (bend.use !== 'dynamic') {
    return decide({
      ...described,
      limit: context.getLimit('handlingCycles'),
      remark: `State it as dynamic, with the ${handlingCycles} cycles that handling takes: strain and life are then judged for them.`,
    })
  }
  if (bend.requiredCycles === null) {
    return notComputed(
      ['bends', index, 'requiredCycles'],
      `required cycles of ${callByName('bend', bend.name)}`,
      [place],
      'typed',
    )
  }
  return decide({
    ...described,
    limit: makeDesignLimit({
      key: 'handlingWithinRequiredCycles',
      value: bend.requiredCycles,
      unit: 'cycles',
      sense: 'at-most',
      sourceKey: 'ownChoice',
      name: `required cycles of ${callByName('bend', bend.name)}`,
    }),
  })
}
