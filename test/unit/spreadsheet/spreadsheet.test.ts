import { strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { GRID_LIMITS, nameColumn, readCsv, readXlsx, writeCsv, writeXlsx } from '@/lib/spreadsheet'

const csv = (text: string) => readCsv(new TextEncoder().encode(text))

/** A workbook as programs write it, with this as the rows of its one sheet. ECMA-376, part 1, 18.3. */
function makeWorkbook(sheetData: string, others: Record<string, string> = {}): Uint8Array {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
  const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
  const parts: Record<string, string> = {
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="A" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="x" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}"><sheetData>${sheetData}</sheetData></worksheet>`,
    ...others,
  }
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])))
}

const DANGEROUS = ['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', "=cmd|'/c calc'!A1", "'=1", '＝1']

describe('formulas are never live', () => {
  // OWASP, "CSV Injection": cells that begin with = + - @ tab or carriage return.
  it('a CSV file neutralises what begins like one, and numbers stay numbers', () => {
    const text = writeCsv([DANGEROUS, [-5, 1e-7, 'plain', "it's", null]])
    const cells = text.slice(1).split(/\r\n/)[0]
    expect(cells).not.toMatch(/(^|,)"?[=+\-@\t\r＝]/)
    expect(text).toContain("\r\n-5,1e-7,plain,it's,\r\n")
    const back = csv(text)
    expect(back.ok && back.grid.rows[0]).toEqual(DANGEROUS)
  })

  it('a workbook holds text and numbers, and no formula', async () => {
    const bytes = await writeXlsx('Sheet', [['Heading'], ...DANGEROUS.map((text) => [text, 2.5])])
    const parts = unzipSync(bytes)
    const xml = Object.entries(parts)
      .filter(([name]) => /sheet|strings/i.test(name))
      .map(([, part]) => new TextDecoder().decode(part))
      .join()
    expect(xml).not.toMatch(/<f[ >]/)
    expect(xml).not.toMatch(/<t[^>]*>[=+@]/)
    const back = readXlsx(bytes)
    expect(back.ok && back.grid.rows.slice(1).map((row) => row[1])).toEqual(DANGEROUS.map(() => '2.5'))
  })

  it('a formula in a workbook is refused by its place, whatever result it remembers', () => {
    const bytes = makeWorkbook(
      '<row r="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c></row>' +
        '<row r="3"><c r="C3"><f>SUM(A1:A2)</f><v>7</v></c><c r="D3"><v>8</v></c></row>' +
        '<row r="4"><c r="A4" t="shared"><f t="shared" si="0"/><v>1</v></c><c r="B4" t="e"><v>#REF!</v></c></row>',
    )
    expect(readXlsx(bytes)).toMatchObject({
      ok: true,
      grid: {
        rows: [['x'], [], ['', '', '', '8']],
        refused: [
          { row: 3, column: 3, reason: expect.stringContaining('formula') },
          { row: 4, column: 1, reason: expect.stringContaining('formula') },
          { row: 4, column: 2, reason: expect.stringContaining('#REF!') },
        ],
      },
    })
  })

  it('text in a CSV file is text', () => {
    expect(csv('=1+1,"=HYPERLINK(""x"")"')).toMatchObject({ grid: { rows: [['=1+1', '=HYPERLINK("x")']] } })
  })
})

describe('files as programs write them', () => {
  it('CSV with semicolons or tabs, with a mark, with quotes and line breaks (RFC 4180)', () => {
    expect(csv('\uFEFFa;b\r\n"c;d";"e\r\nf"\r\n')).toMatchObject({
      grid: {
        rows: [
          ['a', 'b'],
          ['c;d', 'e\r\nf'],
        ],
      },
    })
    expect(csv('a\tb\n1\t2')).toMatchObject({
      grid: {
        rows: [
          ['a', 'b'],
          ['1', '2'],
        ],
      },
    })
  })

  it('a workbook’s shared strings, runs, booleans, and numbers as they were typed', () => {
    const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
    const strings = `<sst xmlns="${main}"><si><t>one &amp; only</t></si><si><r><t>two</t></r><r><t xml:space="preserve"> runs</t></r><rPh sb="0" eb="1"><t>aid</t></rPh></si></sst>`
    const bytes = makeWorkbook(
      '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="b"><v>1</v></c><c r="D1"><v>0.10000000000000001</v></c></row>',
      { 'xl/sharedStrings.xml': strings },
    )
    expect(readXlsx(bytes)).toMatchObject({ ok: true, grid: { rows: [['one & only', 'two runs', 'yes', '0.1']] } })
  })

  it('what was written is read again', async () => {
    const rows = [
      ['Name', 'Value'],
      ['Überhang µm', 0.075],
      ['', 3],
    ]
    const back = readXlsx(await writeXlsx('Blatt', rows))
    expect(back.ok && back.grid.rows).toEqual([
      ['Name', 'Value'],
      ['Überhang µm', '0.075'],
      ['', '3'],
    ])
  })
})

describe('files that cannot be', () => {
  it.each([
    ['no archive', new TextEncoder().encode('hello'), 'not an XLSX workbook'],
    ['an archive of something else', zipSync({ 'a.txt': strToU8('a') }), 'no worksheet'],
    ['a part that is no XML', makeWorkbook('<row><c'), 'not an XLSX workbook'],
    [
      'a document type, in which entities expand',
      makeWorkbook('', { 'xl/worksheets/sheet1.xml': '<!DOCTYPE x [<!ENTITY a "b">]><worksheet/>' }),
      'document type',
    ],
    ['a cell far away', makeWorkbook('<row r="1048576"><c r="A1048576"><v>1</v></c></row>'), 'At most'],
  ])('%s', (_name, bytes, says) => {
    const found = readXlsx(bytes)
    expect(found.ok ? '' : found.reason).toContain(says)
  })

  it('an archive that unpacks to far more than any sheet', () => {
    const bytes = zipSync({
      'xl/workbook.xml': strToU8('x'),
      'xl/worksheets/sheet1.xml': new Uint8Array(GRID_LIMITS.unpackedBytes + 1),
    })
    expect(bytes.byteLength).toBeLessThan(200_000)
    expect(readXlsx(bytes)).toMatchObject({ ok: false, reason: expect.stringContaining('larger') })
  })

  it('text that is not UTF-8, holds a zero byte, or ends within quotes', () => {
    expect(readCsv(new Uint8Array([0x61, 0xff, 0x62]))).toMatchObject({
      ok: false,
      reason: expect.stringContaining('UTF-8'),
    })
    expect(csv('a\0b')).toMatchObject({ ok: false })
    expect(csv('a,"b\nc')).toMatchObject({ ok: false, reason: expect.stringContaining('quotation') })
  })

  it('more rows, columns or characters than are read', () => {
    expect(csv('x\n'.repeat(GRID_LIMITS.rows + 1))).toMatchObject({
      ok: false,
      reason: expect.stringContaining('rows'),
    })
    expect(csv(`${','.repeat(GRID_LIMITS.columns)}x`)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('columns'),
    })
    expect(csv(`a,${'x'.repeat(GRID_LIMITS.cellCharacters + 1)}`)).toMatchObject({
      grid: { rows: [['a', '']], refused: [{ row: 1, column: 2 }] },
    })
  })
})

it('columns are named as spreadsheet programs name them', () => {
  expect([1, 26, 27, 52, 53, 702, 703].map(nameColumn)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'])
})
