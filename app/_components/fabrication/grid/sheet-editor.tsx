'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { NumberField } from '@/app/_components/ui/number-field'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import { type FlexTestContent, type MatrixContent, type SheetRow, type ShelfContent, tableOf } from '@/lib/fabrication'
import { saveSheet } from '../actions'
import { FileExchange } from '../file-exchange'
import { FabricationGrid } from './fabrication-grid'
import { SaveState } from './save-state'
import { useSheetGrid } from './use-sheet-grid'

export type EditedSheet =
  | { readonly kind: 'matrix'; readonly content: MatrixContent }
  | { readonly kind: 'shelf'; readonly content: ShelfContent }
  | { readonly kind: 'flex-tests'; readonly content: FlexTestContent }

interface SheetEditorProps {
  readonly label: string
  readonly companyId: string
  readonly sheet: EditedSheet
  readonly seenVersion: number
  readonly mayEdit: boolean
  /** Calendar day that a new version bears unless the person says otherwise. */
  readonly today: string
}

/** A matrix, a shelf or flex tests: the grid, what else belongs to it, files, and saving it all as a new version. */
export function FabricationSheetEditor({ label, companyId, sheet, seenVersion, mayEdit, today }: SheetEditorProps) {
  const { kind, content } = sheet
  const table = tableOf(kind)
  const savedDays = 'buildTimeDays' in content ? content.buildTimeDays : null
  const [buildTimeDays, setBuildTimeDays] = useState<number | null>(savedDays)
  const { state, onChange, reading, unsavedCount } = useSheetGrid(
    table,
    content.rows as readonly SheetRow[],
    mayEdit,
    Number(buildTimeDays !== savedDays),
  )
  const [issuedOn, setIssuedOn] = useState(today)
  const [note, setNote] = useState('')
  const { send, isPending, refusal } = useAction(saveSheet)

  // A version that says nothing new would only have to be looked at by those who compare.
  const isUnchanged = seenVersion > 0 && unsavedCount === 0 && issuedOn === today && note === ''

  const save = () =>
    send({
      companyId,
      kind,
      seenVersion,
      issuedOn,
      note,
      content: kind === 'shelf' ? { buildTimeDays, rows: reading.rows } : { rows: reading.rows },
    })

  return (
    <div className="stack">
      <FileExchange
        companyId={companyId}
        kind={kind}
        mayEdit={mayEdit}
        seenVersion={seenVersion}
        hasUnsaved={unsavedCount > 0}
        today={today}
      />
      {kind === 'shelf' && <BuildTime value={buildTimeDays} onChange={setBuildTimeDays} mayEdit={mayEdit} />}
      <FabricationGrid
        label={label}
        table={table}
        state={state}
        onChange={onChange}
        faults={reading.faults}
        isReadOnly={!mayEdit}
      />
      {mayEdit && (
        <>
          <SaveState unsavedCount={unsavedCount} faultCount={reading.faults.size} />
          <div className="form-grid">
            <TextField label="Date of issue" type="date" value={issuedOn} onChange={setIssuedOn} />
            <TextField label="Note on this version" isOptional value={note} onChange={setNote} />
          </div>
          <FormError refusal={refusal} />
          <div className="row">
            <Button
              weight="strong"
              isPending={isPending}
              isDisabled={reading.faults.size > 0 || isUnchanged}
              onPress={save}
            >
              Save as version {seenVersion + 1}
            </Button>
          </div>
        </>
      )}
    </div>
  )
}

interface BuildTimeProps {
  readonly value: number | null
  readonly onChange: (days: number | null) => void
  readonly mayEdit: boolean
}

function BuildTime({ value, onChange, mayEdit }: BuildTimeProps) {
  if (!mayEdit) {
    return (
      <p className="small">Build time: {value === null ? 'not stated' : `${value} days from the last material`}.</p>
    )
  }
  return (
    <div className="form-grid">
      <NumberField
        label="Build time"
        unit="days"
        hint="Calendar days from the last material to delivery of the parts. Order dates are computed from it."
        value={value}
        onChange={onChange}
      />
    </div>
  )
}
