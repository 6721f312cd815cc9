'use client'

import { TableFrame } from '@/app/_components/ui/table-frame'
import type { ConductorLayer, Hatch, Zone } from '@/lib/engine'
import {
  makePlaces,
  OptionalChoiceCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
  ThicknessCell,
  useUnitLabels,
} from '../cells'
import { updatePresence, updateZone, useDraft, useEdit } from '../draft'
import { PLATED_COPPER_CHOICES } from './words'

interface CopperInZone {
  readonly zone: Zone
  readonly zoneIndex: number
  readonly layer: ConductorLayer
  readonly presenceIndex: number
}

/** What differs from zone to zone in one layer's copper: where its plating is, and the bars of its hatch. */
export function CopperInZones() {
  const { state } = useDraft()
  const { layers, zones } = state.design.construction
  const rows: CopperInZone[] = zones.flatMap((zone, zoneIndex) =>
    layers.flatMap((layer) => {
      if (layer.kind !== 'conductor') return []
      if (layer.plating.process === 'none' && layer.planePattern !== 'hatched') return []
      const presenceIndex = zone.presence.findIndex(({ layerId }) => layerId === layer.id)
      return presenceIndex < 0 ? [] : [{ zone, zoneIndex, layer, presenceIndex }]
    }),
  )
  if (rows.length === 0) return <p className="empty">No layer is plated or hatched.</p>
  return (
    <TableFrame label="Plating and hatch by zone">
      <table className="ledger unit-heads grid-table" data-stack="">
        <caption className="small muted">
          Panel and pattern plating cover the whole copper unless a zone states otherwise. At connector ends, where
          pads-only plating adds to the thickness, state where it goes. A hatch is given by bar and pitch, measured
          across the bars.
        </caption>
        <thead>
          <tr>
            <th scope="col">Zone</th>
            <th scope="col">Layer</th>
            <th scope="col">Plated copper</th>
            <th scope="col" className="num">
              Hatch bar
            </th>
            <th scope="col" className="num">
              Hatch pitch
            </th>
            <th scope="col" className="num">
              Angle, °
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <CopperRow key={`${row.zone.id} ${row.layer.id}`} {...row} />
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}

/** A hatch of which one measure is typed: the others are 0, which the form asks to be corrected. */
const OPEN_HATCH: Hatch = { barMm: 0, pitchMm: 0, angleDeg: 45 }

function CopperRow({ zone, zoneIndex, layer, presenceIndex }: CopperInZone) {
  const edit = useEdit()
  const presence = zone.presence[presenceIndex]
  if (presence === undefined) return null
  const at = makePlaces(
    ['construction', 'zones', zoneIndex, 'presence', presenceIndex],
    `presence.${zone.id}.${layer.id}`,
    `${layer.name} in ${zone.name}`,
  )
  const set = (field: string, change: (present: Zone['presence'][number]) => Zone['presence'][number]) =>
    edit(at(field).key, (design) => updatePresence(design, zone.id, layer.id, change))
  const setHatch = (field: keyof Hatch, value: number | null) =>
    set(`hatch.${field}`, (present) => ({
      ...present,
      hatch: value === null ? null : { ...(present.hatch ?? OPEN_HATCH), [field]: value },
      // The hatch's own share takes the place of a typed one.
      coverageFraction: value === null ? present.coverageFraction : null,
    }))
  const isHatched = layer.planePattern === 'hatched'
  return (
    <tr>
      <th scope="row" data-label="Zone">
        {zone.name}
      </th>
      <td data-label="Layer">{layer.name}</td>
      <td data-label="Plated copper" className="cell-choice">
        {layer.plating.process !== 'none' && (
          <OptionalChoiceCell
            label="Plated copper"
            at={at('platedCopper')}
            value={presence.platedCopper}
            choices={PLATED_COPPER_CHOICES.filter(
              ({ value }) => layer.plating.process !== 'button' || value !== 'whole',
            )}
            emptyLabel={layer.plating.process === 'button' ? 'not stated' : 'whole copper'}
            onChange={(platedCopper) => set('platedCopper', (present) => ({ ...present, platedCopper }))}
          />
        )}
      </td>
      {(['barMm', 'pitchMm'] as const).map((field) => (
        <td key={field} className="num cell-number" data-label={field === 'barMm' ? 'Hatch bar' : 'Hatch pitch'}>
          {isHatched && (
            <OptionalPlanLengthCell
              label={field === 'barMm' ? 'Bar of the hatch' : 'Pitch of the hatch'}
              at={at('hatch', field)}
              value={presence.hatch?.[field] ?? null}
              onChange={(value) => setHatch(field, value)}
            />
          )}
        </td>
      ))}
      <td className="num cell-number" data-label="Angle, °">
        {isHatched && (
          <OptionalNumberCell
            label="Angle of the bars to the length, degrees"
            at={at('hatch', 'angleDeg')}
            value={presence.hatch?.angleDeg ?? null}
            onChange={(value) => setHatch('angleDeg', value)}
          />
        )}
      </td>
    </tr>
  )
}

/** Finish on the contacts of connector ends: it adds to the thickness that the connector takes. */
export function ContactFinishes() {
  const { state } = useDraft()
  const edit = useEdit()
  const units = useUnitLabels()
  const rows = state.design.construction.zones.flatMap((zone, index) =>
    zone.kind === 'finger' ? [{ zone, index }] : [],
  )
  if (rows.length === 0) return null
  return (
    <TableFrame label="Finish on contacts">
      <table className="ledger unit-heads grid-table" data-stack="">
        <thead>
          <tr>
            <th scope="col">Connector end</th>
            <th scope="col" className="num">
              Finish on its contacts, {units.thickness}
            </th>
            <th scope="col" className="num">
              Finish ±
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ zone, index }) => {
            const at = makePlaces(['construction', 'zones', index], `zone.${zone.id}`, zone.name)
            const finish = zone.contactFinish
            const set = (field: string, contactFinish: Zone['contactFinish']) =>
              edit(at('contactFinish', field).key, (design) =>
                updateZone(design, zone.id, (present) => ({ ...present, contactFinish })),
              )
            return (
              <tr key={zone.id}>
                <th scope="row" data-label="Connector end">
                  {zone.name}
                </th>
                <td className="num cell-number" data-label="Finish">
                  <OptionalThicknessCell
                    label="Thickness of the finish on the contacts"
                    at={at('contactFinish', 'thicknessUm')}
                    value={finish?.thicknessUm ?? null}
                    onChange={(thicknessUm) =>
                      set(
                        'thicknessUm',
                        thicknessUm === null ? null : { thicknessUm, toleranceUm: finish?.toleranceUm ?? 0 },
                      )
                    }
                  />
                </td>
                <td className="num cell-number" data-label="Finish ±">
                  {finish !== null && (
                    <ThicknessCell
                      label="Tolerance of the finish"
                      at={at('contactFinish', 'toleranceUm')}
                      value={finish.toleranceUm}
                      onChange={(toleranceUm) => set('toleranceUm', { ...finish, toleranceUm })}
                    />
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </TableFrame>
  )
}
