export const ATTENDANCES = ['present', 'excused'] as const

/** What carries a decision out: an action that it made, or the item or thread that it settles. */
export const DECISION_POINTS = ['none', 'action', 'item', 'thread'] as const
export type DecisionPoint = (typeof DECISION_POINTS)[number]

/** A meeting of the review, as its minutes have it. */
export interface Meeting {
  readonly id: string
  /** Within the revision, from 1. */
  readonly number: number
  readonly title: string
  /** YYYY-MM-DD */
  readonly heldOn: string
  readonly agenda: string
  readonly present: readonly string[]
  readonly excused: readonly string[]
  readonly decisions: readonly {
    readonly ordinal: number
    readonly text: string
    readonly points: { readonly kind: DecisionPoint; readonly id: string; readonly label: string }
  }[]
  readonly recordedByName: string
  readonly recordedAt: string
}

/** `action 4: Order the clad`; empty where nothing carries it out. */
export function describePoint({ kind, label }: Meeting['decisions'][number]['points']): string {
  return kind === 'none' ? '' : kind === 'action' ? label : `${kind}: ${label}`
}
