import type { EvaluationContext } from '../../../context'
import { getOutcomeVerdict, type Outcome } from '../../../results'
import { MIN_PLATING_UM } from '../../../thickness'
import { checkDimension } from '../../checks'
import { makeSourceLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const holePlating = defineItem({
  id: 'hole-plating',
  section: 'geometry',
  severity: 'major',
  question: 'Is there enough copper on the wall of each plated hole?',
  titles: { meets: 'Plated holes have enough copper on their walls', fails: 'A plated hole has a thin wall' },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: ['holePlatingUm'],
  sourceKeys: ['ipc6013'],
  restsOn: ['features.holes', 'brief.performanceClass'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.holes[].wallPlatingUm', worse: 'smaller' }],
  check: (context) => [...checkWalls(context, context.getLimit('holePlatingUm')), ...checkClass3(context)],
})

function checkWalls(context: EvaluationContext, limit: ReturnType<EvaluationContext['getLimit']>): Outcome[] {
  return checkDimension(context, {
    list: 'holes',
    field: 'wallPlatingUm',
    what: (name) => `copper on the wall of ${name}`,
    when: (hole) => hole.plated !== false,
    findUnknown: (hole) => (hole.plated === null ? { field: 'plated', label: `whether ${hole.name} is plated` } : null),
    read: (hole) => hole.wallPlatingUm,
    limit,
    equation: 'plating of the wall, as stated',
  })
}

/** Walls that are not stated are named once, by the ordinary limit; without a class, those that only class 3 refuses wait. */
function checkClass3(context: EvaluationContext): Outcome[] {
  const { performanceClass } = context.design.brief
  if (performanceClass !== null && performanceClass !== 'class-3') return []
  const limit = makeSourceLimit({
    key: 'class3HolePlatingUm',
    value: MIN_PLATING_UM[3],
    unit: 'um',
    sense: 'at-least',
    sourceKey: 'ipc6013',
  })
  const decided = checkWalls(context, limit).filter(({ kind }) => kind === 'decided')
  if (performanceClass === 'class-3') return decided
  return decided.flatMap((outcome) =>
    getOutcomeVerdict(outcome) === 'meets'
      ? []
      : [notComputed(['brief', 'performanceClass'], 'performance class', outcome.places)],
  )
}
