import 'server-only'
import {
  type FileReading,
  findHeadingRow,
  listTableChanges,
  readTableFile,
  SHEET_NAMES,
  type SheetRow,
  tableOf,
  writeTable,
} from '@/lib/fabrication'
import type { ExportSheetFileInput, PreviewSheetFileInput } from '@/lib/inputs'
import { readCsv, readXlsx, writeCsv, writeXlsx } from '@/lib/spreadsheet'
import { type Actor, requireCompany } from '../records/authorization'
import { loadSheet } from '../records/sheet-records'
import { outcomeOf, refuseField } from '../store/errors'
import type { ActResult, FileDownload, SheetFilePreview } from '../views'
import { SHEET_VIEW_ACTIONS } from './fabrication-sheets'
import { read } from './read'

type GoodReading = Extract<FileReading<SheetRow>, { readonly ok: true }>

/** What a file would do to the sheet, bad rows named. Writes nothing; taking it over is `importSheetFile`. */
export function previewSheetFile(actor: Actor, input: PreviewSheetFileInput): Promise<ActResult<SheetFilePreview>> {
  return outcomeOf(async () => {
    const { version, before } = await read(actor, async ({ tx, rights }) => {
      const { company } = await requireCompany(tx, rights, input.companyId, 'sheet:edit')
      const stored = await loadSheet(tx, company.id, input.kind)
      return { version: stored?.version ?? 0, before: (stored?.content.rows ?? []) as readonly SheetRow[] }
    })
    const reading = readFile(input)
    const rows = mergeRows(input, before, reading)
    return {
      fileName: input.fileName,
      seenVersion: version,
      rowCount: reading.rowCount,
      goodRowCount: reading.rows.length,
      badRowCount: reading.rowCount - reading.rows.length,
      bad: reading.bad.map(({ line, column, text, reason }) => ({ line, column, text, reason })),
      unknownColumns: reading.unknownColumns,
      ...listTableChanges(tableOf(input.kind), before, rows),
    }
  })
}

/** The sheet's rows as a file for a spreadsheet program; without rows, its headings. Text is never a formula there. */
export async function exportSheetFile(actor: Actor, input: ExportSheetFileInput): Promise<FileDownload> {
  const { name, version, rows } = await read(actor, async ({ tx, rights }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, SHEET_VIEW_ACTIONS[input.kind])
    const stored = await loadSheet(tx, company.id, input.kind)
    return {
      name: company.name,
      version: stored?.version ?? 0,
      rows: (stored?.content.rows ?? []) as readonly SheetRow[],
    }
  })
  const cells = writeTable(tableOf(input.kind), rows, input.unit)
  const stem = `${name}-${SHEET_NAMES[input.kind]}-version-${version}`.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')
  if (input.format === 'csv') {
    const bytes = new TextEncoder().encode(writeCsv(cells))
    return { fileName: `${stem}.csv`, mediaType: 'text/csv; charset=utf-8', bytes }
  }
  return {
    fileName: `${stem}.xlsx`,
    mediaType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    bytes: await writeXlsx('Sheet', cells),
  }
}

/** @throws RefusalError for a file that is no table of this kind */
export function readFile({ kind, fileName, bytes }: PreviewSheetFileInput): GoodReading {
  const isWorkbook = bytes[0] === 0x50 && bytes[1] === 0x4b
  const file = isWorkbook ? readXlsx(bytes, (rows) => findHeadingRow(tableOf(kind), rows) !== -1) : readCsv(bytes)
  if (!file.ok) refuseField('bytes', 'unreadable', `${fileName}: ${file.reason}`)
  const reading = readTableFile(tableOf(kind), file.grid)
  if (!reading.ok) refuseField('bytes', 'headings', `${fileName}: ${reading.reason}`)
  return reading
}

/** What the sheet would hold: the file's rows alone, or the kept ones with the file's in place of those about the same. */
export function mergeRows(
  { kind, mode }: PreviewSheetFileInput,
  before: readonly SheetRow[],
  reading: GoodReading,
): readonly SheetRow[] {
  const fromFile = reading.rows.map(({ row }) => row)
  if (mode === 'replace') return fromFile
  const { keyOf } = tableOf(kind)
  const byKey = new Map(fromFile.map((row) => [keyOf(row), row]))
  const kept = before.map((row) => {
    const key = keyOf(row)
    const replacement = byKey.get(key)
    byKey.delete(key)
    return replacement ?? row
  })
  return [...kept, ...byKey.values()]
}
