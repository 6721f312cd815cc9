'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { LifeCaution } from '@/app/_components/ui/cautions'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Length, useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { formatComputedDigits, type Remedy, type RemedyReport, type RemedyState } from '@/lib/engine'
import { digitsAsComputed, digitsOfRadius, type LengthUnit } from '@/lib/engine/units'
import { useUnitLabels } from '../cells'
import { RowAct } from '../row-act'
import { formatStrainShare, nameRemedy } from './words'

/** Best ones first; the rest unfolds on demand. */
const SHOWN_AT_FIRST = 8

interface RemedyListProps {
  readonly report: RemedyReport
  readonly chosenId: string | null
  readonly onChoose: (remedyId: string) => void
  readonly onTry: (remedy: Remedy) => void
  readonly onApply: (remedy: Remedy) => void
  readonly mayApply: (remedy: Remedy) => boolean
}

export function RemedyList({ report, chosenId, onChoose, onTry, onApply, mayApply }: RemedyListProps) {
  const { unit } = useLengthUnit()
  const units = useUnitLabels()
  const [isUnfolded, setIsUnfolded] = useState(false)
  const { before, remedies } = report
  const isDynamic = before.survivalLifeCycles !== null
  const isPriced = before.costIndex !== null
  const shown = isUnfolded ? remedies : remedies.slice(0, SHOWN_AT_FIRST)
  const columns = {
    no: { head: 'No.', isNumeric: true },
    changes: { head: 'Changes', isRowHead: true, className: 'remedy-changes' },
    bend: { head: 'Bend' },
    strain: { head: 'Copper strain', unit: '%', isNumeric: true },
    worst: { head: 'Worst case over allowable', isNumeric: true },
    radius: { head: 'Minimum radius', unit: units.plan, isNumeric: true },
    ...(isDynamic ? { life: { head: 'Life', unit: 'cycles', headNote: <LifeCaution />, isNumeric: true } } : {}),
    bendZone: { head: 'Bend zone', isNumeric: true },
    moment: { head: 'Moment', unit: 'N·mm', isNumeric: true },
    ...(isPriced
      ? { cost: { head: 'Cost', unit: '%', isNumeric: true }, parts: { head: 'Parts per panel', isNumeric: true } }
      : {}),
    acts: { head: 'Acts', isHeadHidden: true, className: 'row-acts no-print' },
  } satisfies Columns
  return (
    <div>
      <DataTable label="Remedies" columns={columns} caption="Remedies, best first. The numbers refer to the chart.">
        <DataRow
          columns={columns}
          cells={{
            no: null,
            changes: 'As it is',
            ...makeFigures(before, unit),
            ...makePricedFigures({
              before,
              after: before,
              parts: remedies.find(({ partsPerPanel }) => partsPerPanel !== null)?.partsPerPanel?.before ?? null,
            }),
            acts: null,
          }}
        />
        {shown.map((remedy, at) => (
          <DataRow
            key={remedy.id}
            data-chosen={remedy.id === chosenId ? '' : undefined}
            columns={columns}
            cells={{
              no: at + 1,
              changes: (
                <>
                  <button
                    type="button"
                    className="choice"
                    aria-pressed={remedy.id === chosenId}
                    onClick={() => onChoose(remedy.id)}
                  >
                    {nameRemedy(remedy)}
                  </button>
                  <RemedyDetail remedy={remedy} />
                </>
              ),
              ...makeFigures(remedy.after, unit),
              ...makePricedFigures({ before, after: remedy.after, parts: remedy.partsPerPanel?.after ?? null }),
              acts: (
                <>
                  <RowAct label={`Try it: ${nameRemedy(remedy)}`} onPress={() => onTry(remedy)}>
                    try it
                  </RowAct>
                  {mayApply(remedy) && (
                    <RowAct label={`Apply: ${nameRemedy(remedy)}`} onPress={() => onApply(remedy)}>
                      apply
                    </RowAct>
                  )}
                </>
              ),
            }}
          />
        ))}
      </DataTable>
      {remedies.length > SHOWN_AT_FIRST && (
        <Button weight="quiet" aria-expanded={isUnfolded} onPress={() => setIsUnfolded(!isUnfolded)}>
          {isUnfolded ? 'Show the best ones only' : `Show all ${remedies.length}`}
        </Button>
      )}
    </div>
  )
}

