'use client'

import { TableFrame } from '@/app/_components/ui/table-frame'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import { type ConductorLayer, NO_PLATING, PLATED_COPPER_ID } from '@/lib/engine'
import { ChoiceCell, makePlaces, NumberCell, OptionalChoiceCell, ThicknessCell, useUnitLabels } from '../cells'
import { updateLayer, useDraft, useEdit } from '../draft'
import { PLANE_CHOICES, PLATING_CHOICES, ROLE_CHOICES } from './words'

/** Ordinary through-hole plating adds about 1 mil: common practice, no published source. A beginning to be changed. */
const USUAL_PLATING_UM = 25.4

/** What conductor layers have beyond a sheet: use, plane, copper share, plating, loss. */
export function CopperTable() {
  const { state } = useDraft()
  const { construction } = state.design
  const units = useUnitLabels()
  const designations = nameConductorLayers(construction)
  const rows = construction.layers.flatMap((layer, index) => (layer.kind === 'conductor' ? [{ layer, index }] : []))
  if (rows.length === 0) return <p className="empty">No conductor layer yet.</p>
  return (
    <TableFrame label="Copper">
      <table className="ledger unit-heads grid-table" data-stack="">
        <caption className="small muted">
          Panel and pattern plating add copper wherever the layer is present, unless a zone below states otherwise;
          pads-only plating leaves the conductors bare.
        </caption>
        <thead>
          <tr>
            <th scope="col">Layer</th>
            <th scope="col">Carries</th>
            <th scope="col">Plane</th>
            <th scope="col" className="num">
              Copper share, %
            </th>
            <th scope="col">Plating</th>
            <th scope="col" className="num">
              Plated +, {units.thickness}
            </th>
            <th scope="col" className="num">
              Plating ±
            </th>
            <th scope="col" className="num">
              Loss in process −, {units.thickness}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ layer, index }) => {
            const designation = designations.get(layer.id)
            return (
              <CopperRow
                key={layer.id}
                layer={layer}
                index={index}
                name={designation === undefined ? layer.name : `${formatDesignation(designation)} ${layer.name}`}
              />
            )
          })}
        </tbody>
      </table>
    </TableFrame>
  )
}

function CopperRow({ layer, index, name }: { layer: ConductorLayer; index: number; name: string }) {
  const edit = useEdit()
  const at = makePlaces(['construction', 'layers', index], `layer.${layer.id}`, layer.name)
  const set = (field: string, change: (present: ConductorLayer) => ConductorLayer) =>
    edit(at(field).key, (design) =>
      updateLayer(design, layer.id, (present) => (present.kind === 'conductor' ? change(present) : present)),
    )
  return (
    <tr>
      <th scope="row">{name}</th>
      <td data-label="Carries" className="cell-choice">
        <ChoiceCell
          label="Carries"
          at={at('role')}
          value={layer.role}
          choices={ROLE_CHOICES}
          onChange={(role) =>
            set('role', (present) => ({
              ...present,
              role,
              planePattern: role === 'signal' ? null : (present.planePattern ?? 'solid'),
            }))
          }
        />
      </td>
      <td data-label="Plane" className="cell-choice">
        <OptionalChoiceCell
          label="Plane"
          at={at('planePattern')}
          value={layer.planePattern}
          choices={PLANE_CHOICES}
          emptyLabel="no plane"
          onChange={(planePattern) => set('planePattern', (present) => ({ ...present, planePattern }))}
        />
      </td>
      <td className="num cell-number" data-label="Copper share, %">
        <NumberCell
          label="Copper share, per cent"
          at={at('coverageFraction')}
          value={layer.coverageFraction}
          factor={100}
          onChange={(coverageFraction) => set('coverageFraction', (present) => ({ ...present, coverageFraction }))}
        />
      </td>
      <td data-label="Plating" className="cell-choice">
        <ChoiceCell
          label="Plating"
          at={at('plating', 'process')}
          value={layer.plating.process}
          choices={PLATING_CHOICES}
          onChange={(process) =>
            set('plating.process', (present) => ({
              ...present,
              plating:
                process === 'none'
                  ? NO_PLATING
                  : {
                      ...present.plating,
                      process,
                      materialId: present.plating.materialId ?? PLATED_COPPER_ID,
                      thicknessUm: present.plating.thicknessUm > 0 ? present.plating.thicknessUm : USUAL_PLATING_UM,
                    },
            }))
          }
        />
      </td>
      <td className="num cell-number" data-label="Plated +">
        <ThicknessCell
          label="Plated copper"
          at={at('plating', 'thicknessUm')}
          value={layer.plating.thicknessUm}
          isFixed={layer.plating.process === 'none'}
          onChange={(thicknessUm) =>
            set('plating.thicknessUm', (present) => ({ ...present, plating: { ...present.plating, thicknessUm } }))
          }
        />
      </td>
      <td className="num cell-number" data-label="Plating ±">
        <ThicknessCell
          label="Tolerance of plating"
          at={at('plating', 'toleranceUm')}
          value={layer.plating.toleranceUm}
          isFixed={layer.plating.process === 'none'}
          onChange={(toleranceUm) =>
            set('plating.toleranceUm', (present) => ({ ...present, plating: { ...present.plating, toleranceUm } }))
          }
        />
      </td>
      <td className="num cell-number" data-label="Loss in process −">
        <ThicknessCell
          label="Loss in process"
          at={at('processingLossUm')}
          value={layer.processingLossUm}
          onChange={(processingLossUm) => set('processingLossUm', (present) => ({ ...present, processingLossUm }))}
        />
      </td>
    </tr>
  )
}
