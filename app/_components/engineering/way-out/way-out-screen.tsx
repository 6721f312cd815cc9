'use client'

import isSame from 'fast-deep-equal'
import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { type Design, dropSettledMarks } from '@/lib/engine'
import { applyDesignPatch, type WayOut } from '@/lib/engine/remedies'
import { AppliedNotice } from '../applied-notice'
import { DraftScreen, type DraftScreenProps, useDraft } from '../draft'
import '../engineering.css'
import { useWayOut } from './use-way-out'
import { WayOutReport } from './way-out-report'

/** A small set of changes with which nothing calculated fails: found for the whole design, shown with every effect, applied as one draft. */
export function WayOutScreen({ stored, saveAction }: DraftScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <Search />
    </DraftScreen>
  )
}

const RADIUS_OPTIONS = [
  { value: 'free', label: 'Radii may change' },
  { value: 'fixed', label: 'Radii are fixed' },
] as const

function Search() {
  const { state, dispatch, live, stored, isReadOnly, setProposing, problemCount } = useDraft()
  const { evaluatedDesign } = live
  const [isRadiusFixed, setIsRadiusFixed] = useState(false)
  const [applied, setApplied] = useState<Design | null>(null)
  const { found, isSearching, progress, failure, search, stop } = useWayOut(stored.revisionId, evaluatedDesign)
  const isCurrent = useMemo(
    () => found !== null && problemCount === 0 && isSame(found.design, evaluatedDesign),
    [found, evaluatedDesign, problemCount],
  )
  const mayApply = !isReadOnly || stored.proposing !== null
  const apply = (wayOut: WayOut) => {
    // Who may not save proposes: the edits stay in the draft until then.
    if (isReadOnly) setProposing(true)
    const design = dropSettledMarks(state.design, applyDesignPatch(state.design, wayOut.patch))
    dispatch({ type: 'replace', design })
    setApplied(design)
  }
  const isApplied = applied !== null && applied === state.design
  return (
    <PageSection title="A way out">
      <p className="muted">
        A small set of changes with which nothing fails that is calculated from the design. Each was checked against the
        whole checklist; a smaller set may exist. What fails in the artwork is listed by itself, for the files have to
        be drawn again; routing, room in the assembly and shielding are yours to check.
      </p>
      <div className="row">
        <ChoiceGroup
          label="Inside radii of bends"
          options={RADIUS_OPTIONS}
          value={isRadiusFixed ? 'fixed' : 'free'}
          onChange={(radius) => {
            setIsRadiusFixed(radius === 'fixed')
            setApplied(null)
            if (problemCount === 0) search(evaluatedDesign, radius === 'fixed')
          }}
        />
        {isSearching ? (
          <>
            <progress max={1} value={progress} aria-label="Share of the search that is done" />
            <Button onPress={stop}>Stop</Button>
          </>
        ) : (
          !isCurrent &&
          !isApplied && (
            <Button onPress={() => search(evaluatedDesign, isRadiusFixed)} isDisabled={problemCount > 0}>
              Search again
            </Button>
          )
        )}
      </div>
      {isSearching && found === null && <Skeleton />}
      {failure !== null && !isSearching && (
        <Notice tone="caution" role="alert">
          No way out was found. {failure}
        </Notice>
      )}
      {isApplied && (
        <AppliedNotice onUndone={() => setApplied(null)}>
          Applied to the draft. {stored.mayEdit ? 'It is stored when you save.' : 'Propose it above.'}
        </AppliedNotice>
      )}
      {found !== null && !isSearching && (
        <WayOutReport
          wayOut={found.wayOut}
          onApply={mayApply && isCurrent && found.wayOut.changes.length > 0 ? () => apply(found.wayOut) : null}
          whyNot={
            mayApply
              ? isCurrent || isApplied
                ? ''
                : 'The design has changed since. Search again before you apply.'
              : stored.lockedBecause
          }
        />
      )}
    </PageSection>
  )
}
