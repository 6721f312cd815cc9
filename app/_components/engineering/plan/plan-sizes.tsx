'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { digitsOfResultLength, getShownUnit } from '@/lib/engine/units'
import { useUnitLabels } from '../cells'
import { useDraft } from '../draft'
import { findVerdictAt } from '../outcomes'
import type { MeasuredPlan } from './use-measured-plan'

/** What follows from the drawing: nobody types these. */
export function PlanSizes({ measured }: { measured: MeasuredPlan }) {
  const { live } = useDraft()
  const units = useUnitLabels()
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('mm', chosen)
  const { evaluatedDesign, evaluation } = live
  const say = (mm: number | null) => (mm === null ? '–' : digitsOfResultLength(mm, 'mm', unit))
  if (measured.measures === null || measured.areas.length === 0) {
    return <p className="empty">Draw an outline, and lines that divide it: lengths and widths follow.</p>
  }
  const zoneName = (id: string | null) => evaluatedDesign.construction.zones.find((zone) => zone.id === id)?.name
  const columns = {
    what: { head: 'Area or bend', isRowHead: true },
    zone: { head: 'Zone' },
    length: { head: 'Length', unit: units.plan, isNumeric: true },
    width: { head: 'Width', unit: units.plan, isNumeric: true },
    verdict: { head: 'Verdict' },
  } satisfies Columns
  return (
    <DataTable label="Sizes of areas and bends" columns={columns}>
      {measured.measures.areas.map(({ area, zoneId, lengthMm, widthMm }) => (
        <DataRow
          key={`area ${area}`}
          columns={columns}
          cells={{
            what: measured.areas[area]?.name ?? 'area without a mark',
            zone: zoneName(zoneId) ?? <span className="muted">none</span>,
            length: say(lengthMm),
            width: say(widthMm),
            verdict: (
              <VerdictMark verdict={(zoneId !== null && findVerdictAt(evaluation, 'zone', zoneId)) || 'not-computed'} />
            ),
          }}
        />
      ))}
      {measured.measures.bands.map(({ id, bendId, area, widthMm, axisLengthMm }) => (
        <DataRow
          key={`bend ${id}`}
          columns={columns}
          cells={{
            what: evaluatedDesign.bends.find(({ id }) => id === bendId)?.name ?? bendId,
            zone: zoneName(area === null ? null : (measured.areas[area]?.zoneId ?? null)) ?? (
              <span className="muted">none</span>
            ),
            length: say(widthMm),
            width: say(axisLengthMm),
            verdict: <VerdictMark verdict={findVerdictAt(evaluation, 'bend', bendId) ?? 'not-computed'} />,
          }}
        />
      ))}
    </DataTable>
  )
}
