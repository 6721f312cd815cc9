import { strToU8, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { readXlsx } from '@/lib/spreadsheet'

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'

/** A workbook of these sheets (ECMA-376, part 1), a cell of text each. */
function makeWorkbook(texts: readonly string[]): Uint8Array {
  const sheets = texts
    .map((_, at) => `<sheet name="Sheet ${at + 1}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`)
    .join('')
  const relations = texts
    .map(
      (_, at) =>
        `<Relationship Id="rId${at + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`,
    )
    .join('')
  const parts = texts.map((text, at) => [
    `xl/worksheets/sheet${at + 1}.xml`,
    strToU8(
      `<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>${text}</t></is></c></row></sheetData></worksheet>`,
    ),
  ])
  return zipSync({
    'xl/workbook.xml': strToU8(
      `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${sheets}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relations}</Relationships>`,
    ),
    ...Object.fromEntries(parts),
  })
}

it('reads the first worksheet that is wanted, and the first one where none is', () => {
  const workbook = makeWorkbook(['Cover', 'Material', 'Material again'])
  const read = (wanted?: string) => {
    const reading = readXlsx(workbook, wanted === undefined ? undefined : (rows) => rows[0]?.[0] === wanted)
    return reading.ok ? reading.grid.rows : reading.reason
  }
  expect(read()).toEqual([['Cover']])
  expect(read('Material')).toEqual([['Material']])
  expect(read('Shelf')).toEqual([['Cover']])
})
