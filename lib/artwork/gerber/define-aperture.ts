import type { Aperture, AperturePiece } from '../apertures/aperture'
import { circle, obround, rectangle, regularPolygon } from '../apertures/standard'
import { quote } from '../audit'
import { LARGEST_COORDINATE_NM } from '../limits'
import { type Macro, type MacroBudget, makeMacroPieces } from './macro'

const DEFINITION = /^ADD0*(\d{1,9})([A-Za-z_.$][^,]*)(?:,(.*))?$/s

interface Surroundings {
  readonly macros: ReadonlyMap<string, Macro>
  readonly unitNm: number
  readonly budget: MacroBudget
  readonly attributes: readonly string[]
  readonly error: (reason: string) => void
  readonly note: (reason: string) => void
}

/** The aperture of an AD statement; null with the reason told where there is none. */
export function defineAperture(
  text: string,
  { macros, unitNm, budget, attributes, error, note }: Surroundings,
): Aperture | null {
  const found = DEFINITION.exec(text)
  if (found === null) {
    error(`${quote(text)} is not an aperture definition`)
    return null
  }
  const code = Number(found[1])
  const name = (found[2] ?? '').trim()
  const written = found[3]?.trim() ?? ''
  const values = written === '' ? [] : written.split(/[Xx]/).map((part) => toNumber(part))
  if (code < 10) {
    error(`D${code} cannot be an aperture: codes begin at D10`)
    return null
  }
  if (values.some((value) => value === null)) {
    error(`the measures of aperture D${code}, ${quote(written)}, are not numbers`)
    return null
  }
  const numbers = values as number[]
  const make = (kind: Aperture['kind'], pieces: readonly AperturePiece[]): Aperture => ({
    code,
    kind,
    name,
    pieces,
    attributes,
  })
  const macro = macros.get(name)
  if (macro !== undefined) {
    const pieces = makeMacroPieces(macro, numbers, unitNm, budget, (reason) => error(`aperture D${code}: ${reason}`))
    if (pieces === null) {
      error(`aperture D${code}: the macros of this file take more work than is done for one file`)
      return null
    }
    if (!pieces.every(isFinitePiece)) {
      error(`aperture D${code}: macro ${quote(name)} gives measures that are no numbers or beyond 2 m`)
      return null
    }
    return make('macro', pieces)
  }
  const standard = makeStandard(name, numbers, unitNm)
  if (standard === null) {
    error(
      `aperture D${code} is of ${quote(name)}, which is neither a standard aperture nor a macro that was defined before`,
    )
    return null
  }
  if (typeof standard === 'string') {
    error(`aperture D${code}: ${standard}`)
    return null
  }
  if (!standard.pieces.every(isFinitePiece)) {
    error(`aperture D${code} measures more than 2 m`)
    return null
  }
  if (standard.hasSquareHole) note('rectangular holes in apertures are no longer in the format')
  return make(standard.kind, standard.pieces)
}

function toNumber(part: string): number | null {
  return /^\s*[+-]?(\d+\.?\d*|\.\d+)\s*$/.test(part) ? Number(part) : null
}

function isFinitePiece(piece: AperturePiece): boolean {
  const isIn = (value: number) => Math.abs(value) <= LARGEST_COORDINATE_NM
  if (piece.kind === 'circle') return isIn(piece.xNm) && isIn(piece.yNm) && isIn(piece.radiusNm)
  return piece.kind === 'polygon' ? piece.points.every(isIn) : piece.pieces.every(isFinitePiece)
}

interface Standard {
  readonly kind: Aperture['kind']
  readonly pieces: readonly AperturePiece[]
  readonly hasSquareHole: boolean
}

function makeStandard(name: string, numbers: readonly number[], unitNm: number): Standard | string | null {
  const nm = (at: number) => (numbers[at] ?? 0) * unitNm
  const isMeasured = (count: number, least: number) =>
    numbers.length >= count && numbers.slice(0, count).every((value) => value >= least)
  const withHole = (kind: Aperture['kind'], pieces: readonly AperturePiece[], at: number): Standard => {
    const hasSquareHole = numbers.length > at + 1
    const hole = hasSquareHole ? rectangle(nm(at), nm(at + 1), true) : circle(nm(at), true)
    return { kind, pieces: nm(at) > 0 ? [...pieces, hole] : pieces, hasSquareHole }
  }
  switch (name) {
    case 'C':
      return isMeasured(1, 0) ? withHole('circle', [circle(nm(0))], 1) : 'a circle needs a diameter of 0 or more'
    case 'R':
      return isMeasured(2, 0)
        ? withHole('rectangle', [rectangle(nm(0), nm(1))], 2)
        : 'a rectangle needs two measures of 0 or more'
    case 'O':
      return isMeasured(2, 0)
        ? withHole('obround', obround(nm(0), nm(1)), 2)
        : 'an obround needs two measures of 0 or more'
    case 'P': {
      const corners = numbers[1] ?? 0
      if (!isMeasured(1, 0) || !Number.isInteger(corners) || corners < 3 || corners > 12)
        return 'a polygon needs a diameter and 3 to 12 corners'
      return withHole('polygon', [regularPolygon(corners, nm(0), numbers[2] ?? 0)], 3)
    }
    default:
      return null
  }
}
