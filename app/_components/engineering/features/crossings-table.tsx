'use client'

import { memo } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { type ConductorFeature, type Design, FEATURE_FIELDS } from '@/lib/engine'
import { makePlaces, ObservedCell, OptionalNumberCell, TickCell } from '../cells'
import { useDraft, useEdit } from '../draft'
import { NoneMark } from '../none-mark'

type Crossing = ConductorFeature['crossings'][number]

const CROSSING_FIELDS = FEATURE_FIELDS.conductors.entry.crossings.entry

const COLUMNS = {
  conductor: { head: 'Conductor', isRowHead: true },
  bend: { head: CROSSING_FIELDS.bendId.label },
  crosses: { head: 'Crosses' },
  angle: { head: CROSSING_FIELDS.angleToAxisDeg.head, unit: '°', isNumeric: true, className: 'cell-number' },
  widthChange: { head: CROSSING_FIELDS.widthChangesInside.label },
  directionChange: { head: CROSSING_FIELDS.directionChangesInside.label },
} satisfies Columns

/** Every conductor by every bend: does it cross, at which angle, and does it change inside? */
export function CrossingsTable() {
  const { state } = useDraft()
  const { bends, features } = state.design
  if (bends.length === 0 || features.conductors.length === 0) return null
  return (
    <PageSection title="Conductors crossing bends">
      <DataTable
        label="Conductors crossing bends"
        columns={COLUMNS}
        isGrid
        caption={'At 90° the conductor crosses the bend axis at right angles.'}
      >
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
      </DataTable>
      {features.conductors.every(({ crossings }) => crossings.length === 0) && (
        <NoneMark list="crossings" label="No conductor crosses a bend" />
      )}
    </PageSection>
  )
}

interface CrossingRowProps {
  readonly conductor: ConductorFeature
  readonly conductorIndex: number
  readonly bendId: string
  readonly bendName: string
}

/** Drawn anew where its own conductor changes, and not with every key. */
const CrossingRow = memo(function CrossingRow({ conductor, conductorIndex, bendId, bendName }: CrossingRowProps) {
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
    <DataRow
      columns={COLUMNS}
      cells={{
        conductor: conductor.name,
        bend: bendName,
        crosses: (
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
        ),
        angle: crossing !== undefined && (
          <OptionalNumberCell
            label={CROSSING_FIELDS.angleToAxisDeg.label}
            at={at('angleToAxisDeg')}
            value={crossing.angleToAxisDeg}
            onChange={(angleToAxisDeg) => set('angleToAxisDeg', { angleToAxisDeg })}
          />
        ),
        widthChange: crossing !== undefined && (
          <ObservedCell
            label={CROSSING_FIELDS.widthChangesInside.label}
            at={at('widthChangesInside')}
            value={crossing.widthChangesInside}
            onChange={(widthChangesInside) => set('widthChangesInside', { widthChangesInside })}
          />
        ),
        directionChange: crossing !== undefined && (
          <ObservedCell
            label={CROSSING_FIELDS.directionChangesInside.label}
            at={at('directionChangesInside')}
            value={crossing.directionChangesInside}
            onChange={(directionChangesInside) => set('directionChangesInside', { directionChangesInside })}
          />
        ),
      }}
    />
  )
})

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
