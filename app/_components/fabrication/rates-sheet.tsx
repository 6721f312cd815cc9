'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable, RowGroup } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { Notice } from '@/app/_components/ui/notices'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import { tidy } from '@/lib/engine/numerics'
import {
  makeRates,
  type ProcessRatesContent,
  processRatesContentSchema,
  type Rates,
  STEP_GROUPS,
} from '@/lib/fabrication/cost'
import { saveSheet } from './actions'
import { DEMAND_WORDS, GROUP_WORDS, UNIT_WORDS } from './rate-words'
import { addLine, type LineDraft, makeDraft, type RatesDraft, readDraft, setField } from './rates-draft'

interface RatesSheetProps {
  readonly companyId: string
  readonly seenVersion: number
  readonly content: ProcessRatesContent | null
  readonly mayEdit: boolean
  readonly today: string
}

/** The table of process steps. A fabricator replaces lines of it by own rates; the others stay labelled illustrative. */
export function RatesSheet({ companyId, seenVersion, content, mayEdit, today }: RatesSheetProps) {
  const [draft, setDraft] = useState<RatesDraft>(() => makeDraft(content))
  const [issuedOn, setIssuedOn] = useState(today)
  const [note, setNote] = useState('')
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map())
  const { send, isPending, refusal } = useAction(saveSheet)
  const [isDone, setIsDone] = useState(false)
  const rates = makeRates(content)
  const save = () => {
    const read = readDraft(draft)
    const parsed = processRatesContentSchema.safeParse(read.content)
    setProblems(read.problems)
    setIsDone(false)
    if (read.problems.size > 0 || !parsed.success) return
    send({ companyId, kind: 'process-rates', seenVersion, issuedOn, note, content: parsed.data }, () => setIsDone(true))
  }
  const edit = (key: string, field: string, text: string) => {
    setDraft(setField(draft, key, field, text))
    setProblems(new Map([...problems].filter(([at]) => at !== `${key}.${field}`)))
  }
  return (
    <div className="stack">
      <StepTable
        rates={rates}
        draft={draft}
        problems={problems}
        mayEdit={mayEdit}
        onEdit={edit}
        onReplace={(key, line) => setDraft(addLine(draft, key, line))}
      />
      <RegistrationTable
        rates={rates}
        draft={draft}
        problems={problems}
        mayEdit={mayEdit}
        onEdit={edit}
        onReplace={(key, line) => setDraft(addLine(draft, key, line))}
      />
      {mayEdit && (
        <>
          <div className="form-grid">
            <TextField label="Date of issue" type="date" value={issuedOn} onChange={setIssuedOn} />
            <TextField label="Note on this version" isOptional value={note} onChange={setNote} />
          </div>
          {problems.size > 0 && (
            <Notice tone="refused" role="alert">
              {problems.size === 1 ? 'One number' : `${problems.size} numbers`} above cannot be read: see beside the
              fields.
            </Notice>
          )}
          <FormError refusal={refusal} />
          {isDone && (
            <Notice tone="done" role="status">
              Saved as a new version.
            </Notice>
          )}
          <div className="row">
            <Button weight="strong" onPress={save} isPending={isPending}>
              Save as a new version
            </Button>
          </div>
        </>
      )}
    </div>
  )
}

interface TableProps {
  readonly rates: Rates
  readonly draft: RatesDraft
  readonly problems: ReadonlyMap<string, string>
  readonly mayEdit: boolean
  readonly onEdit: (key: string, field: string, text: string) => void
  readonly onReplace: (key: string, line: LineDraft | null) => void
}

const inPct = (fraction: number | null): string => (fraction === null ? '' : String(tidy(100 * fraction)))

const STEP_COLUMNS = {
  step: { head: 'Step', isRowHead: true, className: 'font-normal' },
  paid: { head: 'Paid', className: 'small' },
  rateIndex: { head: 'Rate', isNumeric: true, className: 'cell-number' },
  setUpIndex: { head: 'Set-up, per order', isNumeric: true, className: 'cell-number' },
  yieldPct: { head: 'Yield', unit: '%', isNumeric: true, className: 'cell-number' },
  whose: { head: 'Source of the rate', className: 'small' },
} satisfies Columns

