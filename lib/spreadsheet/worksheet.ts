import { type CellPlace, GRID_LIMITS, type Grid } from './cell'
import { readXml } from './read-xml'

/** Texts that cells refer to by number. Readings aids of East Asian text (`rPh`) are no part of the text. */
export function readSharedStrings(xml: string): string[] {
  const strings: string[] = []
  let text = ''
  let isText = false
  let aids = 0
  readXml(xml, {
    open: (name) => {
      if (name === 's:si') text = ''
      if (name === 's:rPh') aids += 1
      if (name === 's:t') isText = true
    },
    close: (name) => {
      if (name === 's:si') strings.push(text)
      if (name === 's:rPh') aids -= 1
      if (name === 's:t') isText = false
    },
    text: (part) => {
      if (isText && aids === 0) text += part
    },
  })
  return strings
}

interface OpenCell {
  readonly place: CellPlace
  readonly type: string
  value: string
  hasFormula: boolean
}

/** @returns null where a cell lies beyond the bounds of what is read */
export function readWorksheet(xml: string, strings: readonly string[]): Grid | null {
  const rows: string[][] = []
  const refused: (CellPlace & { reason: string })[] = []
  let row = 0
  let column = 0
  let cell: OpenCell | null = null
  let takesText = false
  let isOutside = false

  const finish = ({ place, type, value, hasFormula }: OpenCell) => {
    if (place.row > GRID_LIMITS.rows || place.column > GRID_LIMITS.columns) {
      isOutside ||= value !== '' || hasFormula
      return
    }
    const text = hasFormula ? '' : readValue(type, value, strings)
    if (hasFormula) refused.push({ ...place, reason: 'is a formula: put the value itself there' })
    else if (text === null) refused.push({ ...place, reason: `holds an error: ${value}` })
    if (text === null || text === '') return
    while (rows.length < place.row) rows.push([])
    const line = rows[place.row - 1] ?? []
    while (line.length < place.column) line.push('')
    line[place.column - 1] = text
  }

  readXml(xml, {
    open: (name, attribute) => {
      if (name === 's:row') {
        row = Number(attribute('r') ?? row + 1)
        column = 0
      } else if (name === 's:c') {
        const at = readReference(attribute('r'))
        column = at?.column ?? column + 1
        cell = { place: { row: at?.row ?? row, column }, type: attribute('t') ?? 'n', value: '', hasFormula: false }
      } else if (name === 's:f' && cell !== null) cell.hasFormula = true
      else if (name === 's:v' || name === 's:t') takesText = true
    },
    close: (name) => {
      if (name === 's:v' || name === 's:t') takesText = false
      if (name === 's:c' && cell !== null) {
        finish(cell)
        cell = null
      }
    },
    text: (part) => {
      if (takesText && cell !== null) cell.value += part
    },
  })
  return isOutside ? null : { rows, refused }
}

/** A cell's value as text; null for an error such as #REF!. */
function readValue(type: string, value: string, strings: readonly string[]): string | null {
  if (type === 'e') return null
  if (type === 's') return strings[Number(value)] ?? ''
  if (type === 'b') return value === '1' || value === 'true' ? 'yes' : 'no'
  if (type !== 'n' || value === '') return value
  // Programs store 0.1 as 0.10000000000000001: the shortest text of the same number is what was typed.
  const number = Number(value)
  return Number.isFinite(number) ? String(number) : value
}

function readReference(reference: string | null): CellPlace | null {
  const match = /^([A-Z]{1,3})(\d{1,7})$/.exec(reference ?? '')
  if (match === null) return null
  const column = [...(match[1] ?? '')].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)
  return { row: Number(match[2]), column }
}
