import type { EvaluationContext } from '../context'
import { BRIEF_PLACE, type Outcome } from '../results'
import { notComputed } from './decide'

/** What an item for class 3 says where nobody stated the class: its verdict waits for that. */
export function whileClassIsOpen({ design }: EvaluationContext): Outcome[] {
  return design.brief.performanceClass === null
    ? [notComputed(['brief', 'performanceClass'], 'performance class', [BRIEF_PLACE], 'typed')]
    : []
}
