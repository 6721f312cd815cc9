'use client'

import { TableFrame } from '@/app/_components/ui/table-frame'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { digitsAsComputed, digitsOfRadius } from '@/lib/engine/units'
import { useUnitLabels } from '../cells'
import { useDraft } from '../draft'
import { findVerdictAt } from '../outcomes'

/** The bends' verdicts beside the construction, because every layer that changes moves them. */
export function BendSummary() {
  const { live } = useDraft()
  const { evaluation } = live
  const { unit } = useLengthUnit()
  const radiusHead = `Minimum radius, ${useUnitLabels().plan}`
  if (evaluation.bends.length === 0) return <p className="empty">No bends yet.</p>
  return (
    <TableFrame label="Bends in this construction">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="num">
              Copper strain, %
            </th>
            <th scope="col" className="num">
              Allowed, %
            </th>
            <th scope="col" className="num">
              {radiusHead}
            </th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {evaluation.bends.map((bend) => {
            const verdict = findVerdictAt(evaluation, 'bend', bend.bendId)
            return (
              <tr key={bend.bendId}>
                <th scope="row">{bend.name}</th>
                <td className="num" data-label="Copper strain, %">
                  {digitsAsComputed(bend.peakStrainPct, 'strainPct')}
                </td>
                <td className="num" data-label="Allowed, %">
                  {digitsAsComputed(bend.allowablePct, 'strainPct')}
                </td>
                <td className="num" data-label={radiusHead}>
                  {digitsOfRadius(bend.minRadiusByStrainMm, unit)}
                </td>
                <td data-label="Verdict">
                  <VerdictMark verdict={verdict ?? 'not-computed'} />
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </TableFrame>
  )
}
