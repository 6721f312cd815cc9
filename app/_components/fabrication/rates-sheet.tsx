'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { Notice } from '@/app/_components/ui/notices'
import { TableFrame } from '@/app/_components/ui/table-frame'
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

function StepTable({ rates, ...table }: TableProps) {
  return (
    <TableFrame label="Process steps and rates">
      <table className="ledger unit-heads" data-stack="">
        <caption className="small muted">
          Rates are index units: only their ratios mean something. Yield is of one pass; empty counts no loss.
        </caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Paid</th>
            <th scope="col" className="num">
              Rate
            </th>
            <th scope="col" className="num">
              Set-up, per order
            </th>
            <th scope="col" className="num">
              Yield, %
            </th>
            <th scope="col">Source of the rate</th>
          </tr>
        </thead>
        {STEP_GROUPS.map((group) => (
          <tbody key={group}>
            <tr>
              <th scope="rowgroup" colSpan={6} className="group-head">
                {GROUP_WORDS[group]}
              </th>
            </tr>
            {rates.steps
              .filter((step) => step.group === group)
              .map((step) => (
                <tr key={step.id}>
                  <th scope="row" className="font-normal">
                    {step.name}
                  </th>
                  <td data-label="Paid" className="small">
                    {UNIT_WORDS[step.unit]}
                  </td>
                  <LineCells
                    {...table}
                    lineKey={step.id}
                    name={step.name}
                    shown={{
                      rateIndex: String(step.rateIndex),
                      setUpIndex: String(step.setUpIndex),
                      yieldPct: inPct(step.yieldFraction),
                    }}
                    labels={{ rateIndex: 'Rate', setUpIndex: 'Set-up', yieldPct: 'Yield, %' }}
                  />
                </tr>
              ))}
          </tbody>
        ))}
      </table>
    </TableFrame>
  )
}

function RegistrationTable({ rates, ...table }: TableProps) {
  return (
    <TableFrame label="Effect of registration">
      <table className="ledger unit-heads" data-stack="">
        <caption className="small muted">
          What each registration requirement adds to a panel’s margins and spacing, and its yield.
        </caption>
        <thead>
          <tr>
            <th scope="col">Registration</th>
            <th scope="col" className="num">
              Margin added, mm
            </th>
            <th scope="col" className="num">
              Spacing added, mm
            </th>
            <th scope="col" className="num">
              Yield, %
            </th>
            <th scope="col">Source of the rate</th>
          </tr>
        </thead>
        <tbody>
          {rates.registration.map((cost) => (
            <tr key={cost.demand}>
              <th scope="row" className="font-normal">
                {DEMAND_WORDS[cost.demand]}
              </th>
              <LineCells
                {...table}
                lineKey={`registration-${cost.demand}`}
                name={`${DEMAND_WORDS[cost.demand]} registration`}
                shown={{
                  extraMarginMm: String(cost.extraMarginMm),
                  extraSpacingMm: String(cost.extraSpacingMm),
                  yieldPct: inPct(cost.yieldFraction),
                }}
                labels={{
                  extraMarginMm: 'Margin added, mm',
                  extraSpacingMm: 'Spacing added, mm',
                  yieldPct: 'Yield, %',
                }}
              />
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}

interface LineCellsProps extends Omit<TableProps, 'rates'> {
  readonly lineKey: string
  readonly name: string
  readonly shown: LineDraft
  readonly labels: Readonly<Record<string, string>>
}

/** The numbers of one line: for reading, or as fields once the fabricator replaces them. */
function LineCells({ lineKey, name, shown, labels, draft, problems, mayEdit, onEdit, onReplace }: LineCellsProps) {
  const own = draft.get(lineKey)
  return (
    <>
      {Object.entries(shown).map(([field, text]) => {
        const problem = problems.get(`${lineKey}.${field}`)
        const label = labels[field] ?? field
        const errorId = `${lineKey}-${field}-error`
        return (
          <td key={field} className="num cell-number" data-label={label}>
            {own === undefined || !mayEdit ? (
              <span className={own === undefined ? 'muted' : undefined}>{text === '' ? '–' : text}</span>
            ) : (
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
            )}
          </td>
        )
      })}
      <td data-label="Source of the rate" className="small">
        {own === undefined ? <span className="muted">illustrative</span> : <strong>own</strong>}{' '}
        {mayEdit && (
          <Button
            weight="quiet"
            aria-label={own === undefined ? `Replace: ${name}` : `Restore the illustrative rate: ${name}`}
            onPress={() => onReplace(lineKey, own === undefined ? shown : null)}
          >
            {own === undefined ? 'Replace' : 'Back'}
          </Button>
        )}
      </td>
    </>
  )
}
