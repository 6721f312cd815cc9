import { roundToDigits } from '@/lib/engine/numerics'
import { writeWorkbook } from '@/lib/spreadsheet'
import type { QuotationRequest } from './schema'
import { listQuotationFacts, listQuotationTables } from './tables'

/** More than any figure here is known to, and none of the last bits of arithmetic. */
const XLSX_DIGITS = 6

/** A workbook: what it is on the first sheet, then a sheet for each table; numbers stay numbers. */
export function writeQuotationXlsx(request: QuotationRequest): Promise<Uint8Array<ArrayBuffer>> {
  const tables = listQuotationTables(request)
  return writeWorkbook([
    {
      name: 'Request',
      rows: [
        ['Request for quotation', request.statement],
        ...listQuotationFacts(request),
        ...request.cautions.map((caution) => ['Caution', caution] as const),
      ],
    },
    ...tables.map(({ title, columns, rows, note }) => ({
      name: title.replace(/,.*$/, ''),
      rows: [
        columns.map(({ label }) => label),
        ...rows.map((row) => row.map((cell) => (typeof cell === 'number' ? roundToDigits(cell, XLSX_DIGITS) : cell))),
        ...(note === '' ? [] : [[note]]),
      ],
    })),
  ])
}

export function writeQuotationJson(request: QuotationRequest): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`${JSON.stringify(request, null, 2)}\n`)
}
