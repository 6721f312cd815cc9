import type { ActRefusal } from '@/lib/data'
import type { Issue } from '@/lib/engine/results'

/** Why an act was not done: what the data layer says, or that nothing could be learnt from the server. */
export type ShownRefusal =
  | ActRefusal
  | { readonly kind: 'unsent'; readonly message: string; readonly issues: readonly Issue[] }
  | { readonly kind: 'not-allowed'; readonly message: string }
  | { readonly kind: 'not-found'; readonly message: string }
  | { readonly kind: 'signed-out'; readonly message: string }
  | { readonly kind: 'unexpected'; readonly message: string; readonly errorId: string }

export type ActionResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: ShownRefusal }

export type Action<T> = (input: unknown) => Promise<ActionResult<T>>

export function getIssues(refusal: ShownRefusal): readonly Issue[] {
  return 'issues' in refusal ? refusal.issues : []
}
