'use client'

import { useMemo } from 'react'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { useDraft } from '../draft'
import { listFindings } from './findings'
import type { MeasuredPlan } from './use-measured-plan'
import type { PlanEditor } from './use-plan-editor'

/** Findings on what is drawn, with the numbers of their pins on the drawing. */
export function PlanFindings({ editor, measured }: { editor: PlanEditor; measured: MeasuredPlan }) {
  const { live } = useDraft()
  const findings = useMemo(
    () => listFindings(live.evaluatedDesign, live.evaluation, measured),
    [live.evaluatedDesign, live.evaluation, measured],
  )
  if (findings.length === 0) {
    return (
      <p className="empty">
        No item of the checklist fails at anything drawn. What is not known yet is not judged here.
      </p>
    )
  }
  return (
    <ol className="outcomes">
      {findings.map(({ key, verdict, summary, ref }, index) => (
        <li key={key}>
          <VerdictMark verdict={verdict} />
          <div>
            <p>
              <span className="num">{index + 1}.</span> {summary}
            </p>
            {ref !== null && (
              <button type="button" className="choice small" onClick={() => editor.choose({ ref, point: null })}>
                Show it on the drawing
              </button>
            )}
          </div>
        </li>
      ))}
    </ol>
  )
}
