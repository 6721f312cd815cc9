/**
 * What an act that binds others means, in words: shown before it is done, and written into its record. One list, which the
 * screens, the trail and the documents read.
 */
export const ACT_MEANINGS = {
  sign: 'I approve this revision, as it stands, for release in the capacity that I choose.',
  release:
    'I release this revision: fabricators may build from its package. It no longer changes, and earlier releases of the project are superseded.',
  'approve-waiver':
    'I accept that this item is not met on these numbers, and that the revision may be released anyway.',
  'declare-reviewed':
    'I have reviewed the design and artwork as they stand. I made no part of them, and I know of no reason not to approve them.',
  'withdraw-review': 'I no longer stand by my review. It does not count for release any more.',
  declare: 'I speak for my company. This declaration holds until the design or the artwork changes.',
  'withdraw-signature': 'I no longer approve this revision. My signature does not count for release any more.',
  'withdraw-revision':
    'I take this revision out of use for good. Nobody may build from it; everybody who has its package must be told.',
} as const

export type MeantAct = keyof typeof ACT_MEANINGS
