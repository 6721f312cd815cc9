'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { ZONE_FIELDS, type Zone } from '@/lib/engine'
import { getUnitSymbol } from '@/lib/engine/units'
import { makePlaces, OptionalNumberCell } from '../cells'
import { updateZone, useDraft, useEdit } from '../draft'

const MEASURED = [
  'throughExpansionPpmPerC',
  'throughModulusGpa',
  'glassTransitionDegC',
] as const satisfies readonly (keyof Zone)[]

/** What was measured on a zone's stack through its thickness: plated holes live by it. */
export function ThroughThickness() {
  const { state } = useDraft()
  const edit = useEdit()
  const columns = {
    zone: { head: 'Zone', isRowHead: true },
    throughExpansionPpmPerC: column('throughExpansionPpmPerC'),
    throughModulusGpa: column('throughModulusGpa'),
    glassTransitionDegC: column('glassTransitionDegC'),
  } satisfies Columns
  const { zones } = state.design.construction
  if (zones.length === 0) return null
  return (
    <DataTable label="Through the thickness, as measured" columns={columns} isGrid>
      {zones.map((zone, index) => {
        const at = makePlaces(['construction', 'zones', index], `zone.${zone.id}`, zone.name)
        const cell = (field: (typeof MEASURED)[number]) => (
          <OptionalNumberCell
            label={ZONE_FIELDS[field].label}
            at={at(field)}
            value={zone[field]}
            onChange={(value) =>
              edit(at(field).key, (design) =>
                updateZone(design, zone.id, (present) => ({ ...present, [field]: value })),
              )
            }
          />
        )
        return (
          <DataRow
            key={zone.id}
            columns={columns}
            cells={{
              zone: zone.name,
              throughExpansionPpmPerC: cell('throughExpansionPpmPerC'),
              throughModulusGpa: cell('throughModulusGpa'),
              glassTransitionDegC: cell('glassTransitionDegC'),
            }}
          />
        )
      })}
    </DataTable>
  )
}

function column(field: (typeof MEASURED)[number]) {
  const { head, unit } = ZONE_FIELDS[field]
  return { head, unit: getUnitSymbol(unit), isNumeric: true, className: 'cell-number' } as const
}
