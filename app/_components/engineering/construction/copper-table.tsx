'use client'

import { memo } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import {
  type ConductorLayer,
  LAYER_FIELDS,
  mayHavePlanePattern,
  NO_PLATING,
  NOT_STATED,
  PLATED_COPPER_ID,
} from '@/lib/engine'
import { ChoiceCell, makePlaces, NumberCell, OptionalChoiceCell, ThicknessCell, useUnitLabels } from '../cells'
import { updateLayer, useDraft, useEdit } from '../draft'
import { PLANE_CHOICES, PLATING_CHOICES, ROLE_CHOICES } from './words'

const PLATING_FIELDS = LAYER_FIELDS.plating.fields

/** Ordinary through-hole plating adds about 1 mil: common practice, no published source. A beginning to be changed. */
const USUAL_PLATING_UM = 25.4

function useCopperColumns() {
  const units = useUnitLabels()
  return {
    layer: { head: 'Layer', isRowHead: true },
    carries: { head: LAYER_FIELDS.role.label, className: 'cell-choice' },
    plane: { head: LAYER_FIELDS.planePattern.label, className: 'cell-choice' },
    copperShare: { head: LAYER_FIELDS.coverageFraction.label, unit: '%', isNumeric: true, className: 'cell-number' },
    plating: { head: PLATING_FIELDS.process.label, className: 'cell-choice' },
    plated: { head: PLATING_FIELDS.thicknessUm.head, unit: units.thickness, isNumeric: true, className: 'cell-number' },
    platingTolerance: { head: PLATING_FIELDS.toleranceUm.head, isNumeric: true, className: 'cell-number' },
    loss: {
      head: LAYER_FIELDS.processingLossUm.head,
      unit: units.thickness,
      isNumeric: true,
      className: 'cell-number',
    },
  } satisfies Columns
}

/** What conductor layers have beyond a sheet: use, plane, copper share, plating, loss. */
export function CopperTable() {
  const { state } = useDraft()
  const { construction } = state.design
  const columns = useCopperColumns()
  const designations = nameConductorLayers(construction)
  const rows = construction.layers.flatMap((layer, index) => (layer.kind === 'conductor' ? [{ layer, index }] : []))
  if (rows.length === 0) return <p className="empty">No conductor layer yet.</p>
  return (
    <DataTable
      label="Copper"
      columns={columns}
      isGrid
      caption={
        'Panel and pattern plating add copper wherever the layer is present, unless a zone below states otherwise; pads-only plating leaves the conductors bare.'
      }
    >
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
    </DataTable>
  )
}

const CopperRow = memo(function CopperRow({
  layer,
  index,
  name,
}: {
  layer: ConductorLayer
  index: number
  name: string
}) {
  const columns = useCopperColumns()
  const edit = useEdit()
  const at = makePlaces(['construction', 'layers', index], `layer.${layer.id}`, layer.name)
  const set = (field: string, change: (present: ConductorLayer) => ConductorLayer) =>
    edit(at(field).key, (design) =>
      updateLayer(design, layer.id, (present) => (present.kind === 'conductor' ? change(present) : present)),
    )
  return (
    <DataRow
      columns={columns}
      cells={{
        layer: name,
        carries: (
          <ChoiceCell
            label={LAYER_FIELDS.role.label}
            at={at('role')}
            value={layer.role}
            choices={ROLE_CHOICES}
            onChange={(role) =>
              set('role', (present) => ({
                ...present,
                role,
                // What a layer's plane looks like is asked, never assumed.
                planePattern:
                  present.planePattern !== null && mayHavePlanePattern(role, present.planePattern)
                    ? present.planePattern
                    : null,
              }))
            }
          />
        ),
        plane: (
          <OptionalChoiceCell
            label={LAYER_FIELDS.planePattern.label}
            at={at('planePattern')}
            value={layer.planePattern}
            choices={PLANE_CHOICES.filter(
              ({ value }) => value === layer.planePattern || mayHavePlanePattern(layer.role, value),
            )}
            emptyLabel={layer.role === 'signal' ? '–' : NOT_STATED}
            onChange={(planePattern) => set('planePattern', (present) => ({ ...present, planePattern }))}
          />
        ),
        copperShare: (
          <NumberCell
            label={`${LAYER_FIELDS.coverageFraction.label}, per cent`}
            at={at('coverageFraction')}
            value={layer.coverageFraction}
            factor={100}
            onChange={(coverageFraction) => set('coverageFraction', (present) => ({ ...present, coverageFraction }))}
          />
        ),
        plating: (
          <ChoiceCell
            label={PLATING_FIELDS.process.label}
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
        ),
        plated: (
          <ThicknessCell
            label={PLATING_FIELDS.thicknessUm.label}
            at={at('plating', 'thicknessUm')}
            value={layer.plating.thicknessUm}
            isFixed={layer.plating.process === 'none'}
            onChange={(thicknessUm) =>
              set('plating.thicknessUm', (present) => ({ ...present, plating: { ...present.plating, thicknessUm } }))
            }
          />
        ),
        platingTolerance: (
          <ThicknessCell
            label={PLATING_FIELDS.toleranceUm.label}
            at={at('plating', 'toleranceUm')}
            value={layer.plating.toleranceUm}
            isFixed={layer.plating.process === 'none'}
            onChange={(toleranceUm) =>
              set('plating.toleranceUm', (present) => ({ ...present, plating: { ...present.plating, toleranceUm } }))
            }
          />
        ),
        loss: (
          <ThicknessCell
            label={LAYER_FIELDS.processingLossUm.label}
            at={at('processingLossUm')}
            value={layer.processingLossUm}
            onChange={(processingLossUm) => set('processingLossUm', (present) => ({ ...present, processingLossUm }))}
          />
        ),
      }}
    />
  )
})
