/** How it is shown that a need is met: the four methods of verification of ISO/IEC/IEEE 29148 (from memory). */
export const NEED_METHODS = ['analysis', 'inspection', 'demonstration', 'test'] as const
export type NeedMethod = (typeof NEED_METHODS)[number]

/** The one record of what they are called. */
export const NEED_METHOD_WORDS: Readonly<Record<NeedMethod, string>> = {
  analysis: 'analysis',
  inspection: 'inspection',
  demonstration: 'demonstration',
  test: 'test',
}

/** Something that the part must do, with how it is shown that it does. Times are ISO 8601 in UTC. */
export interface Need {
  readonly id: string
  /** Within the revision, from 1. */
  readonly number: number
  readonly text: string
  readonly itemIds: readonly string[]
  readonly method: NeedMethod
  /** YYYY-MM-DD; null where no day is planned. */
  readonly plannedOn: string | null
  /** What came of it; empty while nothing did. */
  readonly result: string
  readonly files: readonly { readonly id: string; readonly fileName: string; readonly sha256: string }[]
  readonly reportedById: string | null
  readonly reportedByName: string | null
  readonly reportedAt: string | null
  readonly acceptedByName: string | null
  readonly acceptedAt: string | null
  readonly acceptNote: string
  /** Why it is no need any more; null while it is one. */
  readonly droppedReason: string | null
  readonly statedByName: string
  readonly version: number
}

export const NEED_STATES = ['planned', 'overdue', 'reported', 'accepted', 'dropped'] as const
export type NeedState = (typeof NEED_STATES)[number]

export const NEED_STATE_WORDS: Readonly<Record<NeedState, string>> = {
  planned: 'no result yet',
  overdue: 'no result, and the planned date has passed',
  reported: 'result awaits acceptance',
  accepted: 'accepted',
  dropped: 'dropped',
}

/** @param today  YYYY-MM-DD */
export function getNeedState(
  {
    droppedReason,
    acceptedAt,
    reportedAt,
    plannedOn,
  }: Pick<Need, 'droppedReason' | 'acceptedAt' | 'reportedAt' | 'plannedOn'>,
  today: string,
): NeedState {
  if (droppedReason !== null) return 'dropped'
  if (acceptedAt !== null) return 'accepted'
  if (reportedAt !== null) return 'reported'
  return plannedOn !== null && plannedOn < today ? 'overdue' : 'planned'
}
