import { type Design, evaluate } from '@/lib/engine'
import {
  assessCapability,
  MATRIX_TABLE,
  type MatrixRow,
  measureDesign,
  readTableFile,
  TRADE_PARAMETERS,
  writeTable,
} from '@/lib/fabrication'
import { readCsv, readXlsx, writeCsv, writeXlsx } from '@/lib/spreadsheet'

/** A matrix as large as any that is read: each parameter with a number, under many layer counts. */
export function makeLargeMatrix(rowCount: number): MatrixRow[] {
  const numbered = TRADE_PARAMETERS.filter(({ direction }) => direction !== 'one-of')
  return Array.from({ length: rowCount }, (_, index) => {
    const layers = 1 + Math.floor(index / numbered.length)
    return {
      parameter: numbered[index % numbered.length]?.key ?? '',
      comfortable: 1,
      stretch: 1,
      layersFrom: layers,
      layersTo: layers,
      foilFromUm: null,
      foilToUm: null,
      construction: null,
      note: '',
    }
  })
}

/** What is measured of sheets: setting a design against a matrix, and reading a file of one. */
export async function prepareSheets(design: Design, rowCount: number) {
  const rows = makeLargeMatrix(rowCount)
  const measured = measureDesign(design, evaluate(design))
  const cells = writeTable(MATRIX_TABLE, rows)
  const csv = new TextEncoder().encode(writeCsv(cells))
  const xlsx = await writeXlsx('Matrix', cells)
  const read = (file: ReturnType<typeof readCsv>) => {
    if (!file.ok) throw new Error(file.reason)
    const found = readTableFile(MATRIX_TABLE, file.grid)
    if (!found.ok || found.rows.length !== rowCount) throw new Error('the file was not read whole')
  }
  return {
    assess: () => assessCapability(measured, rows),
    readCsv: () => read(readCsv(csv)),
    readXlsx: () => read(readXlsx(xlsx)),
  }
}
