'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Length } from '@/app/_components/ui/unit-context'
import { callByName, ZONE_FIELDS, type Zone } from '@/lib/engine'
import {
  ChoiceCell,
  makePlaces,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
  TextCell,
  useUnitLabels,
} from '../cells'
import { addZone, duplicateZone, moveZone, removeZone, updateZone, useDraft, useEdit } from '../draft'
import { RowAct } from '../row-act'
import { ZONE_KIND_CHOICES } from './words'

function useZoneColumns() {
  const { isReadOnly } = useDraft()
  const units = useUnitLabels()
  return {
    name: { head: ZONE_FIELDS.name.label, className: 'cell-name' },
    kind: { head: ZONE_FIELDS.kind.label, className: 'cell-kind' },
    length: { head: ZONE_FIELDS.lengthMm.label, unit: units.plan, isNumeric: true, className: 'cell-number' },
    width: { head: ZONE_FIELDS.widthMm.label, unit: units.plan, isNumeric: true, className: 'cell-number' },
    finished: { head: 'Finished', isNumeric: true },
    stated: {
      head: ZONE_FIELDS.statedThicknessUm.head,
      unit: units.thickness,
      isNumeric: true,
      className: 'cell-number',
    },
    statedTolerance: {
      head: ZONE_FIELDS.statedToleranceUm.head,
      unit: units.thickness,
      isNumeric: true,
      className: 'cell-number',
    },
    connectorAccepts: { head: ZONE_FIELDS.connectorWindow.label, unit: units.thickness },
    ...(!isReadOnly ? { acts: { head: 'Acts', isHeadHidden: true, className: 'no-print row-acts' } } : {}),
  } satisfies Columns
}

/** Zones of the part in their order along it, with what each comes to. */
export function ZoneTable() {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { zones } = state.design.construction
  const columns = useZoneColumns()
  return (
    <>
      <DataTable
        label="Zones"
        columns={columns}
        isGrid
        caption={
          'In order along the part. Stated: the value on a drawing or data sheet, compared with the computed one.'
        }
      >
        {zones.map((zone, index) => (
          <ZoneRow key={zone.id} zone={zone} index={index} />
        ))}
      </DataTable>
      {zones.length === 0 && <p className="empty">No zones yet. A layer counts only in the zones that contain it.</p>}
      {!isReadOnly && (
        <div className="row above no-print">
          <Button
            onPress={() => edit(`add-zone-${zones.length}`, (design) => addZone(design))}
            isDisabled={state.design.construction.layers.length === 0}
          >
            Add a zone
          </Button>
        </div>
      )}
    </>
  )
}

