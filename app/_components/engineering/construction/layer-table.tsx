'use client'

import { type KeyboardEvent, memo, useMemo } from 'react'
import { FoilUnitSwitch } from '@/app/_components/shell/switches'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import { LAYER_FIELDS, type Layer, type Material, withTakenMaterials } from '@/lib/engine'
import {
  type Choice,
  ChoiceCell,
  FoilThicknessCell,
  makePlaces,
  TextCell,
  ThicknessCell,
  useUnitLabels,
} from '../cells'
import {
  duplicateLayer,
  insertLayer,
  makeFreshId,
  makeFreshName,
  makeLayerOfKind,
  moveLayer,
  removeLayer,
  updateLayer,
  useDraft,
  useEdit,
  useFieldNotes,
} from '../draft'
import { RowAct } from '../row-act'
import { listMaterialChoices } from './material-choices'
import { LAYER_KIND_CHOICES } from './words'

function useLayerColumns() {
  const { isReadOnly } = useFieldNotes()
  const units = useUnitLabels()
  return {
    no: { head: 'No.' },
    copper: { head: 'Copper', className: 'nowrap' },
    name: { head: LAYER_FIELDS.name.label, className: 'cell-name' },
    kind: { head: LAYER_FIELDS.kind.label, className: 'cell-kind' },
    material: { head: LAYER_FIELDS.materialId.label, className: 'cell-material' },
    thickness: {
      head: LAYER_FIELDS.thicknessUm.label,
      unit: units.thickness,
      isNumeric: true,
      className: 'cell-number',
    },
    over: { head: LAYER_FIELDS.tolerancePlusUm.head, isNumeric: true, className: 'cell-number' },
    under: { head: LAYER_FIELDS.toleranceMinusUm.head, isNumeric: true, className: 'cell-number' },
    ...(!isReadOnly ? { acts: { head: 'Acts', isHeadHidden: true, className: 'no-print row-acts' } } : {}),
  } satisfies Columns
}

/** Every layer from the top face down, as bought. */
export function LayerTable() {
  const { state, stored, isReadOnly } = useDraft()
  const edit = useEdit()
  const { design } = state
  const { layers } = design.construction
  const designations = nameConductorLayers(design.construction)
  const columns = useLayerColumns()
  const { materials } = design
  const { ownMaterials } = stored
  const choicesOf = useMemo(() => {
    const choices = new Map<Layer['kind'], readonly Choice<string>[]>()
    return (kind: Layer['kind']) => {
      const found = choices.get(kind) ?? listMaterialChoices({ materials }, kind, ownMaterials)
      choices.set(kind, found)
      return found
    }
  }, [materials, ownMaterials])
  return (
    <>
      <div className="row no-print">
        <FoilUnitSwitch />
      </div>
      <DataTable
        label="Layers"
        columns={columns}
        isGrid
        caption={<>From the top face down, as bought. {!isReadOnly && 'Alt+Up and Alt+Down move the current row.'}</>}
      >
        {layers.map((layer, index) => {
          const designation = designations.get(layer.id)
          return (
            <LayerRow
              key={layer.id}
              layer={layer}
              index={index}
              count={layers.length}
              designation={designation === undefined ? '' : formatDesignation(designation)}
              materials={choicesOf(layer.kind)}
              ownMaterials={ownMaterials}
            />
          )
        })}
      </DataTable>
      {layers.length === 0 && (
        <p className="empty">No layers yet. Start from a starting construction or add a layer.</p>
      )}
      {!isReadOnly && (
        <div className="row above no-print">
          <Button onPress={() => insertBelow(edit, layers.length - 1, layers.length)}>
            Add a layer at the bottom face
          </Button>
        </div>
      )}
    </>
  )
}

interface LayerRowProps {
  readonly layer: Layer
  readonly index: number
  readonly count: number
  readonly designation: string
  readonly materials: readonly Choice<string>[]
  readonly ownMaterials: readonly Material[]
}

