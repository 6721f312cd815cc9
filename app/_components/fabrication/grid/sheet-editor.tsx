'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { Notice } from '@/app/_components/ui/notices'
import { NumberField } from '@/app/_components/ui/number-field'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import {
  type MatrixContent,
  type MatrixRow,
  SHEET_TABLES,
  type SheetTable,
  type ShelfContent,
  type ShelfRow,
  type TableSheetKind,
  writeTexts,
} from '@/lib/fabrication'
import { saveSheet } from '../actions'
import { FileExchange } from '../file-exchange'
import { makeGridReader } from './grid-faults'
import { countUnsaved, type GridState, makeGrid } from './grid-state'
import { SheetGrid } from './sheet-grid'

type Row = MatrixRow | ShelfRow

export type EditedSheet =
  | { readonly kind: 'matrix'; readonly content: MatrixContent }
  | { readonly kind: 'shelf'; readonly content: ShelfContent }

interface SheetEditorProps {
  readonly label: string
  readonly companyId: string
  readonly sheet: EditedSheet
  readonly seenVersion: number
  readonly mayEdit: boolean
  /** Calendar day that a new version bears unless the person says otherwise. */
  readonly today: string
}

/** A matrix or a shelf: the grid, what else belongs to it, files, and saving it all as a new version. */
export function SheetEditor({ label, companyId, sheet, seenVersion, mayEdit, today }: SheetEditorProps) {
  const { kind, content } = sheet
  const table = SHEET_TABLES[kind] as unknown as SheetTable<Row>
  const readGrid = useMemo(() => makeGridReader(table), [table])
  const [state, setState] = useState<GridState>(() =>
    makeGrid(
      table.columns.length,
      (content.rows as readonly Row[]).map((row) => writeTexts(table, row)),
    ),
  )
  const savedDays = 'buildTimeDays' in content ? content.buildTimeDays : null
  const [buildTimeDays, setBuildTimeDays] = useState<number | null>(savedDays)
  const [issuedOn, setIssuedOn] = useState(today)
  const [note, setNote] = useState('')
  const { send, isPending, refusal } = useAction(saveSheet)
  const reading = useMemo(() => readGrid(state.rows), [readGrid, state.rows])
  const unsavedCount = useMemo(() => countUnsaved(state), [state]) + Number(buildTimeDays !== savedDays)
  const onChange = useCallback((next: (now: GridState) => GridState) => setState(next), [])
  useWarningBeforeLeaving(mayEdit && unsavedCount > 0)

  const save = () =>
    send({
      companyId,
      kind,
      seenVersion,
      issuedOn,
      note,
      content: kind === 'matrix' ? { rows: reading.rows } : { buildTimeDays, rows: reading.rows },
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
      <SheetGrid
        label={label}
        table={table}
        state={state}
        onChange={onChange}
        faults={reading.faults}
        isReadOnly={!mayEdit}
      />
      {mayEdit && (
        <>
          <SaveState unsavedCount={unsavedCount} faultCount={reading.faults.size} kind={kind} />
          <div className="form-grid">
            <TextField label="Date of issue" type="date" value={issuedOn} onChange={setIssuedOn} />
            <TextField label="Note on this version" isOptional value={note} onChange={setNote} />
          </div>
          <FormError refusal={refusal} />
          <div className="row">
            <Button weight="strong" isPending={isPending} isDisabled={reading.faults.size > 0} onPress={save}>
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

interface SaveStateProps {
  readonly unsavedCount: number
  readonly faultCount: number
  readonly kind: TableSheetKind
}

function SaveState({ unsavedCount, faultCount }: SaveStateProps) {
  const unsaved = unsavedCount === 1 ? '1 row is not saved.' : `${unsavedCount} rows are not saved.`
  return (
    <div role="status">
      {faultCount > 0 ? (
        <Notice tone="caution">
          <p>
            {faultCount === 1 ? '1 row cannot be' : `${faultCount} rows cannot be`}: the reason stands in the cell. You
            can save once they are corrected or removed. {unsavedCount > 0 && unsaved}
          </p>
        </Notice>
      ) : (
        <p className="small muted">{unsavedCount === 0 ? 'Everything here is saved.' : unsaved}</p>
      )}
    </div>
  )
}

/** The browser asks before what was typed is lost. */
function useWarningBeforeLeaving(isNeeded: boolean): void {
  useEffect(() => {
    if (!isNeeded) return
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', ask)
    return () => window.removeEventListener('beforeunload', ask)
  }, [isNeeded])
}
