import type { EvaluationContext } from '../context'
import type { Features } from '../design'
import type { Limit } from '../results'

/**
 * What coverlay is held to by how its openings are made: the method's limit, or the one for every method where that is larger.
 *
 * @param method  where nobody said, the limit for every method
 */
export function findMethodLimit(
  { getLimit }: EvaluationContext,
  of: 'coverlayOpening' | 'coverlayWeb',
  method: Features['coverlayOpenings'][number]['method'],
): Limit {
  const always = getLimit(`${of}Mm`)
  if (method === null) return always
  const own = getLimit(`${of}${SUFFIX[method]}Mm`)
  return own.value > always.value ? own : always
}

const SUFFIX = { laser: 'Laser', drill: 'Drill', punch: 'Punch' } as const
