import { basename } from 'node:path'
import type { LimitOwner } from '@/lib/engine'
import { type FlexTestRow, MAX_FLEX_TEST_ROWS } from '@/lib/engine/flex-tests'
import { FLEX_TEST_TABLE, readTableFile } from '@/lib/fabrication'
import { readCsv, readXlsx } from '@/lib/spreadsheet'
import { readInputFile, UnusableInput } from './input-file'

/** Own flex tests that a file gave. */
export interface FlexTestFile {
  readonly rows: readonly FlexTestRow[]
  /** Named by the file: the file does not say whose tests they are, so the command treats them as a workspace's. */
  readonly owner: LimitOwner
  /** Headings that are no column of flex tests, whose cells are left out. */
  readonly unknownColumns: readonly string[]
}

/** A full sheet with long notes takes less than half of it. Our choice. */
const MAX_BYTES = 4 * 1024 * 1024

/**
 * Own flex tests out of a CSV or XLSX file, in the form in which the application exports and imports its sheets.
 *
 * @throws UnusableInput naming the file and each bad cell by row, column and reason: with one bad row none is used
 */
export function readFlexTestFile(file: string): FlexTestFile {
  const bytes = readInputFile(file, {
    kind: 'a CSV or XLSX file of flex tests',
    maxBytes: MAX_BYTES,
    atMost: `a file of flex tests has at most ${MAX_BYTES}`,
  })
  const isWorkbook = bytes[0] === 0x50 && bytes[1] === 0x4b
  const opened = isWorkbook ? readXlsx(bytes) : readCsv(bytes)
  if (!opened.ok) throw new UnusableInput(`${file}: ${opened.reason}`)
  const reading = readTableFile(FLEX_TEST_TABLE, opened.grid)
  if (!reading.ok) throw new UnusableInput(`${file}: ${reading.reason}`)
  const problems = reading.bad.map(
    ({ line, column, text, reason }) => `  row ${line}, ${column}: ${text === '' ? '' : `"${text}" `}${reason}`,
  )
  if (reading.rowCount === 0) problems.push('  holds no specimen')
  if (reading.rowCount > MAX_FLEX_TEST_ROWS) {
    problems.push(`  holds ${reading.rowCount} specimens; at most ${MAX_FLEX_TEST_ROWS} can be used`)
  }
  if (problems.length > 0) {
    const count = `${problems.length} ${problems.length === 1 ? 'problem' : 'problems'}`
    throw new UnusableInput([`${file}: flex tests that cannot be used (${count})`, ...problems].join('\n'))
  }
  return {
    rows: reading.rows.map(({ row }) => row),
    owner: { kind: 'workspace', name: basename(file) },
    unknownColumns: reading.unknownColumns,
  }
}
