'use client'

import { memo } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import { type Layer, ZONE_FIELDS, type Zone } from '@/lib/engine'
import { makePlaces, OptionalNumberCell, TickCell } from '../cells'
import { setPresence, setZoneCoverage, useDraft, useEdit } from '../draft'

/** Never an integer, which would move to the front of the columns. */
const getZoneColumn = (zone: Zone): string => `zone ${zone.id}`

/** Which layer is in which zone, and the copper share there where it differs from the layer's own. */
export function PresenceGrid() {
  const { state } = useDraft()
  const { construction } = state.design
  const { layers, zones } = construction
  const designations = nameConductorLayers(construction)
  if (layers.length === 0 || zones.length === 0) return null
  const columns: Columns = {
    layer: { head: ZONE_FIELDS.presence.entry.layerId.label, isRowHead: true },
    ...Object.fromEntries(zones.map((zone) => [getZoneColumn(zone), { head: zone.name, headNote: zone.kind }])),
  }
  return (
    <DataTable
      label="Layers in zones"
      columns={columns}
      isGrid
      isStacked={false}
      className="presence-grid"
      caption="Ticked where the layer is. The number beside a conductor layer is its copper share there, in per cent; empty takes the layer's own."
    >
      {layers.map((layer) => {
        const designation = designations.get(layer.id)
        return (
          <DataRow
            key={layer.id}
            columns={columns}
            cells={{
              layer: (
                <>
                  {designation !== undefined && `${formatDesignation(designation)} `}
                  {layer.name}
                </>
              ),
              ...Object.fromEntries(
                zones.map((zone, zoneIndex) => {
                  const index = zone.presence.findIndex((presence) => presence.layerId === layer.id)
                  return [
                    getZoneColumn(zone),
                    <PresenceCell
                      key={zone.id}
                      layer={layer}
                      zoneId={zone.id}
                      zoneName={zone.name}
                      zoneIndex={zoneIndex}
                      presence={zone.presence[index]}
                      index={index}
                    />,
                  ]
                }),
              ),
            }}
          />
        )
      })}
    </DataTable>
  )
}

interface PresenceCellProps {
  readonly layer: Layer
  readonly zoneId: string
  readonly zoneName: string
  readonly zoneIndex: number
  readonly presence: Zone['presence'][number] | undefined
  readonly index: number
}

/** Drawn anew where its own layer or presence changes, and not with every key. */
const PresenceCell = memo(function PresenceCell({
  layer,
  zoneId,
  zoneName,
  zoneIndex,
  presence,
  index,
}: PresenceCellProps) {
  const edit = useEdit()
  const at = makePlaces(
    ['construction', 'zones', zoneIndex, 'presence', index],
    `presence.${zoneId}.${layer.id}`,
    `${layer.name} in ${zoneName}`,
  )
  return (
    <span className="presence">
      <TickCell
        label="Present"
        at={at('layerId')}
        value={presence !== undefined}
        onChange={(isPresent) =>
          edit(`${at('layerId').key}.${isPresent}`, (design) => setPresence(design, zoneId, layer.id, isPresent))
        }
      />
      {layer.kind === 'conductor' && presence !== undefined && (
        <OptionalNumberCell
          label={`${ZONE_FIELDS.presence.entry.coverageFraction.label}, per cent`}
          at={at('coverageFraction')}
          value={presence.coverageFraction}
          factor={100}
          onChange={(coverageFraction) =>
            edit(at('coverageFraction').key, (design) => setZoneCoverage(design, zoneId, layer.id, coverageFraction))
          }
        />
      )}
    </span>
  )
})
