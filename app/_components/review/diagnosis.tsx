'use client'

import Link from 'next/link'
import { useMemo, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { DecidingLimit, DecidingValue } from '@/app/_components/ui/limit-text'
import { EmptyState } from '@/app/_components/ui/notices'
import { SelectField } from '@/app/_components/ui/select-field'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import type { BendResult, Design, ZoneResult } from '@/lib/engine'
import { BASIS_WORDS, type DecidedOutcome, ITEM_BASES, type ItemBasis, type Outcome } from '@/lib/engine/results'
import { capitalise } from '@/lib/engine/units'
import type { Cause, CauseRow, Cure } from '@/lib/review'
import { AnswerMark } from './answer-mark'
import { CausePicture } from './cause-picture'

export interface DiagnosisPlace {
  readonly projectId: string
  readonly revisionId: string
  readonly mayComment: boolean
  readonly mayProposeWaiver: boolean
  readonly mayEdit: boolean
}

interface DiagnosisProps {
  readonly causes: readonly Cause[]
  readonly place: DiagnosisPlace
  readonly design: Design
  readonly bends: readonly BendResult[]
  readonly zones: readonly ZoneResult[]
}

const ALL = 'all'
type BasisFilter = ItemBasis | typeof ALL

const BASIS_OPTIONS: readonly { readonly value: BasisFilter; readonly label: string }[] = [
  { value: ALL, label: 'All' },
  ...ITEM_BASES.map((basis) => ({ value: basis, label: capitalise(BASIS_WORDS[basis]) })),
]

const ORDERS = [
  { value: 'severity', label: 'By severity' },
  { value: 'place', label: 'By place' },
] as const

/** What fails, as causes: each with its figure, its picture, and the steps that may settle it. */
export function Diagnosis({ causes, place, design, bends, zones }: DiagnosisProps) {
  const [basis, setBasis] = useState<BasisFilter>(ALL)
  const [order, setOrder] = useState<(typeof ORDERS)[number]['value']>('severity')
  const [person, setPerson] = useState<string>(ALL)
  const people = useMemo(
    () => [...new Set(causes.flatMap(({ rows }) => rows.flatMap(({ askedOf }) => askedOf)))].sort(),
    [causes],
  )
  const shown = useMemo(() => {
    const kept = causes.flatMap((cause) => {
      const rows = cause.rows.filter(
        (row) => (basis === ALL || row.basis === basis) && (person === ALL || row.askedOf.includes(person)),
      )
      return rows.length === 0 ? [] : [{ ...cause, rows }]
    })
    if (order === 'severity') return kept
    return kept.toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1))
  }, [causes, basis, order, person])
  return (
    <div className="stack">
      {causes.length > 1 && (
        <details className="no-print">
          <summary>Filter and sort</summary>
          <div className="row filters">
            <ChoiceGroup label="What the verdict rests on" options={BASIS_OPTIONS} value={basis} onChange={setBasis} />
            <ChoiceGroup label="Order" options={ORDERS} value={order} onChange={setOrder} />
            {people.length > 0 && (
              <SelectField
                label="Ask"
                value={person}
                onChange={setPerson}
                options={[
                  { value: ALL, label: 'anybody' },
                  ...people.map((name) => ({ value: name, label: `the ${name}` })),
                ]}
              />
            )}
          </div>
        </details>
      )}
      {shown.length === 0 && <EmptyState>Nothing that fails matches this filter.</EmptyState>}
      <ol>
        {shown.map((cause, at) => (
          <CauseCard
            key={cause.id}
            cause={cause}
            place={place}
            picture={
              <CausePicture
                cause={cause}
                design={design}
                bends={bends}
                zones={zones}
                isOpen={at === 0 && basis === ALL}
              />
            }
          />
        ))}
      </ol>
    </div>
  )
}

