'use client'

import { TableFrame } from '@/app/_components/ui/table-frame'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import type { Layer, Zone } from '@/lib/engine'
import { makePlaces, OptionalNumberCell, TickCell } from '../cells'
import { setPresence, setZoneCoverage, useDraft, useEdit } from '../draft'

/** Which layer is in which zone, and the copper share there where it differs from the layer's own. */
export function PresenceGrid() {
  const { state } = useDraft()
  const { construction } = state.design
  const { layers, zones } = construction
  const designations = nameConductorLayers(construction)
  if (layers.length === 0 || zones.length === 0) return null
  return (
    <TableFrame label="Layers in zones">
      <table className="ledger unit-heads grid-table presence-grid">
        <caption className="small muted">
          Ticked where the layer is. The number beside a conductor layer is its copper share there, in per cent; empty
          takes the layer's own.
        </caption>
        <thead>
          <tr>
            <th scope="col">Layer</th>
            {zones.map((zone) => (
              <th key={zone.id} scope="col">
                {zone.name} <span className="muted">{zone.kind}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {layers.map((layer) => {
            const designation = designations.get(layer.id)
            return (
              <tr key={layer.id}>
                <th scope="row">
                  {designation !== undefined && `${formatDesignation(designation)} `}
                  {layer.name}
                </th>
                {zones.map((zone, zoneIndex) => (
                  <td key={zone.id}>
                    <PresenceCell layer={layer} zone={zone} zoneIndex={zoneIndex} />
                  </td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </TableFrame>
  )
}

function PresenceCell({ layer, zone, zoneIndex }: { layer: Layer; zone: Zone; zoneIndex: number }) {
  const edit = useEdit()
  const index = zone.presence.findIndex((presence) => presence.layerId === layer.id)
  const presence = zone.presence[index]
  const at = makePlaces(
    ['construction', 'zones', zoneIndex, 'presence', index],
    `presence.${zone.id}.${layer.id}`,
    `${layer.name} in ${zone.name}`,
  )
  return (
    <span className="presence">
      <TickCell
        label="Present"
        at={at('layerId')}
        value={presence !== undefined}
        onChange={(isPresent) =>
          edit(`${at('layerId').key}.${isPresent}`, (design) => setPresence(design, zone.id, layer.id, isPresent))
        }
      />
      {layer.kind === 'conductor' && presence !== undefined && (
        <OptionalNumberCell
          label="Copper share, per cent"
          at={at('coverageFraction')}
          value={presence.coverageFraction}
          factor={100}
          onChange={(coverageFraction) =>
            edit(at('coverageFraction').key, (design) => setZoneCoverage(design, zone.id, layer.id, coverageFraction))
          }
        />
      )}
    </span>
  )
}