function insertBelow(edit: ReturnType<typeof useEdit>, index: number, count: number): void {
  edit(`insert-layer-${count}`, (present) => {
    const list = present.construction.layers
    const id = makeFreshId('layer', list)
    const layer = makeLayerOfKind(present, 'base-film', { id, name: makeFreshName('Layer', list), from: null })
    return insertLayer(present, index, layer)
  })
}

/** Drawn anew where something of its own layer changes, and not with every key. */
const LayerRow = memo(function LayerRow({ layer, index, count, designation, materials, ownMaterials }: LayerRowProps) {
  const { isReadOnly } = useFieldNotes()
  const columns = useLayerColumns()
  const edit = useEdit()
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
  return (
    <DataRow
      onKeyDown={onKeyDown}
      columns={columns}
      cells={{
        no: index + 1,
        copper: <strong>{designation}</strong>,
        name: (
          <>
            <TextCell
              label={LAYER_FIELDS.name.label}
              at={at('name')}
              value={layer.name}
              onChange={(name) => set('name', (present) => ({ ...present, name }))}
            />
            <ZonelessNote path={at('id').path} />
          </>
        ),
        kind: (
          <ChoiceCell
            label={LAYER_FIELDS.kind.label}
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
        ),
        material:
          layer.kind === 'unbonded-gap' ? (
            <span className="muted">air</span>
          ) : (
            <ChoiceCell
              label={LAYER_FIELDS.materialId.label}
              at={at('materialId')}
              value={layer.materialId}
              choices={materials}
              onChange={(materialId) =>
                edit(at('materialId').key, (present) =>
                  withTakenMaterials(
                    updateLayer(present, layer.id, (from) =>
                      from.kind === 'unbonded-gap' ? from : { ...from, materialId },
                    ),
                    ownMaterials,
                  ),
                )
              }
            />
          ),
        thickness: (
          <LayerThicknessCell
            label={LAYER_FIELDS.thicknessUm.label}
            at={at('thicknessUm')}
            value={layer.thicknessUm}
            onChange={(thicknessUm) => set('thicknessUm', (present) => ({ ...present, thicknessUm }))}
          />
        ),
        over: layer.kind !== 'unbonded-gap' && (
          <ThicknessCell
            label={LAYER_FIELDS.tolerancePlusUm.label}
            at={at('tolerancePlusUm')}
            value={layer.tolerancePlusUm}
            onChange={(valueUm) =>
              set('tolerancePlusUm', (present) =>
                present.kind === 'unbonded-gap' ? present : { ...present, tolerancePlusUm: valueUm },
              )
            }
          />
        ),
        under: layer.kind !== 'unbonded-gap' && (
          <ThicknessCell
            label={LAYER_FIELDS.toleranceMinusUm.label}
            at={at('toleranceMinusUm')}
            value={layer.toleranceMinusUm}
            onChange={(valueUm) =>
              set('toleranceMinusUm', (present) =>
                present.kind === 'unbonded-gap' ? present : { ...present, toleranceMinusUm: valueUm },
              )
            }
          />
        ),
        acts: (
          <>
            <RowAct label={`Move ${layer.name} up`} isDisabled={index === 0} onPress={() => move(index - 1)}>
              ↑
            </RowAct>
            <RowAct label={`Move ${layer.name} down`} isDisabled={index === count - 1} onPress={() => move(index + 1)}>
              ↓
            </RowAct>
            <RowAct label={`Insert a layer below ${layer.name}`} onPress={() => insertBelow(edit, index, count)}>
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
          </>
        ),
      }}
    />
  )
})

/** A layer in no zone is reported at its id, which has no field of its own. */
function ZonelessNote({ path }: { path: string }) {
  const { issueByPath } = useFieldNotes()
  const message = issueByPath.get(path)
  return message === undefined ? null : <span className="field-error cell-error">{message}</span>
}
