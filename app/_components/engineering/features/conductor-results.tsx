'use client'

import { Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { FoilThickness, Length } from '@/app/_components/ui/unit-context'
import { digitsAsComputed } from '@/lib/engine/units'
import { useDraft } from '../draft'

/** What the stated currents come to: resistance, drop, rise, and the lightest foil that would serve. */
export function ConductorResults() {
  const { live } = useDraft()
  const { conductors } = live.evaluation
  if (conductors.length === 0) return null
  return (
    <Section title="Conductors, computed">
      <TableFrame label="Current in the conductors">
        <table className="ledger unit-heads" data-stack="">
          <thead>
            <tr>
              <th scope="col">Conductor</th>
              <th scope="col" className="num">
                Finished copper
              </th>
              <th scope="col" className="num">
                Resistance, Ω
              </th>
              <th scope="col" className="num">
                Drop, V
              </th>
              <th scope="col" className="num">
                Carries, A
              </th>
              <th scope="col" className="num">
                Rise, °C
              </th>
              <th scope="col" className="num">
                Lightest foil
              </th>
              <th scope="col">Remarks</th>
            </tr>
          </thead>
          <tbody>
            {conductors.map((conductor) => (
              <tr key={conductor.conductorId}>
                <th scope="row">{conductor.name}</th>
                <td className="num" data-label="Finished copper">
                  <Length valueUm={conductor.finishedThicknessUm} />
                </td>
                <td className="num" data-label="Resistance, Ω">
                  {digitsAsComputed(conductor.resistanceOhm, 'resistanceOhm')}
                </td>
                <td className="num" data-label="Drop, V">
                  {digitsAsComputed(conductor.dropVolt, 'dropVolt')}
                </td>
                <td className="num" data-label="Carries, A">
                  {digitsAsComputed(conductor.capacityAmp, 'currentAmp')}
                </td>
                <td className="num" data-label="Rise, °C">
                  {digitsAsComputed(conductor.riseDegC, 'riseDegC')}
                </td>
                <td className="num" data-label="Lightest foil">
                  {conductor.lightestFoilUm === null ? '–' : <FoilThickness valueUm={conductor.lightestFoilUm} />}
                </td>
                <td data-label="Remarks" className="small">
                  {conductor.missing.length > 0 &&
                    `Missing: ${conductor.missing.map((missing) => missing.label).join('; ')}. `}
                  {conductor.cautions.join(' ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </Section>
  )
}
