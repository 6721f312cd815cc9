import type { Palette } from '../palette'
import type { DrawingNode } from '../picture'
import { wrapText } from '../text-metrics'
import type { SheetColumn, SheetNotes, SheetTable } from './contents'
import { FONT_MM, getLinesHeightMm, makeLine, makeLines } from './marks'

/** A piece of a block that is never broken: drawn with its upper left corner at a place. */
export interface Strip {
  readonly heightMm: number
  draw(x: number, y: number): DrawingNode[]
}

/** A block laid out at one width: a head, which each part of it repeats, and strips below one another. */
export interface LaidBlock {
  readonly id: string
  readonly title: string
  readonly widthMm: number
  readonly head: Strip
  readonly headContinued: Strip
  readonly strips: readonly Strip[]
  /** Fewer strips than these are not left alone at the foot of a sheet. */
  readonly leastStrips: number
}

const PADDING_MM = 1.2
const RULE_GAP_MM = 1.2
const TITLE_GAP_MM = 1
const FIRM_MM = 0.35
const FINE_MM = 0.13
/** A row of more lines is broken between them: it could be higher than a sheet. */
const LINES_PER_STRIP = 24
/** Lists up to here are kept in one piece where a sheet has room for them. */
const KEPT_WHOLE = 10

export function makeTitle(title: string, widthMm: number, palette: Palette): Strip {
  const lines = wrapText(title, widthMm, FONT_MM.title, true)
  return {
    heightMm: getLinesHeightMm(lines.length, FONT_MM.title) + TITLE_GAP_MM,
    draw: (x, y) => makeLines(lines, x, y, { fontMm: FONT_MM.title, isBold: true }, palette),
  }
}

/** Strips below one another as one. */
export function joinStrips(strips: readonly Strip[]): Strip {
  return {
    heightMm: strips.reduce((sum, { heightMm }) => sum + heightMm, 0),
    draw: (x, y) => {
      let top = y
      return strips.flatMap((strip) => {
        const nodes = strip.draw(x, top)
        top += strip.heightMm
        return nodes
      })
    },
  }
}

export function getLeastWidth(columns: readonly SheetColumn[]): number {
  return columns.reduce((sum, { leastMm }) => sum + leastMm, 0)
}

/** What a table would like to have: room for the columns that hold texts to stay on few lines. */
const GROWTH_WISH_MM = 12
export function getWantedWidth(columns: readonly SheetColumn[]): number {
  return columns.reduce((sum, { leastMm, growth }) => sum + leastMm + growth * GROWTH_WISH_MM, 0)
}

/** Tables of as many columns as fit beside each other; each repeats the leading ones. */
export function splitColumns(table: SheetTable, widthMm: number): SheetTable[] {
  if (getLeastWidth(table.columns) <= widthMm) return [table]
  const keyCount = table.keyColumnCount
  const keyWidth = getLeastWidth(table.columns.slice(0, keyCount))
  const groups: number[][] = []
  let used = Number.POSITIVE_INFINITY
  table.columns.forEach(({ leastMm }, index) => {
    if (index < keyCount) return
    if (used + leastMm > widthMm) {
      groups.push([])
      used = keyWidth
    }
    groups.at(-1)?.push(index)
    used += leastMm
  })
  const keys = Array.from({ length: keyCount }, (_, index) => index)
  return groups.map((group, part) => {
    const taken = [...keys, ...group]
    return {
      ...table,
      id: part === 0 ? table.id : `${table.id}-part-${part + 1}`,
      title: `${table.title} (part ${part + 1} of ${groups.length})`,
      columns: taken.flatMap((index) => table.columns[index] ?? []),
      rows: table.rows.map((row) => ({ id: row.id, cells: taken.map((index) => row.cells[index] ?? '') })),
    }
  })
}

