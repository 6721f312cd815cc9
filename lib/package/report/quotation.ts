import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces'
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
  empty,
  HAIRLINE,
  INK,
  level2,
  makeEmptyPart,
  makeTable,
  PAGE_MARGINS,
  SOFT,
  STYLES,
  showPicture,
  TEXT_WIDTH_PT,
} from './style'

/** The part in the flat is for recognising it; its sizes stand in words. */
const OUTLINE_SHARE = 0.4

/** Points of columns that hold words; figures take what they need, and the longest words what is left. */
const WIDTHS_PT: Readonly<Record<string, number | '*'>> = {
  position: 14,
  designation: 46,
  name: 66,
  kind: 52,
  material: '*',
  tolerance: 36,
  plating: 50,
  zones: 70,
  zone: '*',
  basis: 56,
  description: '*',
  layers: 92,
  format: '*',
  point: '*',
  state: 44,
  due: 50,
}

/** A request for quotation as a document definition, set closely: it is to be read at one glance. */
export function makeQuotationDocument(request: QuotationRequest, outline: Picture | null): TDocumentDefinitions {
  const subject = `${request.project}, revision ${request.revision}`
  return {
    pageSize: 'A4',
    pageMargins: PAGE_MARGINS,
    defaultStyle: { font: PDF_FONT, fontSize: 8, color: INK, lineHeight: 1.05 },
    styles: { ...STYLES, head: { ...STYLES.head, fontSize: 7.5 }, soft: { ...STYLES.soft, fontSize: 8 } },
    content: breakLongWords([
      { text: 'Request for quotation', style: 'title' },
      { text: subject, fontSize: 11, margin: [0, 0, 0, 4] },
      { text: request.statement, bold: true, margin: [0, 0, 0, 4] },
      makeHead(request, outline),
      ...listQuotationTables(request).flatMap(makePart),
      { stack: request.cautions.map((text) => ({ text, style: 'caution' })), margin: [0, 6, 0, 0] },
    ]),
    footer: (page, pages) => ({
      stack: [
        {
          canvas: [{ type: 'line', x1: 0, y1: 0, x2: TEXT_WIDTH_PT, y2: 0, lineWidth: 0.35, lineColor: HAIRLINE }],
        },
        {
          columns: [
            { text: `${subject}. For quotation only, no release.`, fontSize: 8, color: SOFT },
            { text: `Page ${page} of ${pages}`, fontSize: 8, color: SOFT, alignment: 'right' },
          ],
          margin: [0, 4, 0, 0],
        },
      ],
      margin: [PAGE_MARGINS[0], 14, PAGE_MARGINS[2], 0],
    }),
  }
}

/** Facts, with the part beside them. */
function makeHead(request: QuotationRequest, outline: Picture | null): Content {
  const facts: Content = {
    table: {
      widths: [82, '*'],
      body: listQuotationFacts(request).map(([label, text]) => [{ text: label, style: 'soft' }, text]),
    },
    layout: CLOSE_RULED,
  }
  if (outline === null) return facts
  return {
    columns: [
      { stack: [facts], width: '*' },
      { stack: [showPicture(outline, TEXT_WIDTH_PT * OUTLINE_SHARE)], width: TEXT_WIDTH_PT * OUTLINE_SHARE },
    ],
    columnGap: 12,
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
        const small = below.filter((text) => text !== '').map((text) => ({ text, fontSize: 7, color: SOFT }))
        return small.length === 0 ? textAt(at) : { stack: [textAt(at), ...small] }
      })
    }),
    level2(title),
  )
  return [{ ...table, layout: CLOSE_RULED }, ...(note === '' ? [] : [empty(note)])]
}
