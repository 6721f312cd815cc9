import { getWorstVerdict, type ItemResult } from '@/lib/engine/results'

type ItemVerdict = ItemResult['verdict']

/** Which way a verdict moved; what a person has to judge, or is not in one of the checklists, is neither better nor worse. */
export type VerdictDirection = 'worse' | 'better' | 'otherwise'

export function findVerdictDirection(before: ItemVerdict | null, after: ItemVerdict | null): VerdictDirection {
  if (before === null || after === null || before === after) return 'otherwise'
  if (before === 'needs-judgment' || after === 'needs-judgment') {
    // A failure that is gone, or new, is told as such, whether or not a person judges the rest.
    if (before === 'fails') return 'better'
    return after === 'fails' ? 'worse' : 'otherwise'
  }
  if (before === 'not-applicable' || after === 'not-applicable') {
    if (before === 'fails') return 'better'
    return after === 'fails' ? 'worse' : 'otherwise'
  }
  return getWorstVerdict([before, after]) === after ? 'worse' : 'better'
}
