import { type AperturePiece, makeUse } from '../apertures/aperture'
import { circle, rectangle, regularPolygon } from '../apertures/standard'
import { quote } from '../audit'
import { evaluateExpression } from './macro-expression'

/** A macro as written: its statements without what separates them. */
export interface Macro {
  readonly name: string
  readonly statements: readonly string[]
}

/** More than generators write by an order of magnitude (outlines of 5000 corners are the most that the specification allows). */
export const MOST_MACRO_STATEMENTS = 10_000
const MOST_NUMBERS_OF_A_STATEMENT = 2 * 5000 + 8
const MOST_RINGS = 100
/** What the macros of all apertures of a file may cost together: some statements, each with a share of its length. */
export const mostMacroWorkOf = (fileBytes: number): number => 200_000 + fileBytes / 2

export interface MacroBudget {
  workLeft: number
}

type Complain = (reason: string) => void

/**
 * The pieces of a macro with its parameters, in nanometres. A primitive that cannot be made is left out and told of; null where nothing may be made any more.
 * Primitives by the Gerber Layer Format Specification, "AM: primitives"; 2, 6 and 22 are taken back there and are still found in files (from memory).
 */
export function makeMacroPieces(
  macro: Macro,
  parameters: readonly number[],
  unitNm: number,
  budget: MacroBudget,
  complain: Complain,
): AperturePiece[] | null {
  const variables = new Map(parameters.map((value, at) => [at + 1, value]))
  const pieces: AperturePiece[] = []
  for (const statement of macro.statements) {
    budget.workLeft -= 1 + statement.length / 8
    if (budget.workLeft < 0) return null
    const text = statement.trim()
    if (text === '' || /^0(\D|$)/.test(text)) continue
    const assignment = /^\$(\d{1,9})\s*=(.*)$/s.exec(text)
    if (assignment !== null) {
      const value = evaluateExpression(assignment[2] ?? '', variables)
      if (value === null) complain(`${quote(text)} in macro ${quote(macro.name)} is not arithmetic`)
      else variables.set(Number(assignment[1]), value)
      continue
    }
    const parts = text.split(',', MOST_NUMBERS_OF_A_STATEMENT + 1)
    if (parts.length > MOST_NUMBERS_OF_A_STATEMENT) {
      complain(`a primitive of macro ${quote(macro.name)} has more than ${MOST_NUMBERS_OF_A_STATEMENT} numbers`)
      continue
    }
    const values = parts.map((part) => evaluateExpression(part, variables))
    if (values.some((value) => value === null)) {
      complain(`${quote(text)} in macro ${quote(macro.name)} is not a primitive: its numbers cannot be worked out`)
      continue
    }
    const [code = 0, ...numbers] = values as number[]
    const made = makePrimitive(code, numbers, unitNm)
    if (typeof made === 'string') complain(`${quote(text)} in macro ${quote(macro.name)}: ${made}`)
    else pieces.push(...made)
  }
  return pieces
}

