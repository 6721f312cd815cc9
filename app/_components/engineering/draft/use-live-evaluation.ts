'use client'

import isSame from 'fast-deep-equal'
import { useEffect, useState } from 'react'
import { type Design, type DraftEvaluation, type Issue, parseDesign } from '@/lib/engine'
import type { StoredRevision } from './stored-revision'

export interface LiveEvaluation {
  /** Results of the last draft that could be evaluated. */
  readonly evaluation: DraftEvaluation
  /** The design that those results belong to. */
  readonly evaluatedDesign: Design
  /** What is wrong with the present draft; empty when the results are its own. */
  readonly issues: readonly Issue[]
}

const loadEvaluation = () => import('./evaluate-live')

/**
 * Evaluates each draft with the engine that the server records with, at most once per frame. A draft with issues keeps
 * the last results on screen, marked as older. The engine is loaded after the page; until it is there, the recorded results stand.
 */
export function useLiveEvaluation(
  draft: Design,
  recorded: Pick<
    StoredRevision,
    'design' | 'evaluation' | 'limits' | 'testedLives' | 'artworkFacts' | 'checkedLimits' | 'template'
  >,
): LiveEvaluation {
  const [state, setState] = useState<LiveEvaluation & { readonly draft: Design }>(() => ({
    draft: recorded.design,
    evaluation: recorded.evaluation,
    evaluatedDesign: recorded.design,
    issues: [],
  }))
  const { design, evaluation: saved, limits, testedLives, artworkFacts, checkedLimits, template } = recorded
  useEffect(() => {
    let isOld = false
    const frame = window.requestAnimationFrame(async () => {
      const parsed = parseDesign(draft)
      if (!parsed.ok) {
        setState((before) => ({ ...before, draft, issues: parsed.issues }))
        return
      }
      const { evaluateLive } = await loadEvaluation()
      // While it was loaded somebody may have typed on.
      if (isOld) return
      const isSaved = checkedLimits.length > 0 && isSame(draft, design)
      const evaluation = evaluateLive(
        parsed.value,
        { limits, testedLives, artworkFacts, checkedLimits, template },
        isSaved ? saved : null,
      )
      setState({ draft, evaluation, evaluatedDesign: parsed.value, issues: [] })
    })
    return () => {
      isOld = true
      window.cancelAnimationFrame(frame)
    }
  }, [draft, design, saved, limits, testedLives, artworkFacts, checkedLimits, template])
  return state
}
