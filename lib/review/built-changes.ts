import type { Design } from '@/lib/engine'
import { compareDesigns } from './compare-designs'

/** What a fabricator builds the same, whatever it says: dates, who is asked, words to people. Our choice. */
const NOT_BUILT: ReadonlySet<string> = new Set([
  'name',
  'brief.purpose',
  'brief.whoToAsk',
  'brief.packingAndHandling',
  'brief.manufacturingReviewDate',
  'brief.layoutFreezeDate',
  'brief.needDate',
])

/** How many inputs differ that change what is built, or whether it can be. */
export function countBuiltChanges(before: Design, after: Design): number {
  return compareDesigns(before, after).filter(({ path }) => !NOT_BUILT.has(path.join('.')) && path.at(-1) !== 'note')
    .length
}
