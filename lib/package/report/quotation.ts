import type { Content, ContentColumns, CustomTableLayout, TDocumentDefinitions } from 'pdfmake/interfaces'
import type { Picture } from '@/lib/drawing'
import {
  listQuotationFacts,
  listQuotationTables,
  type QuotationRequest,
  type QuotationTable,
  writeQuotationCell,
} from '../quotation'
import { breakLongWords } from './long-words'
import { PDF_FONT } from './pdf-writer'
import {
  CLOSE_RULED,
  type Column,
  HAIRLINE,
  INK,
  level2,
  makeEmptyPart,
  makeTable,
  SOFT,
  STYLES,
  showPicture,
} from './style'

/** Narrower than a report's: everything is to be read on one page. */
const PAGE_MARGINS: [number, number, number, number] = [32, 22, 32, 28]
const TEXT_WIDTH_PT = 595.28 - 64
const FONT_PT = 6.5
const SMALL_PT = 6.2

/** Rows as close as they can be told apart. */
const TIGHT: CustomTableLayout = { ...CLOSE_RULED, paddingTop: () => 0.6, paddingBottom: () => 0.6 }

/** The part in the flat is for recognising it; its sizes stand in words. */
const OUTLINE_SHARE = 0.24

/** Points of columns that hold words; figures take what they need, and the longest words what is left. */
const WIDTHS_PT: Readonly<Record<string, number | '*'>> = {
  position: 12,
  designation: 34,
  name: 92,
  kind: 54,
  material: '*',
  thickness: 40,
  tolerance: 32,
  plating: 56,
  zones: 40,
  zone: '*',
  basis: 60,
  description: '*',
  layers: 160,
  area: 46,
  year: 46,
  format: '*',
  point: '*',
  pointKind: 150,
  state: 36,
  due: 40,
}

/** A request for quotation as a document definition, set closely: it is to be read at one glance, and goes on where there is more. */
export function makeQuotationDocument(request: QuotationRequest, outline: Picture | null): TDocumentDefinitions {
  const subject = `${request.project}, revision ${request.revision}`
  return {
    pageSize: 'A4',
    pageMargins: PAGE_MARGINS,
    defaultStyle: { font: PDF_FONT, fontSize: FONT_PT, color: INK, lineHeight: 1 },
    styles: {
      ...STYLES,
      title: { ...STYLES.title, fontSize: 13 },
      subsection: { ...STYLES.subsection, fontSize: 8.5, margin: [0, 0, 0, 0] },
      head: { ...STYLES.head, fontSize: SMALL_PT },
      soft: { ...STYLES.soft, fontSize: FONT_PT },
    },
    content: breakLongWords([
      { text: `Request for quotation: ${subject}`, style: 'title' },
      { text: request.statement, bold: true, margin: [0, 0, 0, 2] },
      makeHead(request, outline),
      ...listTablesWithNumberedZones(request).flatMap(makePart),
      { text: request.cautions.join(' '), style: 'caution', margin: [0, 4, 0, 0], fontSize: SMALL_PT },
    ]),
    footer: (page, pages) => ({
      stack: [
        {
          canvas: [{ type: 'line', x1: 0, y1: 0, x2: TEXT_WIDTH_PT, y2: 0, lineWidth: 0.35, lineColor: HAIRLINE }],
        },
        {
          columns: [
            { text: `${subject}. For quotation only, no release.`, color: SOFT },
            { text: `Page ${page} of ${pages}`, color: SOFT, alignment: 'right' },
          ],
          margin: [0, 3, 0, 0],
        },
      ],
      margin: [PAGE_MARGINS[0], 8, PAGE_MARGINS[2], 0],
    }),
  }
}