function ZoneRow({ zone, index }: { zone: Zone; index: number }) {
  const { live, issueByPath, state } = useDraft()
  const count = state.design.construction.zones.length
  const columns = useZoneColumns()
  const edit = useEdit()
  const at = makePlaces(['construction', 'zones', index], `zone.${zone.id}`, zone.name || `zone ${index + 1}`)
  const set = (field: string, change: (present: Zone) => Zone) =>
    edit(at(field).key, (design) => updateZone(design, zone.id, change))
  const move = (to: number) => edit(`move-${zone.id}-${to}`, (design) => moveZone(design, index, to))
  const result = live.evaluation.zones.find((candidate) => candidate.zoneId === zone.id)
  const ownIssue = issueByPath.get(at('presence').path) ?? issueByPath.get(at('connectorWindow').path)
  const window = zone.connectorWindow
  return (
    <DataRow
      columns={columns}
      cells={{
        name: (
          <>
            <TextCell
              label={ZONE_FIELDS.name.label}
              at={at('name')}
              value={zone.name}
              onChange={(name) => set('name', (present) => ({ ...present, name }))}
            />
            {ownIssue !== undefined && <span className="field-error cell-error">{ownIssue}</span>}
          </>
        ),
        kind: (
          <ChoiceCell
            label={ZONE_FIELDS.kind.label}
            at={at('kind')}
            value={zone.kind}
            choices={ZONE_KIND_CHOICES}
            onChange={(kind) =>
              set('kind', (present) => ({
                ...present,
                kind,
                // The connector's window is the connector maker's to state: it stays empty until somebody types it.
                connectorWindow: kind === 'finger' ? present.connectorWindow : null,
              }))
            }
          />
        ),
        length: (
          <OptionalPlanLengthCell
            label={ZONE_FIELDS.lengthMm.label}
            at={at('lengthMm')}
            value={zone.lengthMm}
            onChange={(lengthMm) => set('lengthMm', (present) => ({ ...present, lengthMm }))}
          />
        ),
        width: (
          <OptionalPlanLengthCell
            label={ZONE_FIELDS.widthMm.label}
            at={at('widthMm')}
            value={zone.widthMm}
            onChange={(widthMm) => set('widthMm', (present) => ({ ...present, widthMm }))}
          />
        ),
        finished: result === undefined ? <span className="muted">–</span> : <Length valueUm={result.thicknessUm} />,
        stated: (
          <OptionalThicknessCell
            label={ZONE_FIELDS.statedThicknessUm.label}
            at={at('statedThicknessUm')}
            value={zone.statedThicknessUm}
            onChange={(statedThicknessUm) => set('statedThicknessUm', (present) => ({ ...present, statedThicknessUm }))}
          />
        ),
        statedTolerance: (
          <OptionalThicknessCell
            label={ZONE_FIELDS.statedToleranceUm.label}
            at={at('statedToleranceUm')}
            value={zone.statedToleranceUm}
            onChange={(statedToleranceUm) => set('statedToleranceUm', (present) => ({ ...present, statedToleranceUm }))}
          />
        ),
        connectorAccepts: (zone.kind === 'finger' || window !== null) && (
          <WindowCells
            window={window}
            at={at}
            onChange={(connectorWindow) => set('connectorWindow', (present) => ({ ...present, connectorWindow }))}
          />
        ),
        acts: (
          <>
            <RowAct
              label={`Move ${callByName('zone', zone.name)} up`}
              isDisabled={index === 0}
              onPress={() => move(index - 1)}
            >
              ↑
            </RowAct>
            <RowAct
              label={`Move ${callByName('zone', zone.name)} down`}
              isDisabled={index === count - 1}
              onPress={() => move(index + 1)}
            >
              ↓
            </RowAct>
            <RowAct
              label={`Insert a zone after ${zone.name}`}
              onPress={() => edit(`add-zone-${count}`, (design) => addZone(design, index))}
            >
              +
            </RowAct>
            <RowAct
              label={`Copy ${callByName('zone', zone.name)}`}
              onPress={() => edit(`copy-${zone.id}-${count}`, (design) => duplicateZone(design, index))}
            >
              copy
            </RowAct>
            <RowAct
              label={`Remove ${callByName('zone', zone.name)}`}
              onPress={() => edit(`remove-${zone.id}`, (design) => removeZone(design, zone.id))}
            >
              ×
            </RowAct>
          </>
        ),
      }}
    />
  )
}

type Window = Zone['connectorWindow']

interface WindowCellsProps {
  readonly window: Window
  readonly at: ReturnType<typeof makePlaces>
  readonly onChange: (window: Window) => void
}

/** Both ends of what a connector accepts. One end alone is no window: it is kept here until the other is typed. */
function WindowCells({ window, at, onChange }: WindowCellsProps) {
  const [half, setHalf] = useState<{ readonly minUm: number | null; readonly maxUm: number | null }>({
    minUm: null,
    maxUm: null,
  })
  const shown = window ?? half
  const take = (end: 'minUm' | 'maxUm', valueUm: number | null) => {
    const next = { ...shown, [end]: valueUm }
    setHalf(next)
    onChange(next.minUm === null || next.maxUm === null ? null : { minUm: next.minUm, maxUm: next.maxUm })
  }
  const isHalf = (shown.minUm === null) !== (shown.maxUm === null)
  return (
    <span className="cell-range">
      {(['minUm', 'maxUm'] as const).map((end) => (
        <OptionalThicknessCell
          key={end}
          label={ZONE_FIELDS.connectorWindow.fields[end].label}
          at={at('connectorWindow', end)}
          value={shown[end]}
          onChange={(valueUm) => take(end, valueUm)}
        />
      ))}
      {isHalf && <span className="field-error cell-error">Enter both limits. One alone is not stored.</span>}
    </span>
  )
}
