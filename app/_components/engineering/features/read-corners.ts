import { findLengthUnit, type LengthUnit, parseNumber, umFromLength } from '@/lib/engine/units'

export type ReadCorners =
  | { readonly ok: true; readonly verticesMm: [number, number][] }
  | { readonly ok: false; readonly reason: string }

const MAX_CORNERS = 2000

const refuse = (reason: string): ReadCorners => ({ ok: false, reason })

/**
 * Corners from two columns of text, as they come from a spreadsheet: x and y, parted by a tab, a semicolon, a comma or spaces. A heading and
 * empty lines are passed over, a heading's unit (`x (mil)`) counts; anything else that is no pair of numbers is refused with its line. A last
 * corner that repeats the first one closes the outline and is left out.
 *
 * @param unit  of the numbers where no heading names one
 */
export function readCorners(text: string, unit: LengthUnit): ReadCorners {
  const verticesMm: [number, number][] = []
  let stated = unit
  const lines = text.split(/\r?\n/)
  for (const [index, line] of lines.entries()) {
    const cells = line
      .trim()
      .split(/\s*[\t;,]\s*|\s+/)
      .filter((cell) => cell !== '')
    if (cells.length === 0) continue
    const numbers = cells.map((cell) => parseNumber(cell)).flatMap((read) => (read.ok ? [read.value] : []))
    if (numbers.length === 0 && verticesMm.length === 0) {
      const units = new Set(
        cells.map((cell) => findLengthUnit(cell.replaceAll(/[()[\]]/g, ''))).filter((u) => u !== null),
      )
      if (units.size > 1) return refuse(`Line ${index + 1}: the heading names more than one unit.`)
      stated = [...units][0] ?? stated
      continue
    }
    const [x, y] = numbers
    if (cells.length !== 2 || numbers.length !== 2 || x === undefined || y === undefined) {
      return refuse(`Line ${index + 1}, "${line.trim().slice(0, 40)}", is not a pair of numbers.`)
    }
    verticesMm.push([toMm(x, stated), toMm(y, stated)])
    if (verticesMm.length > MAX_CORNERS + 1) return refuse(`An outline has at most ${MAX_CORNERS} corners.`)
  }
  const [first, last] = [verticesMm[0], verticesMm.at(-1)]
  if (verticesMm.length > 3 && first?.[0] === last?.[0] && first?.[1] === last?.[1]) verticesMm.pop()
  if (verticesMm.length < 3) return refuse('An outline has at least 3 corners.')
  return { ok: true, verticesMm }
}

/** Millimetres pass as they were typed; others to a nanometre, as everything in plan is kept. */
const toMm = (value: number, unit: LengthUnit): number =>
  unit === 'mm' ? value : Math.round(umFromLength(value, unit) * 1000) / 1e6
