'use client'

import { useState } from 'react'
import { DataRow, DataTable } from '@/app/_components/ui/data-table'
import { BRIEF_FIELDS, BRIEF_TERMS, type Brief, type Design, type FieldNode, listOrganicMaterials } from '@/lib/engine'
import { getUnitSymbol } from '@/lib/engine/units'
import { FieldCell, GridCells, makePlaces, OptionalNumberCell } from '../cells'
import { useDraft, useEdit } from '../draft'

type TermRecord = keyof typeof BRIEF_TERMS

/** The fields of a record of the brief, in the dictionary's order: a new field needs no other code. */
export function TermCells({ record }: { record: TermRecord }) {
  const { state } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['brief', record], `brief.${record}`, 'brief')
  const values: Readonly<Record<string, string | number | boolean | null>> = state.design.brief[record]
  const shape: Readonly<Record<string, { safeParse(value: unknown): { readonly success: boolean } }>> =
    BRIEF_TERMS[record].shape
  const fields: Readonly<Record<string, FieldNode>> = BRIEF_FIELDS[record].fields
  return (
    <div className="form-grid">
      {Object.entries(fields).map(([name, words]) => {
        const schema = shape[name]
        return schema === undefined ? null : (
          <FieldCell
            key={name}
            words={words}
            schema={schema}
            at={at(name)}
            value={values[name] ?? null}
            onChange={(value) =>
              edit(at(name).key, (design) => ({
                ...design,
                brief: { ...design.brief, [record]: { ...design.brief[record], [name]: value } },
              }))
            }
          />
        )
      })}
    </div>
  )
}

const OUTGASSING = BRIEF_FIELDS.outgassing.entry
const FIGURES = ['totalLossPct', 'condensablePct'] as const
type Outgassing = Brief['outgassing'][number]

const COLUMNS = {
  material: { head: OUTGASSING.materialId.label, isRowHead: true },
  totalLossPct: { head: OUTGASSING.totalLossPct.label, unit: getUnitSymbol('pct'), isNumeric: true },
  condensablePct: { head: OUTGASSING.condensablePct.label, unit: getUnitSymbol('pct'), isNumeric: true },
} as const

/** Few parts meet any of this: the fields open where something is stated, or by hand. */
export function ExposureTerms() {
  const { state } = useDraft()
  const { exposure, outgassing } = state.design.brief
  const [isOpen] = useState(outgassing.length > 0 || Object.values(exposure).some((value) => value !== null))
  return (
    <details open={isOpen}>
      <summary>Skin, moisture, radio, discharge, pull, cold, fluids, outgassing</summary>
      <TermCells record="exposure" />
      <GridCells>
        <OutgassingTable />
      </GridCells>
    </details>
  )
}

/** Figures of the films, adhesives and boards that the construction is made of. */
function OutgassingTable() {
  const { state } = useDraft()
  const edit = useEdit()
  const materials = listOrganicMaterials(state.design)
  const typed = state.design.brief.outgassing
  if (materials.length === 0) return null
  const set = (materialId: string, change: Partial<Outgassing>) =>
    edit(`brief.outgassing.${materialId}.${Object.keys(change).join('.')}`, (design) => ({
      ...design,
      brief: { ...design.brief, outgassing: withFigures(design, materialId, change) },
    }))
  return (
    <DataTable label={BRIEF_FIELDS.outgassing.label} columns={COLUMNS} isGrid>
      {materials.map(({ id, name }) => {
        const index = typed.findIndex(({ materialId }) => materialId === id)
        const at = makePlaces(
          ['brief', 'outgassing', index === -1 ? typed.length : index],
          `brief.outgassing.${id}`,
          name,
        )
        const [total, condensable] = FIGURES.map((figure) => (
          <OptionalNumberCell
            key={figure}
            label={OUTGASSING[figure].label}
            at={at(figure)}
            value={typed[index]?.[figure] ?? null}
            onChange={(value) => set(id, { [figure]: value })}
          />
        ))
        return (
          <DataRow
            key={id}
            columns={COLUMNS}
            cells={{ material: name, totalLossPct: total, condensablePct: condensable }}
          />
        )
      })}
    </DataTable>
  )
}

/** The list with a change in one entry; entries of materials that the construction no longer has go. */
function withFigures(design: Design, materialId: string, change: Partial<Outgassing>): Outgassing[] {
  const { outgassing } = design.brief
  return listOrganicMaterials(design).flatMap(({ id }) => {
    const known = outgassing.find((entry) => entry.materialId === id)
    if (id !== materialId) return known === undefined ? [] : [known]
    return [{ ...(known ?? { materialId: id, totalLossPct: null, condensablePct: null }), ...change }]
  })
}