/** What was not looked at. */
const JUDGED_NOTES: Readonly<Record<Exclude<Remedy['judged'], 'folded'>, string>> = {
  'on-numbers': 'Judged by the drawn dimensions. Try it to see it on the plan and folded.',
  'on-plan': 'Judged on the plan; the folded part was not looked at. Try it to see that too.',
}

/** What is edited, what stands against it, and what the numbers do not say. */
export function RemedyDetail({ remedy }: { remedy: Remedy }) {
  const cautions = [...new Set(remedy.changes.flatMap((change) => change.cautions))]
  const improvedCount = remedy.movedItems.filter(({ effect }) => effect === 'better').length
  return (
    <ul className="small remedy-detail">
      {remedy.changes.map((change) => (
        <li key={change.id}>{change.detail}</li>
      ))}
      {remedy.forbiddenBy.map((need) => (
        <li key={`${need.kind} ${need.name}`} className="remedy-forbidden">
          <strong>Forbidden by {need.name}.</strong> {need.because}
        </li>
      ))}
      {remedy.worsens.map((bend) => (
        <li key={bend.bendId}>
          Bend {bend.name} gets worse: <VerdictMark verdict={bend.before} /> becomes{' '}
          <VerdictMark verdict={bend.after} />
        </li>
      ))}
      {remedy.movedItems.map(({ itemId, effect, question, because }) =>
        effect === 'better' ? null : (
          <li key={itemId}>
            <strong>{effect === 'fails' ? 'Makes an item fail:' : 'Makes an item worse:'}</strong> {question} {because}
          </li>
        ),
      )}
      {improvedCount > 0 && (
        <li>
          Improves {improvedCount} checklist {improvedCount === 1 ? 'item' : 'items'}.
        </li>
      )}
      {remedy.after.verdict === 'meets' && remedy.judged !== 'folded' && (
        <li className="muted">{JUDGED_NOTES[remedy.judged]}</li>
      )}
      {remedy.offShelf.map(({ name, state, leadTimeDays }) => (
        <li key={name}>
          <strong>Needs a material that is not on the shelf:</strong> {name}
          {state === 'to-order' && leadTimeDays !== null
            ? ` (lead time ${leadTimeDays} ${leadTimeDays === 1 ? 'day' : 'days'}).`
            : ' (the shelf does not state availability).'}
        </li>
      ))}
      {remedy.partsPerPanel !== null && remedy.partsPerPanel.after !== remedy.partsPerPanel.before && (
        <li>
          <strong>
            {remedy.partsPerPanel.after < remedy.partsPerPanel.before
              ? 'Loses parts per panel'
              : 'Gains parts per panel'}
            :
          </strong>{' '}
          {remedy.partsPerPanel.before} before, {remedy.partsPerPanel.after} after.
        </li>
      )}
      {cautions.map((caution) => (
        <li key={caution} className="muted">
          {caution}
        </li>
      ))}
    </ul>
  )
}

function makeFigures(state: RemedyState, unit: LengthUnit) {
  return {
    bend: <VerdictMark verdict={state.verdict} />,
    strain: digitsAsComputed(state.peakStrainPct, 'strainPct'),
    worst: formatStrainShare(state.marginFraction),
    radius: digitsOfRadius(state.minRadiusMm, unit),
    life: formatComputedDigits(state.survivalLife, 'lifeCycles'),
    bendZone: <Length valueUm={state.bendZoneThicknessUm} />,
    moment: digitsAsComputed(state.momentNmm, 'momentNmm'),
  }
}

interface Priced {
  readonly before: RemedyState
  readonly after: RemedyState
  readonly parts: number | null
}

/** Cost of a good part as a share of the present one, and parts on a panel. */
function makePricedFigures({ before, after, parts }: Priced) {
  const share = before.costIndex === null || after.costIndex === null ? null : after.costIndex / before.costIndex
  return { cost: digitsAsComputed(share === null ? null : 100 * share, 'sharePct'), parts: parts ?? '–' }
}
