'use client'

import type { KeyboardEvent } from 'react'
import { FoilUnitSwitch } from '@/app/_components/shell/switches'
import { Button } from '@/app/_components/ui/button'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import { LAYER_FIELDS, type Layer } from '@/lib/engine'
import { ChoiceCell, FoilThicknessCell, makePlaces, TextCell, ThicknessCell, useUnitLabels } from '../cells'
import {
  duplicateLayer,
  insertLayer,
  listMaterialsFor,
  makeFreshId,
  makeFreshName,
  makeLayerOfKind,
  moveLayer,
  removeLayer,
  updateLayer,
  useDraft,
  useEdit,
} from '../draft'
import { RowAct } from '../row-act'
import { LAYER_KIND_CHOICES } from './words'

/** Every layer from the top face down, as bought. */
export function LayerTable() {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { design } = state
  const { layers } = design.construction
  const designations = nameConductorLayers(design.construction)
  const units = useUnitLabels()
  const insertBelow = (index: number) =>
    edit(`insert-layer-${layers.length}`, (present) => {
      const list = present.construction.layers
      const id = makeFreshId('layer', list)
      const layer = makeLayerOfKind(present, 'base-film', { id, name: makeFreshName('Layer', list), from: null })
      return insertLayer(present, index, layer)
    })
  return (
    <>
      <div className="row no-print">
        <FoilUnitSwitch />
      </div>
      <TableFrame label="Layers">
        <table className="ledger unit-heads grid-table" data-stack="">
          <caption className="small muted">
            From the top face down, as bought. {!isReadOnly && 'Alt+Up and Alt+Down move the current row.'}
          </caption>
          <thead>
            <tr>
              <th scope="col">No.</th>
              <th scope="col">Copper</th>
              <th scope="col">Name</th>
              <th scope="col">Kind</th>
              <th scope="col">Material</th>
              <th scope="col" className="num">
                Thickness, {units.thickness}
              </th>
              <th scope="col" className="num">
                Over +
              </th>
              <th scope="col" className="num">
                Under −
              </th>
              {!isReadOnly && (
                <th scope="col">
                  <span className="sr-only">Acts</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {layers.map((layer, index) => {
              const designation = designations.get(layer.id)
              return (
                <LayerRow
                  key={layer.id}
                  layer={layer}
                  index={index}
                  designation={designation === undefined ? '' : formatDesignation(designation)}
                  onInsert={() => insertBelow(index)}
                />
              )
            })}
          </tbody>
        </table>
      </TableFrame>
      {layers.length === 0 && (
        <p className="empty">No layers yet. Start from a starting construction or add a layer.</p>
      )}
      {!isReadOnly && (
        <div className="row mt-2 no-print">
          <Button onPress={() => insertBelow(layers.length - 1)}>Add a layer at the bottom face</Button>
        </div>
      )}
    </>
  )
}

interface LayerRowProps {
  readonly layer: Layer
  readonly index: number
  readonly designation: string
  readonly onInsert: () => void
}

function LayerRow({ layer, index, designation, onInsert }: LayerRowProps) {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { design } = state
  const count = design.construction.layers.length
  const at = makePlaces(['construction', 'layers', index], `layer.${layer.id}`, layer.name || `layer ${index + 1}`)
  const set = (field: string, change: (present: Layer) => Layer) =>
    edit(at(field).key, (present) => updateLayer(present, layer.id, change))
  const move = (to: number) => {
    if (to >= 0 && to < count) edit(`move-${layer.id}-${to}`, (present) => moveLayer(present, index, to))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (isReadOnly || !event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return
    event.preventDefault()
    move(event.key === 'ArrowUp' ? index - 1 : index + 1)
  }
  const LayerThicknessCell = layer.kind === 'conductor' ? FoilThicknessCell : ThicknessCell
  const materials = listMaterialsFor(design, layer.kind).map((material) => ({
    value: material.id,
    label: material.name,
  }))
  return (
    <tr onKeyDown={onKeyDown}>
      <td className="num" data-label="No.">
        {index + 1}
      </td>
      <td className="nowrap" data-label="Copper">
        <strong>{designation}</strong>
      </td>
      <td data-label="Name" className="cell-name">
        <TextCell
          label="Name"
          at={at('name')}
          value={layer.name}
          onChange={(name) => set('name', (present) => ({ ...present, name }))}
        />
        <ZonelessNote path={at('id').path} />
      </td>
      <td data-label="Kind" className="cell-kind">
        <ChoiceCell
          label="Kind"
          at={at('kind')}
          value={layer.kind}
          choices={LAYER_KIND_CHOICES}
          onChange={(kind) =>
            edit(at('kind').key, (present) =>
              updateLayer(present, layer.id, (from) =>
                makeLayerOfKind(present, kind, { id: from.id, name: from.name, from }),
              ),
            )
          }
        />
      </td>
      <td data-label="Material" className="cell-material">
        {layer.kind === 'unbonded-gap' ? (
          <span className="muted">air</span>
        ) : (
          <ChoiceCell
            label="Material"
            at={at('materialId')}
            value={layer.materialId}
            choices={materials}
            onChange={(materialId) =>
              set('materialId', (present) => (present.kind === 'unbonded-gap' ? present : { ...present, materialId }))
            }
          />
        )}
      </td>
      <td data-label="Thickness" className="num cell-number">
        <LayerThicknessCell
          label={LAYER_FIELDS.thicknessUm.label}
          at={at('thicknessUm')}
          value={layer.thicknessUm}
          onChange={(thicknessUm) => set('thicknessUm', (present) => ({ ...present, thicknessUm }))}
        />
      </td>
      {(['tolerancePlusUm', 'toleranceMinusUm'] as const).map((field) => (
        <td key={field} className="num cell-number" data-label={field === 'tolerancePlusUm' ? 'Over +' : 'Under −'}>
          {layer.kind !== 'unbonded-gap' && (
            <ThicknessCell
              label={field === 'tolerancePlusUm' ? 'Tolerance over' : 'Tolerance under'}
              at={at(field)}
              value={layer[field]}
              onChange={(valueUm) =>
                set(field, (present) => (present.kind === 'unbonded-gap' ? present : { ...present, [field]: valueUm }))
              }
            />
          )}
        </td>
      ))}
      {!isReadOnly && (
        <td className="row-acts no-print">
          <RowAct label={`Move ${layer.name} up`} isDisabled={index === 0} onPress={() => move(index - 1)}>
            ↑
          </RowAct>
          <RowAct label={`Move ${layer.name} down`} isDisabled={index === count - 1} onPress={() => move(index + 1)}>
            ↓
          </RowAct>
          <RowAct label={`Insert a layer below ${layer.name}`} onPress={onInsert}>
            +
          </RowAct>
          <RowAct
            label={`Copy ${layer.name}`}
            onPress={() => edit(`copy-${layer.id}-${count}`, (present) => duplicateLayer(present, index))}
          >
            copy
          </RowAct>
          <RowAct
            label={`Remove ${layer.name}`}
            onPress={() => edit(`remove-${layer.id}`, (present) => removeLayer(present, layer.id))}
          >
            ×
          </RowAct>
        </td>
      )}
    </tr>
  )
}

/** A layer in no zone is reported at its id, which has no field of its own. */
function ZonelessNote({ path }: { path: string }) {
  const { issueByPath } = useDraft()
  const message = issueByPath.get(path)
  return message === undefined ? null : <span className="field-error cell-error">{message}</span>
}
