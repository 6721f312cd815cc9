'use client'

import { startTransition, useEffect, useMemo, useRef, useState } from 'react'
import type { Design, DraftEvaluation, Issue } from '@/lib/engine'
import { type DraftEvaluator, startEvaluator } from './draft-evaluator'
import type { EvaluationAnswer, EvaluationBasis } from './evaluation-order'

export interface LiveEvaluation {
  /** Results of the last draft that could be evaluated. */
  readonly evaluation: DraftEvaluation
  /** The design that those results belong to. */
  readonly evaluatedDesign: Design
  /** What is wrong with the present draft; empty when the results are its own. */
  readonly issues: readonly Issue[]
}

const NO_ISSUES: readonly Issue[] = []

/**
 * Evaluates drafts with the engine that the server records with, beside the page. A draft with issues keeps
 * the last results on screen, marked as older. Until the engine is there, the recorded results stand.
 */
export function useLiveEvaluation(draft: Design, recorded: EvaluationBasis): LiveEvaluation {
  const [state, setState] = useState<LiveEvaluation>(() => ({
    evaluation: recorded.evaluation,
    evaluatedDesign: recorded.design,
    issues: NO_ISSUES,
  }))
  const { design, evaluation, limits, testedLives, artworkFacts, checkedLimits, template } = recorded
  const basis = useMemo<EvaluationBasis>(
    () => ({ design, evaluation, limits, testedLives, artworkFacts, checkedLimits, template }),
    [design, evaluation, limits, testedLives, artworkFacts, checkedLimits, template],
  )
  const evaluator = useRef<DraftEvaluator | null>(null)
  useEffect(() => {
    const started = startEvaluator()
    evaluator.current = started
    return () => {
      evaluator.current = null
      started.end()
    }
  }, [])
  useEffect(() => {
    const onAnswer = (answer: EvaluationAnswer) =>
      // Results give way to keys: they are drawn in pieces.
      startTransition(() => {
        if (!answer.ok) setState((before) => ({ ...before, issues: answer.issues }))
        else setState({ evaluation: answer.evaluation, evaluatedDesign: answer.design ?? draft, issues: NO_ISSUES })
      })
    evaluator.current?.ask({ draft, basis, onAnswer })
  }, [draft, basis])
  return state
}
