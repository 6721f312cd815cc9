import type {
  Content,
  ContentStack,
  ContentTable,
  CustomTableLayout,
  StyleDictionary,
  Table,
  TableCell,
} from 'pdfmake/interfaces'
import { describePicture, type Picture, toSvg } from '@/lib/drawing'

export const INK = '#1a1d20'
export const SOFT = '#565b60'
export const HAIRLINE = '#b4b8b2'

/** A4 upright; the width between the margins, in points. */
export const PAGE_MARGINS: [number, number, number, number] = [46, 56, 46, 52]
export const TEXT_WIDTH_PT = 595.28 - 92
/** Pictures are drawn this much larger and reduced, so that their type matches the report's. */
export const PICTURE_SCALE = 1.4

export const STYLES: StyleDictionary = {
  title: { fontSize: 19, bold: true, margin: [0, 0, 0, 2] },
  section: { fontSize: 13, bold: true, margin: [0, 14, 0, 4] },
  subsection: { fontSize: 10.5, bold: true, margin: [0, 9, 0, 3] },
  label: { fontSize: 8.5, color: SOFT },
  soft: { color: SOFT },
  small: { fontSize: 8.5, color: SOFT },
  head: { fontSize: 8.5, bold: true, color: SOFT },
  mono: { fontSize: 8.5 },
  caution: { italics: true, color: INK },
}

/** Hairlines between rows, a firmer one below the head, none at the sides. */
const RULED: CustomTableLayout = {
  hLineWidth: (index, node) => {
    const heads = node.table.headerRows ?? 0
    return index < heads || index === 0 ? 0 : index === heads ? 0.8 : 0.35
  },
  vLineWidth: () => 0,
  hLineColor: (index, node) => (index === (node.table.headerRows ?? 0) ? INK : HAIRLINE),
  paddingLeft: (index) => (index === 0 ? 0 : 4),
  paddingRight: (index, node) => (index === (node.table.widths?.length ?? 0) - 1 ? 0 : 4),
  paddingTop: () => 2.2,
  paddingBottom: () => 2.2,
}

/** For a page that has to hold much. */
export const CLOSE_RULED: CustomTableLayout = { ...RULED, paddingTop: () => 1.3, paddingBottom: () => 1.3 }

export interface Column {
  readonly label: string
  readonly width: number | 'auto' | '*'
  readonly isNumeric?: boolean
}

/** Characters that are kept on one page. A block that is higher than a page would run off its foot unseen. */
const LONGEST_UNBROKEN = 900

/** Characters of all texts inside some content. */
export function measureText(content: unknown): number {
  if (typeof content === 'string') return content.length
  if (Array.isArray(content)) return content.reduce((sum: number, part) => sum + measureText(part), 0)
  if (typeof content !== 'object' || content === null) return 0
  const { text, stack, columns, table, ul } = content as Record<string, unknown>
  return [text, stack, columns, ul, (table as { body?: unknown } | undefined)?.body].reduce(
    (sum: number, part) => sum + measureText(part),
    0,
  )
}

/** Rows stay whole, and the first with the head, unless one is too long: its head would then be lost. */
function keepRows(
  lengths: readonly number[],
  hasHead: boolean,
): Partial<Pick<Table, 'dontBreakRows' | 'keepWithHeaderRows'>> {
  const fits = lengths.every((length) => length <= LONGEST_UNBROKEN)
  return fits && hasHead ? { dontBreakRows: true, keepWithHeaderRows: 1 } : { dontBreakRows: fits }
}

/** A stack that stays on one page, unless it is too long for that. */
export function keepTogether(stack: Content[], options: { readonly pictureHeightPt?: number } = {}): ContentStack {
  const fits = measureText(stack) <= 2 * LONGEST_UNBROKEN && (options.pictureHeightPt ?? 0) <= TALLEST_PICTURE_PT
  return { stack, unbreakable: fits }
}

/** A picture in the report's flow, with what it shows for who does not see it. */
export function showPicture(picture: Picture, widthPt: number): Content {
  const shown = { svg: toSvg(picture), width: widthPt, alt: describePicture(picture) }
  return shown
}

/** A picture that leaves room for a block of facts above it. */
const TALLEST_PICTURE_PT = 430

export interface Heading {
  readonly text: string
  readonly level: 1 | 2
}

/**
 * A heading set as the first head row of its table: it is never left alone at the foot of a page, and says on the next
 * page what goes on there.
 */
function makeHeadingRow(heading: Heading, columnCount: number): TableCell[] {
  const cell: TableCell = {
    text: heading.text,
    style: heading.level === 1 ? 'section' : 'subsection',
    colSpan: columnCount,
    margin: [0, heading.level === 1 ? 12 : 6, 0, 1],
  }
  return [cell, ...Array.from({ length: columnCount - 1 }, (): TableCell => ({}))]
}

/** A table that repeats its head on each page and keeps each row whole. Numbers are set flush right. */
export function makeTable(
  columns: readonly Column[],
  rows: readonly (readonly Content[])[],
  heading?: Heading,
): ContentTable {
  const head: TableCell[] = columns.map(({ label, isNumeric }) => ({
    text: label,
    style: 'head',
    alignment: isNumeric === true ? 'right' : 'left',
  }))
  const body = rows.map((row) =>
    row.map((cell, index): TableCell => {
      if (columns[index]?.isNumeric !== true) return cell as TableCell
      return typeof cell === 'string' ? { text: cell, alignment: 'right' } : (cell as TableCell)
    }),
  )
  const heads = heading === undefined ? [head] : [makeHeadingRow(heading, columns.length), head]
  return {
    table: {
      headerRows: heads.length,
      widths: columns.map(({ width }) => width),
      body: [...heads, ...body],
      ...keepRows(body.map(measureText), true),
    },
    layout: RULED,
    margin: [0, 2, 0, 4],
  }
}

/** Two columns of label and value, for a block of facts. */
export function makeFacts(
  facts: readonly (readonly [label: string, value: Content])[],
  heading?: Heading,
): ContentTable {
  const heads = heading === undefined ? [] : [makeHeadingRow(heading, 2)]
  return {
    table: {
      headerRows: heads.length,
      widths: [150, '*'],
      body: [
        ...heads,
        ...facts.map(([label, value]): TableCell[] => [{ text: label, style: 'soft' }, value as TableCell]),
      ],
      ...keepRows(facts.map(measureText), heads.length > 0),
    },
    layout: RULED,
    margin: [0, 2, 0, 4],
  }
}

/** A heading over text that says that there is nothing to show. */
export function makeEmptyPart(heading: Heading, text: string): Content {
  return {
    stack: [{ text: heading.text, style: heading.level === 1 ? 'section' : 'subsection' }, empty(text)],
    unbreakable: true,
  }
}

/** The same as a table, where tables are counted. */
export function makeEmptyTable(heading: Heading, text: string): ContentTable {
  return {
    table: { headerRows: 1, widths: ['*'], body: [makeHeadingRow(heading, 1), [{ text, style: 'soft' }]] },
    layout: RULED,
    margin: [0, 2, 0, 4],
  }
}

export const level1 = (text: string): Heading => ({ text, level: 1 })
export const level2 = (text: string): Heading => ({ text, level: 2 })
export const empty = (text: string): Content => ({ text, style: 'soft', margin: [0, 0, 0, 4] })
/** A hash or an address: may break anywhere. */
export const mono = (text: string): Content => ({ text, style: 'mono', wordBreak: 'break-all' })
