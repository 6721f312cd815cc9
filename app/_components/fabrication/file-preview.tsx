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

const importSheetFile = uploadAction<SavedSheet>('sheet-import')

interface FilePreviewProps {
  readonly preview: SheetFilePreview
  /** What was shown is sent again: the server reads the file again. */
  readonly input: Record<string, unknown>
  readonly seenVersion: number
  readonly today: string
  readonly onDiscard: () => void
}

/** How many rows of each list are spelled out; the counts say how many there are. */
const MOST_SHOWN = 200

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
  const { added, changed, removed, unchangedCount, goodRowCount, badRowCount, bad, columns } = preview
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
      <ChangedRows columns={columns} changed={changed} />
      <RowList title="Added" columns={columns} rows={added} />
      <RowList title="Removed" columns={columns} rows={removed} />
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

function RowList({
  title,
  columns,
  rows,
}: {
  title: string
  columns: readonly string[]
  rows: SheetFilePreview['added']
}) {
  if (rows.length === 0) return null
  return (
    <details>
      <summary>
        {title}: {rows.length} {rows.length === 1 ? 'row' : 'rows'}
      </summary>
      <RowTable label={title} columns={columns} rows={rows.slice(0, MOST_SHOWN)} />
      <Rest count={rows.length - MOST_SHOWN} />
    </details>
  )
}

const getColumnId = (index: number): string => `column ${index}`

function RowTable({
  label,
  columns,
  rows,
}: {
  label: string
  columns: readonly string[]
  rows: SheetFilePreview['added']
}) {
  const tableColumns: Columns = Object.fromEntries(columns.map((head, index) => [getColumnId(index), { head }]))
  return (
    <DataTable label={label} columns={tableColumns} frameClassName="preview-frame" isStacked={false}>
      {rows.map((row) => (
        <DataRow
          key={JSON.stringify(row)}
          columns={tableColumns}
          cells={Object.fromEntries(columns.map((_, index) => [getColumnId(index), row[index]]))}
        />
      ))}
    </DataTable>
  )
}

function ChangedRows({ columns, changed }: { columns: readonly string[]; changed: SheetFilePreview['changed'] }) {
  if (changed.length === 0) return null
  return (
    <details open={changed.length <= 20}>
      <summary>
        Changed: {changed.length} {changed.length === 1 ? 'row' : 'rows'}
      </summary>
      <ul className="small">
        {changed.slice(0, MOST_SHOWN).map(({ before, after }) => (
          <li key={JSON.stringify(after)}>
            {after[0]}:{' '}
            {columns
              .flatMap((column, index) =>
                before[index] === after[index]
                  ? []
                  : [`${column} ${formatCell(before[index])} to ${formatCell(after[index])}`],
              )
              .join('; ')}
          </li>
        ))}
      </ul>
      <Rest count={changed.length - MOST_SHOWN} />
    </details>
  )
}

const formatCell = (text: string | undefined) => (text === undefined || text === '' ? 'nothing' : text)

function Rest({ count }: { count: number }) {
  return count > 0 ? <p className="small muted">and {count} more</p> : null
}
