'use client'

import { lazy, Suspense, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { PageSection } from '@/app/_components/ui/section'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { describeFoldState, drawFolded, FOLDED_VIEWS, type FoldedViewName, SCREEN_PALETTE } from '@/lib/drawing'
import { callByName } from '@/lib/engine'
import type { Foldable } from '@/lib/engine/folding'
import { listFoldNotes, listFoldSteps, measureRoom, prepareFolding, shapeFold } from '@/lib/engine/folding'
import { useDraft } from '../draft'
import { PictureView, useWidth } from '../pictures'
import { FoldLegend } from './fold-legend'
import { FoldSlider } from './fold-slider'
import './folded.css'

const SpaceView = lazy(() => import('./space-view'))

const PICTURE_WIDTH_PX = { least: 280, most: 760 }
const VIEWS: readonly { readonly value: FoldedViewName; readonly label: string }[] = [
  { value: 'oblique', label: 'Oblique' },
  { value: 'front', label: 'Front' },
  { value: 'top', label: 'Top' },
  { value: 'side', label: 'Side' },
]

/** The part as it folds, from the plan and the bends of the draft. */
export function FoldedSection() {
  const { live } = useDraft()
  const { evaluatedDesign, evaluation } = live
  const foldable = useMemo(
    () => prepareFolding(evaluatedDesign, evaluation.zones, evaluation.bends),
    [evaluatedDesign, evaluation.zones, evaluation.bends],
  )
  return (
    <PageSection title="Folded" id="folded">
      {foldable.kind === 'foldable' ? <Fold folding={foldable.value} /> : <NotFolded foldable={foldable} />}
    </PageSection>
  )
}

function Fold({ folding }: { readonly folding: Extract<Foldable, { kind: 'foldable' }>['value'] }) {
  const { evaluatedDesign } = useDraft().live
  const { unit } = useLengthUnit()
  const { ref, widthPx } = useWidth<HTMLDivElement>(PICTURE_WIDTH_PX.most)
  const steps = useMemo(() => listFoldSteps(evaluatedDesign, folding), [evaluatedDesign, folding])
  const [chosen, setChosen] = useState<number | null>(null)
  const [view, setView] = useState<FoldedViewName>('oblique')
  const [isInSpace, setInSpace] = useState(false)
  // Folded whole until somebody moves the slider; a step that is gone holds nothing back.
  const made = Math.min(chosen ?? steps.length, steps.length)
  const bodies = useMemo(() => shapeFold(evaluatedDesign, folding, made), [evaluatedDesign, folding, made])
  const room = useMemo(() => measureRoom(evaluatedDesign, folding), [evaluatedDesign, folding])
  const notes = useMemo(() => listFoldNotes(evaluatedDesign, folding), [evaluatedDesign, folding])
  const pictureWidthPx = Math.max(PICTURE_WIDTH_PX.least, Math.min(PICTURE_WIDTH_PX.most, widthPx))
  const picture = useMemo(
    () =>
      isInSpace
        ? null
        : drawFolded(
            { bodies, steps, made, room },
            { palette: SCREEN_PALETTE, widthPx: pictureWidthPx, view: FOLDED_VIEWS[view], unit },
          ),
    [isInSpace, bodies, steps, made, room, pictureWidthPx, view, unit],
  )
  return (
    <div ref={ref} className="stack">
      {steps.length > 0 && <FoldSlider steps={steps} made={made} onChange={setChosen} />}
      <div className="fold-acts">
        {!isInSpace && <ChoiceGroup label="Seen from" options={VIEWS} value={view} onChange={setView} />}
        <Button onPress={() => setInSpace(!isInSpace)}>{isInSpace ? 'Back to the drawing' : 'Turn it in space'}</Button>
      </div>
      {isInSpace && (
        <Suspense fallback={<Skeleton />}>
          <SpaceView bodies={bodies} description={describeFoldState(steps, made)} />
        </Suspense>
      )}
      {picture !== null && <PictureView picture={picture} />}
      <FoldLegend bodies={bodies} />
      {notes.length > 0 && (
        <ul className="small plain-list">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p className="small muted">
        Bends are made in the order in which the design lists them; gaps and an order that works are judged by the
        checklist’s item on folded clearance. Film springs back and creeps: a true part needs a former or a fixture.
      </p>
    </div>
  )
}

/** What stands in the way of folding, in the words of the design. */
function NotFolded({ foldable }: { readonly foldable: Exclude<Foldable, { kind: 'foldable' }> }) {
  const { bends } = useDraft().live.evaluatedDesign
  const nameOf = (id: string | null) => bends.find((bend) => bend.id === id)?.name ?? null
  switch (foldable.kind) {
    case 'missing':
      return (
        <>
          <p>Not folded yet. What is missing:</p>
          <ul>
            {[...new Set(foldable.missing.map(({ label }) => label))].map((label) => (
              <li key={label}>{label}</li>
            ))}
          </ul>
        </>
      )
    case 'impossible':
      return (
        <>
          <p>The part cannot be folded as drawn:</p>
          <ul>
            {foldable.reasons.map(({ bendId, reason }) => {
              const name = nameOf(bendId)
              return (
                <li key={`${bendId} ${reason}`}>
                  {name === null ? '' : `${callByName('bend', name)}: `}
                  {reason}
                </li>
              )
            })}
          </ul>
        </>
      )
  }
}
