'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
import { TextArea, TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import type { OwnMaterialView } from '@/lib/data'
import { listChoices, listLibraryMaterials, MATERIAL_FIELDS } from '@/lib/engine'
import { saveOwnMaterial } from '../actions'
import {
  type ConstantField,
  type ConstantTexts,
  draftFrom,
  draftOf,
  EMPTY_DRAFT,
  listConstantFields,
  type MaterialDraft,
  NO_TEXTS,
  OWN_FOIL_TYPES,
  readDraft,
  withTexts,
} from './material-form-state'

const COLUMNS = {
  constant: { head: 'Constant', isRowHead: true },
  value: { head: 'Value', isNumeric: true, className: 'cell-number' },
  low: { head: 'Lowest', isNumeric: true, className: 'cell-number' },
  high: { head: 'Highest', isNumeric: true, className: 'cell-number' },
  source: { head: 'Source of the value', minWidthRem: 16 },
  rangeSource: { head: 'Source of the range', minWidthRem: 12 },
} satisfies Columns

const KINDS = listChoices(MATERIAL_FIELDS.kind)
const FOILS = listChoices(MATERIAL_FIELDS.foil.fields.type).filter(({ value }) =>
  OWN_FOIL_TYPES.some((type) => type === value),
)
const NOTHING = 'nothing'

interface MaterialFormProps {
  /** Null for a new one. */
  readonly material: OwnMaterialView | null
  readonly onClose: () => void
}

/** A material with its constants, each with its source. */
export function MaterialForm({ material, onClose }: MaterialFormProps) {
  const [draft, setDraft] = useState<MaterialDraft>(() =>
    material === null ? EMPTY_DRAFT : draftOf(recordOf(material)),
  )
  const [startId, setStartId] = useState(NOTHING)
  const [reason, setReason] = useState('')
  const [isChecked, setChecked] = useState(false)
  const { send, isPending, refusal } = useAction(saveOwnMaterial)
  const reading = readDraft(draft)
  const problems: ReadonlyMap<string, string> = isChecked && !reading.ok ? reading.problems : new Map()
  const isReasonMissing = isChecked && reason.trim() === ''
  const fields = listConstantFields(draft.kind)
  const begin = (id: string) => {
    setStartId(id)
    const found = listLibraryMaterials().find((each) => each.id === id)
    if (found === undefined) setDraft(EMPTY_DRAFT)
    else {
      const { id: _, ...record } = found
      setDraft(draftFrom(record))
    }
  }
  const save = () => {
    setChecked(true)
    if (!reading.ok || reason.trim() === '') return
    const seen = material === null ? { entryId: null, seenVersion: 0 } : material
    send(
      { entryId: seen.entryId, seenVersion: 'version' in seen ? seen.version : 0, material: reading.material, reason },
      onClose,
    )
  }
  return (
    <div className="stack">
      <div className="form">
        {material === null && (
          <SelectField
            label="Begin with"
            hint="Figures of the library stay with their sources; one that you change needs a source of its own."
            value={startId}
            onChange={begin}
            options={[
              { value: NOTHING, label: 'an empty form' },
              ...listLibraryMaterials()
                .filter(({ foil }) => foil?.type !== 'plated')
                .map(({ id, name }) => ({ value: id, label: name })),
            ]}
          />
        )}
        <TextField
          label={MATERIAL_FIELDS.name.label}
          hint="A generic description: fabricators who see a design read it."
          value={draft.name}
          onChange={(name) => setDraft({ ...draft, name })}
          error={problems.get('name')}
        />
        <SelectField
          label={MATERIAL_FIELDS.kind.label}
          value={draft.kind}
          onChange={(kind) => setDraft({ ...draft, kind })}
          options={KINDS}
          error={problems.get('kind')}
        />
        {draft.kind === 'copper-foil' && (
          <SelectField
            label={MATERIAL_FIELDS.foil.fields.type.label}
            value={draft.foilType}
            onChange={(foilType) => setDraft({ ...draft, foilType })}
            options={FOILS}
          />
        )}
        <TextField
          label={MATERIAL_FIELDS.specification.label}
          hint="The sheet of a standard by which it is ordered, such as IPC-4203/1."
          isOptional
          value={draft.specification}
          onChange={(specification) => setDraft({ ...draft, specification })}
          error={problems.get('specification')}
        />
      </div>
      <DataTable
        label="Constants"
        columns={COLUMNS}
        isGrid
        caption="What is left empty is not known. Without a range, a usual range of the constant is used. An empty source of the range is that of the value."
      >
        {fields.map((field) => (
          <ConstantRow
            key={field.key}
            field={field}
            texts={draft.constants[field.key] ?? NO_TEXTS}
            problem={problems.get(field.key)}
            onEdit={(change) => setDraft(withTexts(draft, field.key, change))}
          />
        ))}
      </DataTable>
      <div className="form">
        <TextArea
          label={MATERIAL_FIELDS.note.label}
          hint="What is uncertain in it, and for what it holds."
          isOptional
          rows={3}
          value={draft.note}
          onChange={(note) => setDraft({ ...draft, note })}
          error={problems.get('note')}
        />
        <TextField
          label="Reason"
          hint="Stands with this version."
          value={reason}
          onChange={setReason}
          error={isReasonMissing ? 'is empty' : undefined}
        />
        {isChecked && !reading.ok && (
          <p className="field-error" role="alert">
            Nothing was saved: {problems.size === 1 ? 'one entry' : `${problems.size} entries`} above cannot be used.
          </p>
        )}
        <FormError refusal={refusal} />
        <div className="row">
          <Button weight="strong" isPending={isPending} onPress={save}>
            Save the material
          </Button>
          <Button weight="quiet" onPress={onClose} isDisabled={isPending}>
            Cancel
          </Button>
        </div>
      </div>
    </div>
  )
}

function recordOf({ material }: OwnMaterialView) {
  const { id: _, ...record } = material
  return record
}

interface ConstantRowProps {
  readonly field: ConstantField
  readonly texts: ConstantTexts
  readonly problem: string | undefined
  readonly onEdit: (change: Partial<ConstantTexts>) => void
}

function ConstantRow({ field: { key, label, unit, isRequired }, texts, problem, onEdit }: ConstantRowProps) {
  const errorId = `${key}-error`
  const makeInput = (name: keyof ConstantTexts, isNumeric: boolean) => (
    <input
      className={isNumeric ? 'input input-num' : 'input'}
      {...(isNumeric ? { inputMode: 'decimal' as const } : {})}
      autoComplete="off"
      aria-label={`${label}: ${COLUMNS[name].head.toLowerCase()}`}
      aria-invalid={problem !== undefined}
      aria-describedby={problem === undefined ? undefined : errorId}
      title={texts[name]}
      value={texts[name]}
      onChange={(event) => onEdit({ [name]: event.target.value })}
    />
  )
  return (
    <DataRow
      columns={COLUMNS}
      cells={{
        constant: (
          <>
            {label}
            {unit !== undefined && <span className="unit">, {unit}</span>}
            {isRequired && <span className="muted small"> needed</span>}
            {problem !== undefined && (
              <p id={errorId} className="field-error">
                {problem}
              </p>
            )}
          </>
        ),
        value: makeInput('value', true),
        low: makeInput('low', true),
        high: makeInput('high', true),
        source: makeInput('source', false),
        rangeSource: makeInput('rangeSource', false),
      }}
    />
  )
}
