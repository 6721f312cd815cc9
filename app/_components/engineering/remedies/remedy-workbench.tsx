'use client'

import isSame from 'fast-deep-equal'
import { useEffect, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { Notice } from '@/app/_components/ui/notices'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { RemedyBasisView } from '@/lib/data'
import { type Bend, type Design, dropSettledMarks, type Remedy, type RemedyReport } from '@/lib/engine'
import { applyDesignPatch, findRemedies, RADIUS_FAMILIES } from '@/lib/engine/remedies'
import { explainUnpriced, toRemedyOptions } from '@/lib/fabrication/remedies'
import { useDraft } from '../draft'
import { RemedyArrivalNote } from './remedy-arrival'
import { fetchRemedyBases } from './remedy-bases'
import { RemedyChart } from './remedy-chart'
import { RemedyComparison } from './remedy-comparison'
import { RemedyList } from './remedy-list'
import './remedies.css'
import { nameRemedy } from './words'

/** Remedies of one state of the design: they do not fit another. */
interface Found {
  readonly design: Design
  readonly report: RemedyReport
  /** The fabricator's panels, rates and shelf that were used; null where there are none. */
  readonly basis: RemedyBasisView | null
}

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
  const [found, setFound] = useState<Found | null>(null)
  /** The state of the design for which remedies are wanted. */
  const [wanted, setWanted] = useState<Design | null>(problemCount === 0 ? live.evaluatedDesign : null)
  const [chosenId, setChosenId] = useState<string | null>(null)
  const [triedId, setTriedId] = useState<string | null>(null)
  const [applied, setApplied] = useState<Applied | null>(null)
  const [isRadiusFixed, setIsRadiusFixed] = useState(false)
  const { evaluatedDesign } = live

  const { limits, revisionId } = stored
  const bendId = bend.id
  const { bases, known, chosenBasis, chooseBasis } = useRemedyBases(revisionId)
  useEffect(() => {
    if (wanted === null || bases === 'fetching') return
    // The page shows that it computes before it does.
    const timer = window.setTimeout(() => {
      const report = findRemedies(wanted, bendId, {
        limits,
        ...toRemedyOptions(chosenBasis, wanted, new Date().toISOString().slice(0, 10)),
        ...(isRadiusFixed ? { leftOutFamilies: RADIUS_FAMILIES } : {}),
        // Larger sets take seconds: not on the thread that the page runs on.
        mostChanges: 2,
      })
      setFound({ design: wanted, report, basis: chosenBasis })
      setChosenId(null)
      setWanted(null)
    }, 0)
    return () => window.clearTimeout(timer)
  }, [wanted, bendId, limits, bases, chosenBasis, isRadiusFixed])
  // By content: every evaluation reads the draft into a new object, and undo brings an earlier state back.
  const isSameDesign = useMemo(() => found !== null && isSame(found.design, evaluatedDesign), [found, evaluatedDesign])
  const isCurrent = isSameDesign && problemCount === 0
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
          onPress={() => setWanted(evaluatedDesign)}
          isPending={wanted !== null}
          pendingLabel="Computing…"
          isDisabled={problemCount > 0}
          // Whoever asked for remedies by keyboard goes on from here.
          autoFocus
        >
          {found === null ? 'Find remedies' : 'Search again'}
        </Button>
        {problemCount > 0 && <span className="small muted">Fix the errors above first.</span>}
      </div>
      <ChoiceGroup
        label="Inside radius"
        options={RADIUS_OPTIONS}
        value={isRadiusFixed ? 'fixed' : 'free'}
        onChange={(radius) => {
          setIsRadiusFixed(radius === 'fixed')
          if (problemCount === 0) setWanted(evaluatedDesign)
        }}
      />
      {known.length > 1 && (
        <ChoiceGroup
          label="By the panels, rates and shelf of"
          options={known.map(({ company }) => ({ value: company.id, label: company.name }))}
          value={chosenBasis?.company.id ?? ''}
          onChange={(companyId) => {
            chooseBasis(companyId)
            if (problemCount === 0) setWanted(evaluatedDesign)
          }}
        />
      )}
      {applied !== null && applied.draft === state.design && (
        <Notice tone="done" role="status">
          <p>Applied to the draft: {applied.name}. It is stored when you save.</p>
          <div className="row above">
            <Button
              onPress={() => {
                dispatch({ type: 'undo' })
                setApplied(null)
              }}
            >
              Undo
            </Button>
          </div>
        </Notice>
      )}
      {found !== null && !isCurrent && (
        <Notice tone="caution" role="status">
          These remedies were computed for an earlier state of the design. Search again before applying one.
        </Notice>
      )}
      {found !== null && (
        <div data-outdated={isCurrent ? undefined : ''}>
          <Summary report={found.report} />
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
              <RemedyChart report={found.report} chosenId={chosenId} />
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
          checkedLimits={stored.checkedLimits}
          template={stored.template}
          onClose={() => setTriedId(null)}
          onApply={mayApply(tried) ? () => apply(tried) : null}
        />
      )}
    </>
  )
}

function Summary({ report }: { report: RemedyReport }) {
  const { before, tried, remedies, leftOut, notTried } = report
  if (notTried !== null) return <p className="empty">Nothing to try. {notTried}</p>
  return (
    <div className="stack">
      <p className="small">
        As it is: <VerdictMark verdict={before.verdict} />. {tried.alone} single changes, {tried.inPairs} pairs and{' '}
        {tried.inLargerSets} larger sets were tried; {remedies.length} are listed. {leftOut} were dropped: they do not
        improve the bend, or another set is at least as good on every measure. Room in the assembly, shielding and
        routing are not computed.
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