/** Facts in two columns, with the part beside them. */
function makeHead(request: QuotationRequest, outline: Picture | null): Content {
  const facts = listQuotationFacts(request)
  const half = Math.ceil(facts.length / 2)
  const listed = (part: typeof facts): Content => ({
    table: {
      widths: ['auto', '*'],
      body: part.map(([label, text]) => [{ text: label, style: 'soft', noWrap: true }, text]),
    },
    layout: TIGHT,
  })
  const width = '*'
  const columns: ContentColumns['columns'] = [
    { stack: [listed(facts.slice(0, half))], width },
    { stack: [listed(facts.slice(half))], width },
  ]
  if (outline !== null) {
    const shown = TEXT_WIDTH_PT * OUTLINE_SHARE
    columns.push({ stack: [showPicture(outline, shown)], width: shown })
  }
  return { columns, columnGap: 10 }
}

/** The tables as page and workbook have them; zones are numbered by their own table, and called by number in the others. */
function listTablesWithNumberedZones(request: QuotationRequest): QuotationTable[] {
  const names = request.zones.map(({ name }) => name)
  const numbersOf = (zones: readonly string[]) =>
    names.flatMap((name, at) => (zones.includes(name) ? [String(at + 1)] : [])).join(', ')
  const withText = (table: QuotationTable, key: string, textAt: (row: number) => string): QuotationTable => {
    const at = table.columns.findIndex((column) => column.key === key)
    return {
      ...table,
      rows: table.rows.map((row, index) => row.map((cell, column) => (column === at ? textAt(index) : cell))),
    }
  }
  const [layers, zones, materials, panel, points] = listQuotationTables(request)
  return [
    withSpecificationsBelow(
      withText(layers, 'zones', (row) => numbersOf(request.layers[row]?.zones ?? [])),
      request,
    ),
    withText(zones, 'zone', (row) => `${row + 1}  ${names[row] ?? ''}`),
    withText(materials, 'zones', (row) => {
      const found = request.materials[row]
      return [numbersOf(found?.zones ?? []), found?.because ?? ''].filter((text) => text !== '').join('. ')
    }),
    panel,
    points,
  ]
}

/** Each material's specification once, below the layers: beside each layer it would take a line of its own. */
function withSpecificationsBelow(table: QuotationTable, { layers }: QuotationRequest): QuotationTable {
  const called = [
    ...new Set(
      layers.flatMap(({ material, specification }) => (specification === '' ? [] : `${material}: ${specification}`)),
    ),
  ]
  const at = table.columns.findIndex(({ key }) => key === 'specification')
  return {
    ...table,
    rows: table.rows.map((row) => row.map((cell, column) => (column === at ? '' : cell))),
    note: [table.note, called.length === 0 ? '' : `Specifications. ${called.join('. ')}.`]
      .filter((text) => text !== '')
      .join(' '),
  }
}

function makePart({ title, columns, rows, note }: QuotationTable): Content[] {
  if (rows.length === 0) return [makeEmptyPart(level2(title), note)]
  const own = columns.flatMap((column, at) => (column.under === undefined ? [{ column, at }] : []))
  const table = makeTable(
    own.map(
      ({ column: { key, label, figure } }): Column => ({
        label,
        width: WIDTHS_PT[key] ?? 'auto',
        isNumeric: figure !== undefined,
      }),
    ),
    rows.map((row) => {
      const textAt = (at: number) => {
        const column = columns[at]
        return column === undefined ? '' : writeQuotationCell(column, row[at] ?? null)
      }
      return own.map(({ column, at }): Content => {
        const below = columns.flatMap(({ under }, index) => (under === column.key ? [textAt(index)] : []))
        const small = below
          .filter((text) => text !== '')
          .map((text) => ({ text: `  ${text}`, fontSize: SMALL_PT, color: SOFT }))
        return small.length === 0 ? textAt(at) : { text: [textAt(at), ...small] }
      })
    }),
    level2(title),
  )
  return [
    { ...table, layout: TIGHT, margin: [0, 0, 0, 0] },
    ...(note === '' ? [] : [{ text: note, style: 'soft', margin: [0, 0, 0, 1] } satisfies Content]),
  ]
}
