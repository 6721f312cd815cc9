'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { FoilThickness, Length } from '@/app/_components/ui/unit-context'
import { digitsAsComputed } from '@/lib/engine/units'
import { useDraft } from '../draft'

const COLUMNS = {
  conductor: { head: 'Conductor', isRowHead: true },
  finishedCopper: { head: 'Finished copper', isNumeric: true },
  resistance: { head: 'Resistance', unit: 'Ω', isNumeric: true },
  drop: { head: 'Drop', unit: 'V', isNumeric: true },
  carries: { head: 'Carries', unit: 'A', isNumeric: true },
  rise: { head: 'Rise', unit: '°C', isNumeric: true },
  lightestFoil: { head: 'Lightest foil', isNumeric: true },
  remarks: { head: 'Remarks', className: 'small' },
} satisfies Columns

/** What the stated currents come to: resistance, drop, rise, and the lightest foil that would serve. */
export function ConductorResults() {
  const { live } = useDraft()
  const { conductors } = live.evaluation
  if (conductors.length === 0) return null
  return (
    <PageSection title="Conductors, computed">
      <DataTable label="Current in the conductors" columns={COLUMNS}>
        {conductors.map((conductor) => (
          <DataRow
            key={conductor.conductorId}
            columns={COLUMNS}
            cells={{
              conductor: conductor.name,
              finishedCopper: <Length valueUm={conductor.finishedThicknessUm} />,
              resistance: digitsAsComputed(conductor.resistanceOhm, 'resistanceOhm'),
              drop: digitsAsComputed(conductor.dropVolt, 'dropVolt'),
              carries: digitsAsComputed(conductor.capacityAmp, 'currentAmp'),
              rise: digitsAsComputed(conductor.riseDegC, 'riseDegC'),
              lightestFoil:
                conductor.lightestFoilUm === null ? '–' : <FoilThickness valueUm={conductor.lightestFoilUm} />,
              remarks: (
                <>
                  {conductor.missing.length > 0 &&
                    `Missing: ${conductor.missing.map((missing) => missing.label).join('; ')}. `}
                  {conductor.cautions.join(' ')}
                </>
              ),
            }}
          />
        ))}
      </DataTable>
    </PageSection>
  )
}
