'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
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
  const columns = {
    bend: { head: 'Bend', isRowHead: true },
    copperStrain: { head: 'Copper strain', unit: '%', isNumeric: true },
    allowed: { head: 'Allowed', unit: '%', isNumeric: true },
    radiushead: { head: radiusHead, isNumeric: true },
    verdict: { head: 'Verdict' },
  } satisfies Columns
  return (
    <DataTable label="Bends in this construction" columns={columns}>
      {evaluation.bends.map((bend) => {
        const verdict = findVerdictAt(evaluation, 'bend', bend.bendId)
        return (
          <DataRow
            key={bend.bendId}
            columns={columns}
            cells={{
              bend: bend.name,
              copperStrain: digitsAsComputed(bend.peakStrainPct, 'strainPct'),
              allowed: digitsAsComputed(bend.allowablePct, 'strainPct'),
              radiushead: digitsOfRadius(bend.minRadiusByStrainMm, unit),
              verdict: <VerdictMark verdict={verdict ?? 'not-computed'} />,
            }}
          />
        )
      })}
    </DataTable>
  )
}
