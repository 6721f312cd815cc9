'use client'

import isSame from 'fast-deep-equal'
import { useEffect, useMemo, useState } from 'react'
import { type Design, type DraftEvaluation, evaluateDraft, type Issue, parseDesign } from '@/lib/engine'
import { makeCatalogue } from '@/lib/engine/catalogue'
import { markDraftCheckedWhenSaved } from '@/lib/review'
import type { StoredRevision } from './stored-revision'

export interface LiveEvaluation {
  /** Results of the last draft that could be evaluated. */
  readonly evaluation: DraftEvaluation
  /** The design that those results belong to. */
  readonly evaluatedDesign: Design
  /** What is wrong with the present draft; empty when the results are its own. */
  readonly issues: readonly Issue[]
}

/**
 * Evaluates each draft with the engine that the server records with, at most once per frame. A draft with issues keeps
 * the last results on screen, marked as older.
 */
export function useLiveEvaluation(
  draft: Design,
  recorded: Pick<StoredRevision, 'design' | 'evaluation' | 'limits' | 'testedLives' | 'checkedLimits' | 'template'>,
): LiveEvaluation {
  const [state, setState] = useState<LiveEvaluation & { readonly draft: Design }>(() => ({
    draft: recorded.design,
    evaluation: recorded.evaluation,
    evaluatedDesign: recorded.design,
    issues: [],
  }))
  const { design, evaluation: saved, limits, testedLives, checkedLimits, template } = recorded
  const { items } = useMemo(() => makeCatalogue(template), [template])
  useEffect(() => {
    const frame = window.requestAnimationFrame(() => {
      const parsed = parseDesign(draft)
      if (!parsed.ok) {
        setState((before) => ({ ...before, draft, issues: parsed.issues }))
        return
      }
      const isSaved = checkedLimits.length > 0 && isSame(draft, design)
      const evaluated = evaluateDraft(parsed.value, { limits, testedLives, items })
      const evaluation = markDraftCheckedWhenSaved(evaluated, items, checkedLimits, isSaved ? saved : null)
      setState({ draft, evaluation, evaluatedDesign: parsed.value, issues: [] })
    })
    return () => window.cancelAnimationFrame(frame)
  }, [draft, design, saved, limits, testedLives, checkedLimits, items])
  return state
}