function StepTable({ rates, ...table }: TableProps) {
  return (
    <DataTable
      label="Process steps and rates"
      columns={STEP_COLUMNS}
      caption="Rates are index units: only their ratios mean something. Yield is of one pass; empty counts no loss."
      isGrouped
    >
      {STEP_GROUPS.map((group) => (
        <RowGroup key={group} columns={STEP_COLUMNS} head={GROUP_WORDS[group]}>
          {rates.steps
            .filter((step) => step.group === group)
            .map((step) => {
              const line: Line = { ...table, lineKey: step.id, name: step.name }
              return (
                <DataRow
                  key={step.id}
                  columns={STEP_COLUMNS}
                  cells={{
                    step: step.name,
                    paid: UNIT_WORDS[step.unit],
                    rateIndex: <LineNumber {...line} field="rateIndex" label="Rate" text={String(step.rateIndex)} />,
                    setUpIndex: (
                      <LineNumber {...line} field="setUpIndex" label="Set-up" text={String(step.setUpIndex)} />
                    ),
                    yieldPct: (
                      <LineNumber {...line} field="yieldPct" label="Yield, %" text={inPct(step.yieldFraction)} />
                    ),
                    whose: (
                      <WhoseRate
                        {...line}
                        shown={{
                          rateIndex: String(step.rateIndex),
                          setUpIndex: String(step.setUpIndex),
                          yieldPct: inPct(step.yieldFraction),
                        }}
                      />
                    ),
                  }}
                />
              )
            })}
        </RowGroup>
      ))}
    </DataTable>
  )
}

const REGISTRATION_COLUMNS = {
  registration: { head: 'Registration', isRowHead: true, className: 'font-normal' },
  extraMarginMm: { head: 'Margin added', unit: 'mm', isNumeric: true, className: 'cell-number' },
  extraSpacingMm: { head: 'Spacing added', unit: 'mm', isNumeric: true, className: 'cell-number' },
  yieldPct: { head: 'Yield', unit: '%', isNumeric: true, className: 'cell-number' },
  whose: { head: 'Source of the rate', className: 'small' },
} satisfies Columns

function RegistrationTable({ rates, ...table }: TableProps) {
  return (
    <DataTable
      label="Effect of registration"
      columns={REGISTRATION_COLUMNS}
      caption="What each registration requirement adds to a panel’s margins and spacing, and its yield."
    >
      {rates.registration.map((cost) => {
        const line: Line = {
          ...table,
          lineKey: `registration-${cost.demand}`,
          name: `${DEMAND_WORDS[cost.demand]} registration`,
        }
        const shown = {
          extraMarginMm: String(cost.extraMarginMm),
          extraSpacingMm: String(cost.extraSpacingMm),
          yieldPct: inPct(cost.yieldFraction),
        }
        return (
          <DataRow
            key={cost.demand}
            columns={REGISTRATION_COLUMNS}
            cells={{
              registration: DEMAND_WORDS[cost.demand],
              extraMarginMm: (
                <LineNumber {...line} field="extraMarginMm" label="Margin added, mm" text={shown.extraMarginMm} />
              ),
              extraSpacingMm: (
                <LineNumber {...line} field="extraSpacingMm" label="Spacing added, mm" text={shown.extraSpacingMm} />
              ),
              yieldPct: <LineNumber {...line} field="yieldPct" label="Yield, %" text={shown.yieldPct} />,
              whose: <WhoseRate {...line} shown={shown} />,
            }}
          />
        )
      })}
    </DataTable>
  )
}

interface Line extends Omit<TableProps, 'rates'> {
  readonly lineKey: string
  readonly name: string
}

/** A number of a line: for reading, or a field once the fabricator replaces the line. */
function LineNumber({
  lineKey,
  name,
  draft,
  problems,
  mayEdit,
  onEdit,
  field,
  label,
  text,
}: Line & { readonly field: string; readonly label: string; readonly text: string }) {
  const own = draft.get(lineKey)
  const problem = problems.get(`${lineKey}.${field}`)
  const errorId = `${lineKey}-${field}-error`
  if (own === undefined || !mayEdit) {
    return <span className={own === undefined ? 'muted' : undefined}>{text === '' ? '–' : text}</span>
  }
  return (
    <>
      <input
        className="input input-num"
        inputMode="decimal"
        autoComplete="off"
        aria-label={`${label}: ${name}`}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : errorId}
        value={own[field] ?? ''}
        onChange={(event) => onEdit(lineKey, field, event.target.value)}
      />
      {problem !== undefined && (
        <span id={errorId} className="field-error cell-error">
          {problem}
        </span>
      )}
    </>
  )
}

function WhoseRate({ lineKey, name, draft, mayEdit, onReplace, shown }: Line & { readonly shown: LineDraft }) {
  const own = draft.get(lineKey)
  return (
    <>
      {own === undefined ? <span className="muted">illustrative</span> : <strong>own</strong>}{' '}
      {mayEdit && (
        <Button
          weight="quiet"
          aria-label={own === undefined ? `Replace: ${name}` : `Restore the illustrative rate: ${name}`}
          onPress={() => onReplace(lineKey, own === undefined ? shown : null)}
        >
          {own === undefined ? 'Replace' : 'Restore'}
        </Button>
      )}
    </>
  )
}
