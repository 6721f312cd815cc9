/** Stages of a revision, in the order of its path; the last two leave the path. */
export const STAGES = [
  'preparing',
  'early-review',
  'fabricator-review',
  'awaiting-signature',
  'released',
  'superseded',
  'withdrawn',
] as const

export type Stage = (typeof STAGES)[number]

/** Stages as people read them. */
export const STAGE_LABELS: Readonly<Record<Stage, string>> = {
  preparing: 'preparing',
  'early-review': 'early review',
  'fabricator-review': 'fabricator review',
  'awaiting-signature': 'awaiting signature',
  released: 'released',
  superseded: 'superseded',
  withdrawn: 'withdrawn',
}

/** Stages in which a revision's content may still change. */
export const OPEN_STAGES = ['preparing', 'early-review', 'fabricator-review', 'awaiting-signature'] as const

export function isStage(value: string): value is Stage {
  return (STAGES as readonly string[]).includes(value)
}

export function isOpenStage(stage: Stage): boolean {
  return (OPEN_STAGES as readonly Stage[]).includes(stage)
}

/**
 * What can happen to a revision as a whole. `supersede` is never asked for by a person: the release of a later
 * revision of the same project brings it about.
 */
export const MOVES = ['advance', 'send-back', 'withdraw', 'supersede'] as const

export type Move = (typeof MOVES)[number]

/** Moves that need a reason in words. */
export const MOVES_WITH_REASON: readonly Move[] = ['send-back', 'withdraw']

/** Where a move leads from each stage; a move that is not listed is illegal there. */
export const TRANSITIONS: Readonly<Record<Stage, Readonly<Partial<Record<Move, Stage>>>>> = {
  preparing: { advance: 'early-review', withdraw: 'withdrawn' },
  'early-review': { advance: 'fabricator-review', 'send-back': 'preparing', withdraw: 'withdrawn' },
  'fabricator-review': { advance: 'awaiting-signature', 'send-back': 'early-review', withdraw: 'withdrawn' },
  'awaiting-signature': { advance: 'released', 'send-back': 'fabricator-review', withdraw: 'withdrawn' },
  released: { supersede: 'superseded', withdraw: 'withdrawn' },
  superseded: {},
  withdrawn: {},
}
