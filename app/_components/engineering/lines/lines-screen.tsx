'use client'

import { useEffect, useState } from 'react'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { DraftScreen, type DraftScreenProps, useDraft } from '../draft'
import '../engineering.css'
import { LineReport } from './line-report'
import type { LineStudies } from './study-lines'

/** Lines whose impedance is stated: section, curves and losses by field solution. */
export function LinesScreen({ stored, saveAction }: DraftScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <Lines />
    </DraftScreen>
  )
}

function Lines() {
  const { live, stored } = useDraft()
  const { evaluatedDesign } = live
  const [found, setFound] = useState<LineStudies | 'failed' | null>(null)
  const { limits, testedLives } = stored
  useEffect(() => {
    const leaving = new AbortController()
    setFound(null)
    // Field solutions and assembly weigh more than the rest of the page: it is there before they are.
    import('./study-lines')
      .then(({ studyLines }) => studyLines(evaluatedDesign, { limits, testedLives }, leaving.signal))
      .then((studies) => {
        if (!leaving.signal.aborted) setFound(studies)
      })
      .catch(() => {
        if (!leaving.signal.aborted) setFound('failed')
      })
    return () => leaving.abort()
  }, [evaluatedDesign, limits, testedLives])
  if (found === 'failed')
    return (
      <Notice tone="caution" role="alert">
        The lines could not be computed. Reload the page to try again.
      </Notice>
    )
  if (found === null)
    return (
      <PageSection title="Lines">
        <p className="small muted" role="status">
          Solving the sections…
        </p>
        <Skeleton />
      </PageSection>
    )
  if (found.lines.length === 0)
    return (
      <PageSection title="Lines">
        <p className="empty">
          No line can be shown. It takes a conductor with a width, an impedance and a reference layer on the features
          page, and a construction whose permittivities are known; the checklist says what is missing.
        </p>
      </PageSection>
    )
  return found.lines.map(({ studied, study }) => (
    <LineReport
      key={`${studied.conductorId} ${studied.zoneId}`}
      studied={studied}
      study={study}
      crosstalkLimitPct={found.crosstalkLimitPct}
    />
  ))
}
