'use client'

import { Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { ConductorFeature, Design } from '@/lib/engine'
import { makePlaces, ObservedCell, OptionalNumberCell, TickCell } from '../cells'
import { useDraft, useEdit } from '../draft'

type Crossing = ConductorFeature['crossings'][number]

/** Every conductor by every bend: does it cross, at which angle, and does it change inside? */
export function CrossingsTable() {
  const { state } = useDraft()
  const { bends, features } = state.design
  if (bends.length === 0 || features.conductors.length === 0) return null
  return (
    <Section title="Conductors crossing bends">
      <TableFrame label="Conductors crossing bends">
        <table className="ledger unit-heads grid-table" data-stack="">
          <caption className="small muted">At 90° the conductor crosses the bend axis at right angles.</caption>
          <thead>
            <tr>
              <th scope="col">Conductor</th>
              <th scope="col">Bend</th>
              <th scope="col">Crosses</th>
              <th scope="col" className="num">
                Angle to the axis, °
              </th>
              <th scope="col">Width changes inside</th>
              <th scope="col">Direction changes inside</th>
            </tr>
          </thead>
          <tbody>
            {features.conductors.flatMap((conductor, index) =>
              bends.map((bend) => (
                <CrossingRow
                  key={`${conductor.id} ${bend.id}`}
                  conductor={conductor}
                  conductorIndex={index}
                  bendId={bend.id}
                  bendName={bend.name}
                />
              )),
            )}
          </tbody>
        </table>
      </TableFrame>
    </Section>
  )
}

interface CrossingRowProps {
  readonly conductor: ConductorFeature
  readonly conductorIndex: number
  readonly bendId: string
  readonly bendName: string
}

function CrossingRow({ conductor, conductorIndex, bendId, bendName }: CrossingRowProps) {
  const edit = useEdit()
  const index = conductor.crossings.findIndex((crossing) => crossing.bendId === bendId)
  const crossing = conductor.crossings[index]
  const at = makePlaces(
    ['features', 'conductors', conductorIndex, 'crossings', index],
    `crossing.${conductor.id}.${bendId}`,
    `${conductor.name} across ${bendName}`,
  )
  const change = (field: string, next: (crossings: readonly Crossing[]) => Crossing[]) =>
    edit(at(field).key, (design) => withCrossings(design, conductor.id, next))
  const set = (field: keyof Crossing, part: Partial<Crossing>) =>
    change(field, (crossings) =>
      crossings.map((present) => (present.bendId === bendId ? { ...present, ...part } : present)),
    )
  return (
    <tr>
      <th scope="row">{conductor.name}</th>
      <td data-label="Bend">{bendName}</td>
      <td data-label="Crosses">
        <TickCell
          label="Crosses"
          at={at('bendId')}
          value={crossing !== undefined}
          onChange={(crosses) =>
            change(`bendId.${crosses}`, (crossings) =>
              crosses
                ? [
                    ...crossings,
                    { bendId, angleToAxisDeg: null, widthChangesInside: null, directionChangesInside: null },
                  ]
                : crossings.filter((present) => present.bendId !== bendId),
            )
          }
        />
      </td>
      <td className="num cell-number" data-label="Angle to the axis, °">
        {crossing !== undefined && (
          <OptionalNumberCell
            label="Angle to the axis, degrees"
            at={at('angleToAxisDeg')}
            value={crossing.angleToAxisDeg}
            onChange={(angleToAxisDeg) => set('angleToAxisDeg', { angleToAxisDeg })}
          />
        )}
      </td>
      <td data-label="Width changes inside">
        {crossing !== undefined && (
          <ObservedCell
            label="Width changes inside"
            at={at('widthChangesInside')}
            value={crossing.widthChangesInside}
            onChange={(widthChangesInside) => set('widthChangesInside', { widthChangesInside })}
          />
        )}
      </td>
      <td data-label="Direction changes inside">
        {crossing !== undefined && (
          <ObservedCell
            label="Direction changes inside"
            at={at('directionChangesInside')}
            value={crossing.directionChangesInside}
            onChange={(directionChangesInside) => set('directionChangesInside', { directionChangesInside })}
          />
        )}
      </td>
    </tr>
  )
}

function withCrossings(
  design: Design,
  conductorId: string,
  next: (crossings: readonly Crossing[]) => Crossing[],
): Design {
  return {
    ...design,
    features: {
      ...design.features,
      conductors: design.features.conductors.map((conductor) =>
        conductor.id === conductorId ? { ...conductor, crossings: next(conductor.crossings) } : conductor,
      ),
    },
  }
}
