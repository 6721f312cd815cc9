import type { ItemBasis } from './item'
import type { Verdict } from './outcome'

interface VerdictWords {
  /** As a mark and a table say it. */
  readonly word: string
  /** Of one thing, after its count: `1 has a thin margin`. */
  readonly ofOne: string
  readonly ofMany: string
}

/** The one record of verdicts in words, what awaits a person's judgment included. Screens, report, command and files read it. */
export const VERDICT_WORDS: Readonly<Record<Verdict | 'needs-judgment', VerdictWords>> = {
  fails: { word: 'fails', ofOne: 'fails', ofMany: 'fail' },
  'cannot-tell': { word: 'cannot tell', ofOne: 'cannot be told', ofMany: 'cannot be told' },
  'thin-margin': { word: 'thin margin', ofOne: 'has a thin margin', ofMany: 'have a thin margin' },
  'not-computed': { word: 'not computed', ofOne: 'not computed', ofMany: 'not computed' },
  'needs-judgment': { word: 'needs judgment', ofOne: 'needs judgment', ofMany: 'need judgment' },
  meets: { word: 'meets', ofOne: 'meets', ofMany: 'meet' },
  'not-applicable': { word: 'not applicable', ofOne: 'not applicable', ofMany: 'not applicable' },
}

const { fails, ...otherVerdicts } = VERDICT_WORDS

/** What a count of items shows, in its order: verdicts, and after those that fail what follows from another item. */
export const TALLY_WORDS = {
  fails,
  follows: { word: 'follows', ofOne: 'that follows', ofMany: 'that follow' },
  ...otherVerdicts,
} as const satisfies Readonly<Record<string, VerdictWords>>

/** What an item's answer rests on. */
export const BASIS_WORDS: Readonly<Record<ItemBasis, string>> = {
  computed: 'calculated',
  typed: 'typed and compared',
  stated: 'stated',
  judgment: 'judged',
}
