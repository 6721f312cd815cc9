'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { LifeCaution } from '@/app/_components/ui/cautions'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Length, useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { formatComputedDigits, type Remedy, type RemedyReport, type RemedyState } from '@/lib/engine'
import { digitsAsComputed, digitsOfRadius } from '@/lib/engine/units'
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
  const [isUnfolded, setIsUnfolded] = useState(false)
  const { before, remedies } = report
  const isDynamic = before.survivalLifeCycles !== null
  const isPriced = before.costIndex !== null
  const radiusHead = useRadiusHead()
  const shown = isUnfolded ? remedies : remedies.slice(0, SHOWN_AT_FIRST)
  return (
    <div>
      <TableFrame label="Remedies">
        <table className="ledger unit-heads" data-stack="">
          <caption className="small muted">Remedies, best first. The numbers refer to the chart.</caption>
          <thead>
            <tr>
              <th scope="col" className="num">
                No.
              </th>
              <th scope="col">Changes</th>
              <th scope="col">Bend</th>
              <th scope="col" className="num">
                Copper strain, %
              </th>
              <th scope="col" className="num">
                Worst case over allowable
              </th>
              <th scope="col" className="num">
                {radiusHead}
              </th>
              {isDynamic && (
                <th scope="col" className="num">
                  Life, cycles
                  <LifeCaution />
                </th>
              )}
              <th scope="col" className="num">
                Bend zone
              </th>
              <th scope="col" className="num">
                Moment, N·mm
              </th>
              {isPriced && (
                <th scope="col" className="num">
                  Cost, %
                </th>
              )}
              {isPriced && (
                <th scope="col" className="num">
                  Parts per panel
                </th>
              )}
              <th scope="col">
                <span className="sr-only">Acts</span>
              </th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <td className="num" data-label="No." />
              <th scope="row">As it is</th>
              <Figures state={before} isDynamic={isDynamic} />
              {isPriced && (
                <PricedFigures
                  before={before}
                  after={before}
                  parts={remedies.find(({ partsPerPanel }) => partsPerPanel !== null)?.partsPerPanel?.before ?? null}
                />
              )}
              <td />
            </tr>
            {shown.map((remedy, at) => (
              <tr key={remedy.id} data-chosen={remedy.id === chosenId ? '' : undefined}>
                <td className="num" data-label="No.">
                  {at + 1}
                </td>
                <th scope="row" className="remedy-changes">
                  <button
                    type="button"
                    className="choice"
                    aria-pressed={remedy.id === chosenId}
                    onClick={() => onChoose(remedy.id)}
                  >
                    {nameRemedy(remedy)}
                  </button>
                  <RemedyDetail remedy={remedy} />
                </th>
                <Figures state={remedy.after} isDynamic={isDynamic} />
                {isPriced && (
                  <PricedFigures before={before} after={remedy.after} parts={remedy.partsPerPanel?.after ?? null} />
                )}
                <td className="row-acts no-print">
                  <RowAct label={`Try it: ${nameRemedy(remedy)}`} onPress={() => onTry(remedy)}>
                    try it
                  </RowAct>
                  {mayApply(remedy) && (
                    <RowAct label={`Apply: ${nameRemedy(remedy)}`} onPress={() => onApply(remedy)}>
                      apply
                    </RowAct>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      {remedies.length > SHOWN_AT_FIRST && (
        <Button weight="quiet" aria-expanded={isUnfolded} onPress={() => setIsUnfolded(!isUnfolded)}>
          {isUnfolded ? 'Show the best ones only' : `Show all ${remedies.length}`}
        </Button>
      )}
    </div>
  )
}

function useRadiusHead(): string {
  return `Minimum radius, ${useUnitLabels().plan}`
}

/** What is edited, what stands against it, and what the numbers do not say. */
export function RemedyDetail({ remedy }: { remedy: Remedy }) {
  const cautions = [...new Set(remedy.changes.flatMap((change) => change.cautions))]
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

function Figures({ state, isDynamic }: { state: RemedyState; isDynamic: boolean }) {
  const { unit } = useLengthUnit()
  const radiusHead = useRadiusHead()
  return (
    <>
      <td data-label="Bend">
        <VerdictMark verdict={state.verdict} />
      </td>
      <td className="num" data-label="Copper strain, %">
        {digitsAsComputed(state.peakStrainPct, 'strainPct')}
      </td>
      <td className="num" data-label="Worst case over allowable">
        {formatStrainShare(state.marginFraction)}
      </td>
      <td className="num" data-label={radiusHead}>
        {digitsOfRadius(state.minRadiusMm, unit)}
      </td>
      {isDynamic && (
        <td className="num" data-label="Life, cycles">
          {formatComputedDigits(state.survivalLife, 'lifeCycles')}
        </td>
      )}
      <td className="num" data-label="Bend zone">
        <Length valueUm={state.bendZoneThicknessUm} />
      </td>
      <td className="num" data-label="Moment, N·mm">
        {digitsAsComputed(state.momentNmm, 'momentNmm')}
      </td>
    </>
  )
}

/** Cost of a good part as a share of the present one, and parts on a panel. */
function PricedFigures({
  before,
  after,
  parts,
}: {
  readonly before: RemedyState
  readonly after: RemedyState
  readonly parts: number | null
}) {
  const share = before.costIndex === null || after.costIndex === null ? null : after.costIndex / before.costIndex
  return (
    <>
      <td className="num" data-label="Cost, %">
        {digitsAsComputed(share === null ? null : 100 * share, 'sharePct')}
      </td>
      <td className="num" data-label="Parts per panel">
        {parts ?? '–'}
      </td>
    </>
  )
}