export function layTable(table: SheetTable, availableMm: number, palette: Palette): LaidBlock {
  const least = getLeastWidth(table.columns)
  const growth = table.columns.reduce((sum, column) => sum + column.growth, 0)
  const spare = growth === 0 ? 0 : Math.max(0, availableMm - least)
  const widths = table.columns.map((column) => column.leastMm + (growth === 0 ? 0 : (spare * column.growth) / growth))
  const widthMm = widths.reduce((sum, width) => sum + width, 0)
  const row = (cells: readonly string[], isHead: boolean) => layRow(table.columns, widths, cells, isHead, palette)
  const heads = joinStrips(
    row(
      table.columns.map(({ label }) => label),
      true,
    ),
  )
  const titled = (title: string) => joinStrips([makeTitle(title, availableMm, palette), heads])
  const strips = table.rows.flatMap(({ cells }) => row(cells, false))
  return {
    id: table.id,
    title: table.title,
    widthMm,
    head: titled(table.title),
    headContinued: titled(`${table.title}, continued`),
    strips,
    leastStrips: strips.length <= KEPT_WHOLE ? strips.length : 4,
  }
}

function layRow(
  columns: readonly SheetColumn[],
  widths: readonly number[],
  cells: readonly string[],
  isHead: boolean,
  palette: Palette,
): Strip[] {
  const fontMm = FONT_MM.body
  const wrapped = columns.map((_, index) =>
    wrapText(cells[index] ?? '', (widths[index] ?? 0) - 2 * PADDING_MM, fontMm, isHead),
  )
  const lineCount = Math.max(...wrapped.map(({ length }) => length))
  const widthMm = widths.reduce((sum, width) => sum + width, 0)
  const strips: Strip[] = []
  for (let first = 0; first < lineCount; first += LINES_PER_STRIP) {
    const shown = wrapped.map((lines) => lines.slice(first, first + LINES_PER_STRIP))
    const isLast = first + LINES_PER_STRIP >= lineCount
    const textMm = getLinesHeightMm(Math.max(...shown.map(({ length }) => length)), fontMm)
    const heightMm = textMm + (isLast ? RULE_GAP_MM : 0)
    strips.push({
      heightMm,
      draw: (x, y) => {
        let left = x
        const nodes = shown.flatMap((lines, index) => {
          const width = widths[index] ?? 0
          const isNumeric = columns[index]?.isNumeric === true
          const at = isNumeric ? left + width - PADDING_MM : left + PADDING_MM
          left += width
          return makeLines(
            lines,
            at,
            y,
            { fontMm, isBold: isHead, isSoft: isHead, anchor: isNumeric ? 'end' : 'start' },
            palette,
          )
        })
        if (!isLast) return nodes
        const ruleY = y + heightMm - RULE_GAP_MM / 3
        const stroke = isHead ? palette.ink : palette.inkSoft
        return [...nodes, makeLine([x, ruleY], [x + widthMm, ruleY], isHead ? FIRM_MM : FINE_MM, stroke)]
      },
    })
  }
  return strips
}

/** Room for the notes' numbers. */
const NUMBER_WIDTH_MM = 8
const NOTE_GAP_MM = 0.8

/** A note of no more lines stays in one place. */
const MOST_LINES_TOGETHER = 6

/** Notes, numbered; a long one may go on at the next place, line by line. */
export function layNotes(block: SheetNotes, widthMm: number, palette: Palette): LaidBlock {
  const fontMm = FONT_MM.body
  const strips = block.notes.flatMap(({ text }, index) => {
    const lines = wrapText(text, widthMm - NUMBER_WIDTH_MM, fontMm)
    const pieces = lines.length > MOST_LINES_TOGETHER ? lines.map((line) => [line]) : [lines]
    return pieces.map((piece, at): Strip => {
      const gap = at === pieces.length - 1 ? NOTE_GAP_MM : 0
      return {
        heightMm: getLinesHeightMm(piece.length, fontMm) + gap,
        draw: (x, y) => [
          ...(at === 0 ? makeLines([`${index + 1}`], x, y, { fontMm, isSoft: true }, palette) : []),
          ...makeLines(piece, x + NUMBER_WIDTH_MM, y, { fontMm }, palette),
        ],
      }
    })
  })
  return {
    id: block.id,
    title: block.title,
    widthMm,
    head: makeTitle(block.title, widthMm, palette),
    headContinued: makeTitle(`${block.title}, continued`, widthMm, palette),
    strips,
    leastStrips: Math.min(strips.length, 8),
  }
}