/** The pieces of one primitive, or why there are none. */
function makePrimitive(code: number, numbers: readonly number[], unitNm: number): AperturePiece[] | string {
  const n = (at: number) => numbers[at] ?? 0
  const nm = (at: number) => n(at) * unitNm
  const has = (least: number) => numbers.length >= least
  const isClear = n(0) === 0
  const short = 'it has too few numbers'
  switch (code) {
    case 1: {
      if (!has(4)) return short
      if (n(1) < 0) return 'its diameter is negative'
      return turn([{ kind: 'circle', isClear, xNm: nm(2), yNm: nm(3), radiusNm: nm(1) / 2 }], n(4))
    }
    case 2:
    case 20: {
      if (!has(6)) return short
      return turn(vectorLine(isClear, nm(1), nm(2), nm(3), nm(4), nm(5)), n(6))
    }
    case 21: {
      if (!has(5)) return short
      return turn([moved(rectangle(nm(1), nm(2), isClear), nm(3), nm(4))], n(5))
    }
    case 22: {
      if (!has(5)) return short
      return turn([moved(rectangle(nm(1), nm(2), isClear), nm(3) + nm(1) / 2, nm(4) + nm(2) / 2)], n(5))
    }
    case 4: {
      const corners = n(1)
      if (!Number.isInteger(corners) || corners < 1) return 'its number of corners is not a whole number above 0'
      if (!has(2 + 2 * (corners + 1))) return `it says ${corners} corners and lists fewer`
      const points: number[] = []
      for (let at = 2; at < 2 + 2 * corners; at += 1) points.push(nm(at))
      return turn([{ kind: 'polygon', isClear, points }], n(2 + 2 * (corners + 1)))
    }
    case 5: {
      if (!has(5)) return short
      const corners = n(1)
      if (!Number.isInteger(corners) || corners < 3 || corners > 12) return 'a regular polygon has 3 to 12 corners'
      return turn([regularPolygon(corners, nm(4), 0, nm(2), nm(3), isClear)], n(5))
    }
    case 6: {
      if (!has(8)) return short
      return turn([moire(numbers, unitNm)], n(8))
    }
    case 7: {
      if (!has(5)) return short
      return turn([thermal(numbers, unitNm)], n(5))
    }
    default:
      return 'there is no such primitive'
  }
}

/** Turned about the macro's origin, not about its own. */
function turn(pieces: readonly AperturePiece[], rotationDeg: number): AperturePiece[] {
  const aperture = { code: 0, kind: 'macro', name: '', pieces, attributes: [] } as const
  return rotationDeg === 0 ? [...pieces] : [...makeUse(aperture, false, rotationDeg, 1).pieces]
}

function moved(piece: AperturePiece, xNm: number, yNm: number): AperturePiece {
  if (piece.kind === 'circle') return { ...piece, xNm: piece.xNm + xNm, yNm: piece.yNm + yNm }
  if (piece.kind === 'group') return { ...piece, pieces: piece.pieces.map((inner) => moved(inner, xNm, yNm)) }
  return { ...piece, points: piece.points.map((value, at) => value + (at % 2 === 0 ? xNm : yNm)) }
}

/** A line with square ends that end at its points. */
function vectorLine(isClear: boolean, width: number, fromX: number, fromY: number, toX: number, toY: number) {
  const length = Math.hypot(toX - fromX, toY - fromY)
  if (length === 0) return []
  const acrossX = (-(toY - fromY) / length) * (width / 2)
  const acrossY = ((toX - fromX) / length) * (width / 2)
  const points = [
    ...[fromX - acrossX, fromY - acrossY, toX - acrossX, toY - acrossY],
    ...[toX + acrossX, toY + acrossY, fromX + acrossX, fromY + acrossY],
  ]
  return [{ kind: 'polygon', isClear, points } as const]
}

function moire(numbers: readonly number[], unitNm: number): AperturePiece {
  const nm = (at: number) => (numbers[at] ?? 0) * unitNm
  const [xNm, yNm, outer, ring, gap, crossWidth, crossLength] = [nm(0), nm(1), nm(2), nm(3), nm(4), nm(6), nm(7)]
  const pieces: AperturePiece[] = []
  let diameter = outer
  for (let count = 0; count < Math.min(numbers[5] ?? 0, MOST_RINGS) && diameter > 0; count += 1) {
    pieces.push(circle(diameter), circle(Math.max(0, diameter - 2 * ring), true))
    diameter -= 2 * (ring + gap)
  }
  pieces.push(rectangle(crossLength, crossWidth), rectangle(crossWidth, crossLength))
  return moved({ kind: 'group', isClear: false, pieces }, xNm, yNm)
}

function thermal(numbers: readonly number[], unitNm: number): AperturePiece {
  const nm = (at: number) => (numbers[at] ?? 0) * unitNm
  const [xNm, yNm, outer, inner, gap] = [nm(0), nm(1), nm(2), nm(3), nm(4)]
  const pieces = [circle(outer), circle(inner, true), rectangle(outer, gap, true), rectangle(gap, outer, true)]
  return moved({ kind: 'group', isClear: false, pieces }, xNm, yNm)
}
