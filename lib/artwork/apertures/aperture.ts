import { matrixOf } from '../objects/placement'

/**
 * A piece of an aperture in nanometres about its origin. Pieces stand in order: a clear one takes away from those before it in the same list, and from
 * nothing else. A group is put together by itself first.
 */
export type AperturePiece = ApertureCircle | AperturePolygon | ApertureGroup
interface ApertureCircle {
  readonly kind: 'circle'
  readonly isClear: boolean
  readonly xNm: number
  readonly yNm: number
  readonly radiusNm: number
}
interface AperturePolygon {
  readonly kind: 'polygon'
  readonly isClear: boolean
  /** x, y of each corner. */
  readonly points: readonly number[]
}
interface ApertureGroup {
  readonly kind: 'group'
  readonly isClear: boolean
  readonly pieces: readonly AperturePiece[]
}

export type ApertureKind = 'circle' | 'rectangle' | 'obround' | 'polygon' | 'macro'

/** An aperture, or a drill's tool, as the file defines it. */
export interface Aperture {
  /** The D code or tool number. */
  readonly code: number
  readonly kind: ApertureKind
  /** The letter of a standard aperture, or what the macro is called. */
  readonly name: string
  readonly pieces: readonly AperturePiece[]
  /** Attributes as written, `name,value,value`. */
  readonly attributes: readonly string[]
}

export type ExtentNm = readonly [minXNm: number, minYNm: number, maxXNm: number, maxYNm: number]

/** An aperture as it is used: mirrored, turned and enlarged. */
export interface ApertureUse {
  readonly aperture: Aperture
  readonly isMirrored: boolean
  readonly rotationDeg: number
  readonly scale: number
  readonly pieces: readonly AperturePiece[]
  /** Where the use is one plain circle, else null: its strokes have round ends. */
  readonly diameterNm: number | null
  /** Of the dark pieces; null where there are none. */
  readonly extentNm: ExtentNm | null
}

export function makeUse(aperture: Aperture, isMirrored: boolean, rotationDeg: number, scale: number): ApertureUse {
  const isPlain = !isMirrored && rotationDeg === 0 && scale === 1
  const matrix = matrixOf({ isMirrored, rotationDeg, scale })
  const pieces = isPlain ? aperture.pieces : aperture.pieces.map((piece) => turnPiece(piece, matrix, scale))
  const [only] = pieces
  const isCircle = pieces.length === 1 && only?.kind === 'circle' && !only.isClear && only.xNm === 0 && only.yNm === 0
  return {
    aperture,
    isMirrored,
    rotationDeg,
    scale,
    pieces,
    diameterNm: isCircle ? 2 * only.radiusNm : null,
    extentNm: extentOfPieces(pieces),
  }
}

function turnPiece(piece: AperturePiece, matrix: ReturnType<typeof matrixOf>, scale: number): AperturePiece {
  const { a, b, c, d } = matrix
  if (piece.kind === 'group') return { ...piece, pieces: piece.pieces.map((inner) => turnPiece(inner, matrix, scale)) }
  if (piece.kind === 'circle') {
    const { xNm, yNm, radiusNm } = piece
    return { ...piece, xNm: a * xNm + b * yNm, yNm: c * xNm + d * yNm, radiusNm: radiusNm * scale }
  }
  const points: number[] = []
  for (let at = 0; at + 1 < piece.points.length; at += 2) {
    const x = piece.points[at] ?? 0
    const y = piece.points[at + 1] ?? 0
    points.push(a * x + b * y, c * x + d * y)
  }
  return { ...piece, points }
}

function extentOfPieces(pieces: readonly AperturePiece[]): ExtentNm | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  const include = (x: number, y: number, radius: number) => {
    minX = Math.min(minX, x - radius)
    minY = Math.min(minY, y - radius)
    maxX = Math.max(maxX, x + radius)
    maxY = Math.max(maxY, y + radius)
  }
  for (const piece of pieces) {
    if (piece.isClear) continue
    if (piece.kind === 'circle') include(piece.xNm, piece.yNm, piece.radiusNm)
    else if (piece.kind === 'polygon') {
      for (let at = 0; at + 1 < piece.points.length; at += 2)
        include(piece.points[at] ?? 0, piece.points[at + 1] ?? 0, 0)
    } else {
      const inner = extentOfPieces(piece.pieces)
      if (inner !== null) {
        include(inner[0], inner[1], 0)
        include(inner[2], inner[3], 0)
      }
    }
  }
  return minX > maxX ? null : [minX, minY, maxX, maxY]
}
