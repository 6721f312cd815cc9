import { type DrawingNode, makeNode } from '@/lib/drawing'
import { HAIRLINE, INK, SOFT } from './style'

/** Widths of characters in relation to the type size, on the safe side for the sans-serif faces in use. */
const CHARACTER_WIDTHS_EM: readonly (readonly [pattern: RegExp, widthEm: number])[] = [
  [/[WM@%mw—…]/, 0.95],
  [/[A-Z&+=<>~±≤≥]/, 0.7],
  [/[iljtfrI.,;:'!|()[\]{}\s-]/, 0.37],
  [/[a-z0-9]/, 0.56],
]
/** Other scripts are wider than Latin small letters. */
const OTHER_WIDTH_EM = 0.9

function measureWidthPx(text: string, fontPx: number): number {
  let widthEm = 0
  for (const character of text) {
    widthEm += CHARACTER_WIDTHS_EM.find(([pattern]) => pattern.test(character))?.[1] ?? OTHER_WIDTH_EM
  }
  return widthEm * fontPx
}

/** Longest beginning of a word that fits; at least one character. */
function takeFitting(word: string, widthPx: number, fontPx: number): string {
  const characters = [...word]
  let count = characters.length
  while (count > 1 && measureWidthPx(characters.slice(0, count).join(''), fontPx) > widthPx) count -= 1
  return characters.slice(0, count).join('')
}
const LINE_HEIGHT_EM = 1.28
const CELL_PADDING_PX = 4

export interface SvgColumn {
  readonly label: string
  readonly widthPx: number
  readonly isNumeric?: boolean
}

export interface SvgBlock {
  readonly nodes: readonly DrawingNode[]
  readonly heightPx: number
}

interface TextStyle {
  readonly fontPx: number
  readonly isBold?: boolean
  readonly fill?: string
  readonly anchor?: 'start' | 'end'
}

export function makeSvgText(text: string, x: number, y: number, style: TextStyle): DrawingNode {
  return makeNode(
    'text',
    {
      x,
      y,
      'font-size': style.fontPx,
      'font-weight': style.isBold === true ? 'bold' : 'normal',
      'text-anchor': style.anchor ?? 'start',
      fill: style.fill ?? INK,
    },
    [text],
  )
}

/** Breaks text at spaces, and inside a word that is longer than the line. */
export function wrapText(text: string, widthPx: number, fontPx: number): string[] {
  const lines: string[] = []
  for (const paragraph of text.split(/\r?\n/)) {
    let line = ''
    for (const word of paragraph.split(/\s+/)) {
      let rest = word
      if (line !== '' && measureWidthPx(`${line} ${rest}`, fontPx) > widthPx) {
        lines.push(line)
        line = ''
      }
      while (measureWidthPx(rest, fontPx) > widthPx) {
        const part = takeFitting(rest, widthPx, fontPx)
        if (part.length === rest.length) break
        lines.push(part)
        rest = rest.slice(part.length)
      }
      line = line === '' ? rest : `${line} ${rest}`
    }
    lines.push(line)
  }
  return lines
}

/** One line: what fits, with an ellipsis where text is left out. */
export function fitLine(text: string, widthPx: number, fontPx: number): string {
  const [line = ''] = wrapText(text, widthPx - fontPx, fontPx)
  return line.length < text.trim().replaceAll(/\s+/g, ' ').length ? `${line}…` : line
}

/** Several lines of text from `y` down; `heightPx` includes the last descender. */
export function drawLines(lines: readonly string[], x: number, y: number, style: TextStyle): SvgBlock {
  const step = style.fontPx * LINE_HEIGHT_EM
  return {
    nodes: lines.map((line, index) => makeSvgText(line, x, y + style.fontPx + index * step, style)),
    heightPx: lines.length * step,
  }
}

/** A ruled table with a title; cells wrap. */
export function drawTable(
  title: string,
  columns: readonly SvgColumn[],
  rows: readonly (readonly string[])[],
  at: { readonly x: number; readonly y: number; readonly fontPx: number },
): SvgBlock {
  const { x, fontPx } = at
  const widthPx = columns.reduce((sum, column) => sum + column.widthPx, 0)
  const nodes: DrawingNode[] = [makeSvgText(title, x, at.y + fontPx + 2, { fontPx: fontPx + 2, isBold: true })]
  let y = at.y + (fontPx + 2) * 1.6
  const addRow = (cells: readonly string[], isHead: boolean) => {
    const cellFont = isHead ? fontPx - 1 : fontPx
    const wrapped = columns.map((column, index) =>
      wrapText(cells[index] ?? '', column.widthPx - 2 * CELL_PADDING_PX, cellFont),
    )
    const lineCount = Math.max(1, ...wrapped.map(({ length }) => length))
    let left = x
    columns.forEach((column, index) => {
      const isNumeric = column.isNumeric === true
      const textX = isNumeric ? left + column.widthPx - CELL_PADDING_PX : left + CELL_PADDING_PX
      const block = drawLines(wrapped[index] ?? [], textX, y + 2, {
        fontPx: cellFont,
        isBold: isHead,
        fill: isHead ? SOFT : INK,
        anchor: isNumeric ? 'end' : 'start',
      })
      nodes.push(...block.nodes)
      left += column.widthPx
    })
    y += lineCount * cellFont * LINE_HEIGHT_EM + 5
    nodes.push(drawRule(x, y, widthPx, isHead))
  }
  addRow(
    columns.map(({ label }) => label),
    true,
  )
  for (const row of rows) addRow(row, false)
  return { nodes, heightPx: y - at.y + 2 }
}

export function drawRule(x: number, y: number, widthPx: number, isFirm: boolean): DrawingNode {
  return makeNode('line', {
    x1: x,
    y1: y,
    x2: x + widthPx,
    y2: y,
    stroke: isFirm ? INK : HAIRLINE,
    'stroke-width': isFirm ? 0.8 : 0.4,
  })
}