function CauseCard({ cause, place, picture }: { cause: Cause; place: DiagnosisPlace; picture: React.ReactNode }) {
  const { lead, rows, because, severity, title } = cause
  const leading = rows.find(({ itemId }) => itemId === lead.itemId) ?? rows[0]
  const outcome = leading?.itemId === lead.itemId ? lead.outcome : leading?.outcomes[0]
  return (
    <li className="cause" data-severity={severity ?? 'waived'}>
      <div className="cause-head">
        <h3>
          {nameOf(cause)}
          <span className="font-normal muted"> {title.charAt(0).toLowerCase() + title.slice(1)}</span>
        </h3>
        <span className="cause-severity">{severity ?? 'waived'}</span>
      </div>
      <div className="cause-body">
        <div className="stack">
          {outcome !== undefined && <LeadLine outcome={outcome} />}
          {because.length > 0 && <p>Cause: {because.join('; ')}.</p>}
          {leading !== undefined && <Cures row={leading} place={place} />}
          <details>
            <summary>{rows.length === 1 ? '1 item fails here' : `${rows.length} items fail here`}</summary>
            <ul className="plain-list cause-rows">
              {rows.map((row) => (
                <CauseRowView key={row.itemId} row={row} place={place} />
              ))}
            </ul>
          </details>
        </div>
        {picture}
      </div>
    </li>
  )
}

/** "One, at most none" is no figure: the sentence says what is there and must not be. */
const isFigure = ({ limit }: DecidedOutcome): boolean => limit.unit !== 'count' || limit.value !== 0

function LeadLine({ outcome }: { outcome: Outcome }) {
  return (
    <div>
      {outcome.kind === 'decided' && isFigure(outcome) && (
        <p className="cause-figure">
          <DecidingValue outcome={outcome} />{' '}
          <span className="muted small">
            limit <DecidingLimit outcome={outcome} />
          </span>
        </p>
      )}
      <p>{outcome.summary}</p>
    </div>
  )
}

function CauseRowView({ row, place }: { row: CauseRow; place: DiagnosisPlace }) {
  const { projectId, revisionId } = place
  return (
    <li>
      <p>
        {row.isWaived ? <AnswerMark state="waived" /> : <VerdictMark verdict={row.isFollower ? 'follows' : 'fails'} />}{' '}
        <span className="small muted">
          {row.severity}, {BASIS_WORDS[row.basis]}
        </span>{' '}
        <Link href={paths.item(projectId, revisionId, row.itemId)}>{row.question}</Link>
      </p>
      {row.outcomes.map((outcome) => (
        <p key={outcome.summary} className="small">
          {outcome.summary}
        </p>
      ))}
      <Cures row={row} place={place} />
    </li>
  )
}

const CURE_WORDS: Readonly<Record<Cure['kind'], string>> = {
  remedies: 'Find remedies',
  field: 'Change the design',
  waiver: 'Propose a waiver',
  question: 'Ask about it',
}

function Cures({ row, place }: { row: CauseRow; place: DiagnosisPlace }) {
  const links = row.cures.flatMap((cure) => {
    const href = hrefOf(cure, row, place)
    return href === null ? [] : [{ kind: cure.kind, href }]
  })
  return (
    <p className="cures no-print">
      {links.map(({ kind, href }) => (
        <Link key={kind} href={href} aria-label={`${CURE_WORDS[kind]}: ${row.question}`}>
          {CURE_WORDS[kind]}
        </Link>
      ))}
    </p>
  )
}

/** Null where the person may not take the step. */
function hrefOf(cure: Cure, { itemId, isWaived }: CauseRow, place: DiagnosisPlace): string | null {
  const { projectId, revisionId } = place
  switch (cure.kind) {
    case 'remedies':
      return paths.bend(projectId, revisionId, cure.bendId, 'remedies')
    case 'field':
      if (!place.mayEdit) return null
      return cure.bendId === null
        ? paths.revision(projectId, revisionId, cure.tab)
        : paths.bend(projectId, revisionId, cure.bendId)
    case 'waiver':
      return place.mayProposeWaiver && !isWaived ? paths.item(projectId, revisionId, itemId) : null
    case 'question':
      return place.mayComment ? paths.ask(projectId, revisionId, { kind: 'item', id: itemId }) : null
  }
}

const AT_WORDS: Readonly<Partial<Record<Cause['at'], string>>> = { document: 'Whole design', review: 'Review' }

const nameOf = ({ at, places }: Cause): string =>
  places.length === 0 ? (AT_WORDS[at] ?? 'Whole design') : places.map(({ name }) => name).join(', ')
