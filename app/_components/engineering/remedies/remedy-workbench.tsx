'use client'

import isSame from 'fast-deep-equal'
import { useEffect, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { Notice } from '@/app/_components/ui/notices'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { RemedyBasisView } from '@/lib/data'
import { type Bend, type Design, dropSettledMarks, type Remedy, type RemedyReport } from '@/lib/engine'
import { applyDesignPatch } from '@/lib/engine/remedies'
import { explainUnpriced } from '@/lib/fabrication/remedies'
import { AppliedNotice } from '../applied-notice'
import { useDraft } from '../draft'
import { RemedyArrivalNote } from './remedy-arrival'
import { fetchRemedyBases } from './remedy-bases'
import { RemedyChart } from './remedy-chart'
import { RemedyComparison } from './remedy-comparison'
import { RemedyList } from './remedy-list'
import './remedies.css'
import { useRemedySearch } from './use-remedy-search'
import { nameRemedy } from './words'

/** What came of the last apply, so that it can be taken back from here. */
interface Applied {
  readonly name: string
  /** The draft right after it: undo is offered only as long as nothing else was edited. */
  readonly draft: Design
}

const RADIUS_OPTIONS = [
  { value: 'free', label: 'Radius may change' },
  { value: 'fixed', label: 'Radius is fixed' },
] as const

/** Remedies of one bend, sought as soon as this is shown: the list, the chart, trying one, applying one. */
export function RemedyWorkbench({ bend }: { bend: Bend }) {
  const { state, dispatch, live, stored, isReadOnly, problemCount } = useDraft()
  const [chosenId, setChosenId] = useState<string | null>(null)
  const [triedId, setTriedId] = useState<string | null>(null)
  const [applied, setApplied] = useState<Applied | null>(null)
  const [isRadiusFixed, setIsRadiusFixed] = useState(false)
  const { evaluatedDesign } = live

  const { revisionId } = stored
  const { bases, known, chosenBasis, chooseBasis } = useRemedyBases(revisionId)
  const place = {
    revisionId,
    bendId: bend.id,
    isRadiusFixed,
    basis: bases === 'fetching' ? null : { chosen: chosenBasis },
  }
  const { found, isSearching, isStopping, progress, failure, search, stop } = useRemedySearch(
    place,
    problemCount === 0 ? evaluatedDesign : null,
  )
  const begin = () => {
    setChosenId(null)
    search(evaluatedDesign)
  }
  // By content: every evaluation reads the draft into a new object, and undo brings an earlier state back.
  const isSameDesign = useMemo(() => found !== null && isSame(found.design, evaluatedDesign), [found, evaluatedDesign])
  // Stopped before anything was found, a search leaves the list of the one before, which asked otherwise.
  const isSameQuestion =
    found !== null && found.isRadiusFixed === isRadiusFixed && found.basis?.company.id === chosenBasis?.company.id
  const isCurrent = isSameDesign && isSameQuestion && problemCount === 0
  const apply = (remedy: Remedy) => {
    const design = dropSettledMarks(state.design, applyDesignPatch(state.design, remedy.patch))
    dispatch({ type: 'replace', design })
    setApplied({ name: nameRemedy(remedy), draft: design })
    setTriedId(null)
  }
  const tried = found?.report.remedies.find((remedy) => remedy.id === triedId)
  const mayApply = (remedy: Remedy) => !isReadOnly && isCurrent && remedy.forbiddenBy.length === 0
  return (
    <>
      <div className="row">
        <Button
          onPress={begin}
          isPending={isSearching}
          pendingLabel="Computing…"
          isDisabled={problemCount > 0}
          // Somebody who asked for remedies by keyboard continues from here.
          autoFocus
        >
          {found === null ? 'Find remedies' : 'Search again'}
        </Button>
        {isSearching && (
          <>
            <progress max={1} value={progress} aria-label="Share of the search that is done" />
            <Button onPress={stop} isPending={isStopping} pendingLabel="Stopping…">
              Stop
            </Button>
          </>
        )}
        {problemCount > 0 && <span className="small muted">Fix the errors above first.</span>}
      </div>
      {failure !== null && !isSearching && (
        <Notice tone="caution" role="alert">
          {found === null
            ? `No remedies were found. ${failure}`
            : `${failure} The remedies below are of the search before.`}
        </Notice>
      )}
      <ChoiceGroup
        label="Inside radius"
        options={RADIUS_OPTIONS}
        value={isRadiusFixed ? 'fixed' : 'free'}
        onChange={(radius) => {
          setIsRadiusFixed(radius === 'fixed')
          if (problemCount === 0) begin()
        }}
      />
      {known.length > 1 && (
        <ChoiceGroup
          label="By the panels, rates and shelf of"
          options={known.map(({ company }) => ({ value: company.id, label: company.name }))}
          value={chosenBasis?.company.id ?? ''}
          onChange={(companyId) => {
            chooseBasis(companyId)
            if (problemCount === 0) begin()
          }}
        />
      )}
      {applied !== null && applied.draft === state.design && (
        <AppliedNotice onUndone={() => setApplied(null)}>
          Applied to the draft: {applied.name}. It is stored when you save.
        </AppliedNotice>
      )}
      {found !== null && !isCurrent && (isSameQuestion || !isSearching) && (
        <Notice tone="caution" role="status">
          {isSameQuestion
            ? 'These remedies were computed for an earlier state of the design.'
            : `These remedies were computed ${found.isRadiusFixed ? 'with the radius fixed' : 'with a radius that may change'}${found.basis === null ? '' : `, by the panels of ${found.basis.company.name}`}.`}{' '}
          Search again before applying one.
        </Notice>
      )}
      {found !== null && (
        <div data-outdated={isCurrent ? undefined : ''}>
          {found.isFirst ? (
            <FirstNote report={found.report} isSearching={isSearching} />
          ) : (
            <Summary report={found.report} />
          )}
          <BasisNote view={found.basis} design={found.design} isUnknown={bases === null} />
          {found.report.remedies.length > 0 && (
            <>
              <RemedyList
                report={found.report}
                chosenId={chosenId}
                onChoose={setChosenId}
                onTry={(remedy) => setTriedId(remedy.id)}
                onApply={apply}
                mayApply={mayApply}
              />
              {!found.isFirst && <RemedyChart report={found.report} chosenId={chosenId} />}
            </>
          )}
        </div>
      )}
      {found !== null && tried !== undefined && (
        <RemedyComparison
          remedy={tried}
          design={found.design}
          bendId={bend.id}
          limits={stored.limits}
          testedLives={stored.testedLives}
          artworkFacts={stored.artworkFacts}
          checkedLimits={stored.checkedLimits}
          template={stored.template}
          onClose={() => setTriedId(null)}
          onApply={mayApply(tried) ? () => apply(tried) : null}
        />
      )}
    </>
  )
}

/** What leads is certain before the search is through: it is shown at once. */
function FirstNote({ report, isSearching }: { report: RemedyReport; isSearching: boolean }) {
  const { arrival, remedies, search } = report
  const [lead] = remedies
  if (arrival.kind !== 'meets' || lead === undefined) return null
  const isLarger = arrival.makesPartLarger && arrival.sameSizeRemedyId === null
  return (
    <p role="status">
      <strong>
        {arrival.changeCount === 1 ? 'One change is enough' : `${arrival.changeCount} changes together are enough`}:{' '}
        {nameRemedy(lead)}.
      </strong>{' '}
      {isLarger && 'It makes the part larger. '}
      {isSearching
        ? `Still looking for ${isLarger ? 'sets that do not, and for ' : ''}what else helps.`
        : `The search ended there: larger sets than of ${search.deepest} were not tried.`}
    </p>
  )
}

function Summary({ report }: { report: RemedyReport }) {
  const { before, tried, search, remedies, leftOut, notTried } = report
  const triedCount = tried.alone + tried.inPairs + tried.inLargerSets
  if (notTried !== null) return <p className="empty">Nothing to try. {notTried}</p>
  return (
    <div className="stack">
      {search.isStopped && (
        <Notice tone="caution" role="status">
          {triedCount === 0
            ? 'Stopped before any set was tried.'
            : `Stopped: these are the best of the ${triedCount} sets tried. The search was not complete; a better set may exist.`}
        </Notice>
      )}
      <p className="small">
        Strain and life as they are: <VerdictMark verdict={before.verdict} />. {tried.alone} single changes,{' '}
        {tried.inPairs} pairs and {tried.inLargerSets} larger sets were tried; {remedies.length} are listed. {leftOut}{' '}
        were dropped: they do not improve the bend, another set is at least as good on every measure, or they fall short
        and come after the best of those that do. Room in the assembly, shielding and routing are not computed.
      </p>
      <RemedyArrivalNote report={report} />
    </div>
  )
}

type Bases = readonly RemedyBasisView[]

/**
 * Fetched once when remedies are sought; the first fabricator is taken until somebody chooses another. Null: the server
 * did not give them.
 */
function useRemedyBases(revisionId: string) {
  const [bases, setBases] = useState<Bases | null | 'fetching'>('fetching')
  const [companyId, setCompanyId] = useState<string | null>(null)
  useEffect(() => {
    let isWanted = true
    fetchRemedyBases(revisionId).then((fetched) => {
      if (isWanted) setBases(fetched)
    })
    return () => {
      isWanted = false
    }
  }, [revisionId])
  const known: Bases = bases === null || bases === 'fetching' ? [] : bases
  const chosenBasis = known.find(({ company }) => company.id === companyId) ?? known[0] ?? null
  return { bases, known, chosenBasis, chooseBasis: setCompanyId }
}

interface BasisNoteProps {
  readonly view: RemedyBasisView | null
  /** The design that the remedies were found for. */
  readonly design: Design
  /** The server did not say what fabricators state. */
  readonly isUnknown: boolean
}

/** Whose panels, rates and shelf stand behind cost, parts per panel and materials, or why there is none. */
function BasisNote({ view, design, isUnknown }: BasisNoteProps) {
  if (view === null) {
    return (
      <p className="small muted">
        {isUnknown
          ? 'Cost, parts per panel and the shelf are not included: the server did not answer. Reload the page to try again.'
          : 'Cost, parts per panel and the shelf are not included: no fabricator with access to this revision shares them.'}
      </p>
    )
  }
  const { company, usesIllustrativeRates, shelf } = view
  const unpriced = explainUnpriced(view, design)
  return (
    <p className="small muted">
      {unpriced === ''
        ? `Cost and parts per panel by the panels of ${company.name}${usesIllustrativeRates ? '; some of the rates are illustrative' : ''}.`
        : `Cost by the panels of ${company.name} is not computed. ${unpriced}`}{' '}
      {shelf === null
        ? `${company.name} does not keep or share a shelf.`
        : `Materials by the shelf of ${company.name}.`}
    </p>
  )
}
