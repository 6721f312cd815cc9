import type { Design, DraftEvaluation, Issue } from '@/lib/engine'
import type { StoredRevision } from './stored-revision'

/** What drafts of one page are evaluated by. */
export type EvaluationBasis = Pick<
  StoredRevision,
  'design' | 'evaluation' | 'limits' | 'testedLives' | 'artworkFacts' | 'checkedLimits' | 'template'
>

/** To the thread that evaluates: first what it evaluates by, then drafts. */
export type EvaluationOrder =
  | { readonly kind: 'basis'; readonly basis: EvaluationBasis }
  | { readonly kind: 'draft'; readonly draft: Design }

/** From the thread, one for each draft, in their order. */
export type EvaluationAnswer =
  | { readonly ok: false; readonly issues: readonly Issue[] }
  /** `design` is what was read from the draft, null where it is the draft itself. */
  | { readonly ok: true; readonly evaluation: DraftEvaluation; readonly design: Design | null }
