'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Length } from '@/app/_components/ui/unit-context'
import type { Zone } from '@/lib/engine'
import {
  ChoiceCell,
  makePlaces,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
  TextCell,
  useUnitLabels,
} from '../cells'
import { addZone, removeZone, updateZone, useDraft, useEdit } from '../draft'
import { RowAct } from '../row-act'
import { ZONE_KIND_CHOICES } from './words'

/** Zones of the part in their order along it, with what each comes to. */
export function ZoneTable() {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { zones } = state.design.construction
  const units = useUnitLabels()
  return (
    <>
      <TableFrame label="Zones">
        <table className="ledger unit-heads grid-table" data-stack="">
          <caption className="small muted">
            In order along the part. Stated: the value on a drawing or data sheet, compared with the computed one.
          </caption>
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Kind</th>
              <th scope="col" className="num">
                Length, {units.plan}
              </th>
              <th scope="col" className="num">
                Width, {units.plan}
              </th>
              <th scope="col" className="num">
                Finished
              </th>
              <th scope="col" className="num">
                Stated, {units.thickness}
              </th>
              <th scope="col">Connector accepts, {units.thickness}</th>
              {!isReadOnly && (
                <th scope="col">
                  <span className="sr-only">Acts</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {zones.map((zone, index) => (
              <ZoneRow key={zone.id} zone={zone} index={index} />
            ))}
          </tbody>
        </table>
      </TableFrame>
      {zones.length === 0 && <p className="empty">No zones yet. A layer counts only in the zones that contain it.</p>}
      {!isReadOnly && (
        <div className="row mt-2 no-print">
          <Button
            onPress={() => edit(`add-zone-${zones.length}`, addZone)}
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
  const { live, isReadOnly, issueByPath } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['construction', 'zones', index], `zone.${zone.id}`, zone.name || `zone ${index + 1}`)
  const set = (field: string, change: (present: Zone) => Zone) =>
    edit(at(field).key, (design) => updateZone(design, zone.id, change))
  const result = live.evaluation.zones.find((candidate) => candidate.zoneId === zone.id)
  const ownIssue = issueByPath.get(at('presence').path) ?? issueByPath.get(at('connectorWindow').path)
  const window = zone.connectorWindow
  return (
    <tr>
      <td data-label="Name" className="cell-name">
        <TextCell
          label="Name"
          at={at('name')}
          value={zone.name}
          onChange={(name) => set('name', (present) => ({ ...present, name }))}
        />
        {ownIssue !== undefined && <span className="field-error cell-error">{ownIssue}</span>}
      </td>
      <td data-label="Kind" className="cell-kind">
        <ChoiceCell
          label="Kind"
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
      </td>
      <td className="num cell-number" data-label="Length">
        <OptionalPlanLengthCell
          label="Length"
          at={at('lengthMm')}
          value={zone.lengthMm}
          onChange={(lengthMm) => set('lengthMm', (present) => ({ ...present, lengthMm }))}
        />
      </td>
      <td className="num cell-number" data-label="Width">
        <OptionalPlanLengthCell
          label="Width"
          at={at('widthMm')}
          value={zone.widthMm}
          onChange={(widthMm) => set('widthMm', (present) => ({ ...present, widthMm }))}
        />
      </td>
      <td className="num" data-label="Finished">
        {result === undefined ? <span className="muted">–</span> : <Length valueUm={result.thicknessUm} />}
      </td>
      <td className="num cell-number" data-label="Stated">
        <OptionalThicknessCell
          label="Stated thickness"
          at={at('statedThicknessUm')}
          value={zone.statedThicknessUm}
          onChange={(statedThicknessUm) => set('statedThicknessUm', (present) => ({ ...present, statedThicknessUm }))}
        />
      </td>
      <td data-label="Connector accepts">
        {(zone.kind === 'finger' || window !== null) && (
          <WindowCells
            window={window}
            at={at}
            onChange={(connectorWindow) => set('connectorWindow', (present) => ({ ...present, connectorWindow }))}
          />
        )}
      </td>
      {!isReadOnly && (
        <td className="row-acts no-print">
          <RowAct
            label={`Remove zone ${zone.name}`}
            onPress={() => edit(`remove-${zone.id}`, (design) => removeZone(design, zone.id))}
          >
            remove
          </RowAct>
        </td>
      )}
    </tr>
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
          label={end === 'minUm' ? 'Least thickness for the connector' : 'Greatest thickness for the connector'}
          at={at('connectorWindow', end)}
          value={shown[end]}
          onChange={(valueUm) => take(end, valueUm)}
        />
      ))}
      {isHalf && <span className="field-error cell-error">Enter both limits. One alone is not stored.</span>}
    </span>
  )
}
