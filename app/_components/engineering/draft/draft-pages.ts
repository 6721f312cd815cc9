import type { RevisionTab } from '@/lib/addresses'

/** Pages of a revision that edit its design: they share one draft. They stand in one folder under `app`, whose layout holds it. */
export const DRAFT_PAGES = [
  'brief',
  'construction',
  'bends',
  'features',
  'lines',
  'plan',
  'way-out',
] as const satisfies readonly RevisionTab[]

const IS_DRAFT_PAGE = new RegExp(`^(.*)/(?:${DRAFT_PAGES.join('|')})$`)

/** Do both addresses lead to pages that edit the same revision? */
export function shareDraft(onePath: string, otherPath: string): boolean {
  const [one, other] = [IS_DRAFT_PAGE.exec(onePath), IS_DRAFT_PAGE.exec(otherPath)]
  return one !== null && other !== null && one[1] === other[1]
}
