'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { type ConductorLayer, type Hatch, ZONE_FIELDS, type Zone } from '@/lib/engine'
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

const PRESENCE_FIELDS = ZONE_FIELDS.presence.entry
const FINISH_FIELDS = ZONE_FIELDS.contactFinish.fields

interface CopperInZone {
  readonly zone: Zone
  readonly zoneIndex: number
  readonly layer: ConductorLayer
  readonly presenceIndex: number
}

const COLUMNS = {
  zone: { head: 'Zone', isRowHead: true },
  layer: { head: PRESENCE_FIELDS.layerId.label },
  platedCopper: { head: PRESENCE_FIELDS.platedCopper.label, className: 'cell-choice' },
  hatchBar: { head: PRESENCE_FIELDS.hatch.fields.barMm.head, isNumeric: true, className: 'cell-number' },
  hatchPitch: { head: PRESENCE_FIELDS.hatch.fields.pitchMm.head, isNumeric: true, className: 'cell-number' },
  angle: { head: PRESENCE_FIELDS.hatch.fields.angleDeg.head, unit: '°', isNumeric: true, className: 'cell-number' },
} satisfies Columns

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
    <DataTable
      label="Plating and hatch by zone"
      columns={COLUMNS}
      isGrid
      caption={
        'Panel and pattern plating cover the whole copper unless a zone states otherwise. At connector ends, where pads-only plating adds to the thickness, state where it goes. A hatch is given by bar and pitch, measured across the bars.'
      }
    >
      {rows.map((row) => (
        <CopperRow key={`${row.zone.id} ${row.layer.id}`} {...row} />
      ))}
    </DataTable>
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
    <DataRow
      columns={COLUMNS}
      cells={{
        zone: zone.name,
        layer: layer.name,
        platedCopper: layer.plating.process !== 'none' && (
          <OptionalChoiceCell
            label={PRESENCE_FIELDS.platedCopper.label}
            at={at('platedCopper')}
            value={presence.platedCopper}
            choices={PLATED_COPPER_CHOICES.filter(
              ({ value }) => layer.plating.process !== 'button' || value !== 'whole',
            )}
            emptyLabel={layer.plating.process === 'button' ? 'not stated' : 'whole copper'}
            onChange={(platedCopper) => set('platedCopper', (present) => ({ ...present, platedCopper }))}
          />
        ),
        hatchBar: isHatched && (
          <OptionalPlanLengthCell
            label={PRESENCE_FIELDS.hatch.fields.barMm.label}
            at={at('hatch', 'barMm')}
            value={presence.hatch?.barMm ?? null}
            onChange={(value) => setHatch('barMm', value)}
          />
        ),
        hatchPitch: isHatched && (
          <OptionalPlanLengthCell
            label={PRESENCE_FIELDS.hatch.fields.pitchMm.label}
            at={at('hatch', 'pitchMm')}
            value={presence.hatch?.pitchMm ?? null}
            onChange={(value) => setHatch('pitchMm', value)}
          />
        ),
        angle: isHatched && (
          <OptionalNumberCell
            label={PRESENCE_FIELDS.hatch.fields.angleDeg.label}
            at={at('hatch', 'angleDeg')}
            value={presence.hatch?.angleDeg ?? null}
            onChange={(value) => setHatch('angleDeg', value)}
          />
        ),
      }}
    />
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
  const columns = {
    connectorEnd: { head: 'Connector end', isRowHead: true },
    finishOnIts: {
      head: FINISH_FIELDS.thicknessUm.head,
      unit: units.thickness,
      isNumeric: true,
      className: 'cell-number',
    },
    finish: { head: FINISH_FIELDS.toleranceUm.head, isNumeric: true, className: 'cell-number' },
  } satisfies Columns
  return (
    <DataTable label="Finish on contacts" columns={columns} isGrid>
      {rows.map(({ zone, index }) => {
        const at = makePlaces(['construction', 'zones', index], `zone.${zone.id}`, zone.name)
        const finish = zone.contactFinish
        const set = (field: string, contactFinish: Zone['contactFinish']) =>
          edit(at('contactFinish', field).key, (design) =>
            updateZone(design, zone.id, (present) => ({ ...present, contactFinish })),
          )
        return (
          <DataRow
            key={zone.id}
            columns={columns}
            cells={{
              connectorEnd: zone.name,
              finishOnIts: (
                <OptionalThicknessCell
                  label={FINISH_FIELDS.thicknessUm.label}
                  at={at('contactFinish', 'thicknessUm')}
                  value={finish?.thicknessUm ?? null}
                  onChange={(thicknessUm) =>
                    set(
                      'thicknessUm',
                      thicknessUm === null ? null : { thicknessUm, toleranceUm: finish?.toleranceUm ?? 0 },
                    )
                  }
                />
              ),
              finish: finish !== null && (
                <ThicknessCell
                  label={FINISH_FIELDS.toleranceUm.label}
                  at={at('contactFinish', 'toleranceUm')}
                  value={finish.toleranceUm}
                  onChange={(toleranceUm) => set('toleranceUm', { ...finish, toleranceUm })}
                />
              ),
            }}
          />
        )
      })}
    </DataTable>
  )
}
