import type { RevisionTab } from '@/lib/addresses'

export const BLOCKER_CODES = [
  'construction-empty',
  'brief-incomplete',
  'revision-differs',
  'number-issued',
  'construction-incomplete',
  'not-evaluated',
  'calculation-stale',
  'item-unanswered',
  'profile-requirement',
  'thread-open',
  'not-shared',
  'declaration-missing',
  'declaration-outdated',
  'declared-not-buildable',
  'declaration-unclear',
  'condition-open',
  'condition-declined',
  'action-open',
  'words-differ',
  'failure-unwaived',
  'artwork-missing',
  'policy-missing',
  'review-missing',
  'author-signs',
  'author-releases',
  'signature-missing',
] as const

export type BlockerCode = (typeof BLOCKER_CODES)[number]

/** One cause that keeps a revision from leaving its stage. */
export interface Blocker {
  readonly code: BlockerCode
  readonly sentence: string
  /** Where to act on it; `id` is the field, item, thread, bend ... or empty for the whole tab. */
  readonly target: { readonly tab: RevisionTab; readonly id: string }
}
