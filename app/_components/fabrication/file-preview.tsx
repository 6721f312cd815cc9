'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { Notice } from '@/app/_components/ui/notices'
import { TextField } from '@/app/_components/ui/text-field'
import { uploadAction } from '@/app/_components/ui/upload-action'
import { useAction } from '@/app/_components/ui/use-action'
import type { SavedSheet, SheetFilePreview } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { RowChanges } from './row-changes'

const importSheetFile = uploadAction<SavedSheet>('sheet-import')

interface FilePreviewProps {
  readonly preview: SheetFilePreview
  /** What was shown is sent again: the server reads the file again. */
  readonly input: Record<string, unknown>
  readonly seenVersion: number
  readonly today: string
  readonly onDiscard: () => void
}

const BAD_ROW_COLUMNS = {
  row: { head: 'Row', isNumeric: true },
  column: { head: 'Column' },
  says: { head: 'Says' },
  whyNot: { head: 'Why not' },
} satisfies Columns

/** What a file would do to the sheet. Nothing is written until it is taken over. */
export function FilePreview({ preview, input, seenVersion, today, onDiscard }: FilePreviewProps) {
  const [leaveOutBadRows, setLeaveOut] = useState(false)
  const [issuedOn, setIssuedOn] = useState(today)
  const [note, setNote] = useState(`from ${preview.fileName}`)
  const router = useRouter()
  const { send, isPending, refusal } = useAction(importSheetFile)
  const { added, changed, removed, unchangedCount, goodRowCount, badRowCount, bad } = preview
  const hasChanges = added.length + changed.length + removed.length > 0
  const mayTake = goodRowCount > 0 && (badRowCount === 0 || leaveOutBadRows)
  return (
    <section className="file-preview stack" aria-label={`What ${preview.fileName} would change`}>
      <p>
        <strong>{preview.fileName}</strong>: {countOf(preview.rowCount, 'row')}, of which {goodRowCount} can be taken.{' '}
        {added.length} would be added, {changed.length} changed, {removed.length} removed, {unchangedCount} stay.
        Nothing is written yet.
      </p>
      {preview.unknownColumns.length > 0 && (
        <Notice tone="caution">
          <p>Unknown headings are ignored: {preview.unknownColumns.join(', ')}.</p>
        </Notice>
      )}
      {badRowCount > 0 && (
        <>
          <h3>{badRowCount === 1 ? '1 row cannot be imported' : `${badRowCount} rows cannot be imported`}</h3>
          <DataTable
            label="Rows that cannot be imported"
            columns={BAD_ROW_COLUMNS}
            frameClassName="preview-frame"
            isStacked={false}
          >
            {bad.map(({ line, column, text, reason }) => (
              <DataRow
                key={`${line} ${column} ${reason}`}
                columns={BAD_ROW_COLUMNS}
                cells={{
                  row: line,
                  column: column,
                  says: text === '' ? <span className="muted">nothing</span> : text,
                  whyNot: reason,
                }}
              />
            ))}
          </DataTable>
          <CheckboxField isSelected={leaveOutBadRows} onChange={setLeaveOut}>
            Leave these rows out and import the other {goodRowCount}
          </CheckboxField>
        </>
      )}
      <RowChanges changes={preview} />
      <div className="form-grid">
        <TextField label="Date of issue of the new version" type="date" value={issuedOn} onChange={setIssuedOn} />
        <TextField label="Note on the new version" isOptional value={note} onChange={setNote} />
      </div>
      <FormError refusal={refusal} />
      <div className="row">
        <Button
          weight="strong"
          isPending={isPending}
          isDisabled={!mayTake || !hasChanges}
          onPress={() => send({ ...input, leaveOutBadRows, seenVersion, issuedOn, note }, () => router.refresh())}
        >
          Import as version {seenVersion + 1}
        </Button>
        <Button onPress={onDiscard} isDisabled={isPending}>
          Discard
        </Button>
        {!hasChanges && <span className="small muted">The file changes nothing.</span>}
      </div>
    </section>
  )
}
