import {
  type Affine,
  type Curve,
  carryCurve,
  holdingPoints,
  isCircle,
  MAX_PIECES,
  type Piece,
  type Point,
  toPieces,
} from './curves'

/** Something in a file that was not taken over as it stands, or not at all. */
export interface FileIssue {
  /** In the file, counted from 1; null where it concerns the whole. */
  readonly line: number | null
  readonly message: string
}

/** One stroke of a drawing: what one entity of a file draws. */
export interface Stroke {
  readonly layer: string
  /** Of a DXF; the places of an SVG are not known. */
  readonly line: number | null
  readonly pieces: readonly Piece[]
  /** Where it is a full circle: what holes are drawn as. */
  readonly circle: { readonly middle: Point; readonly radius: number } | null
  /** A single place. */
  readonly point: Point | null
}

export interface DrawingLayer {
  readonly name: string
  readonly strokes: number
  /** Switched off or frozen where it was drawn. */
  readonly isHidden: boolean
}

/** A file as lines and arcs in mm, with y up. */
export interface Drawing {
  readonly layers: readonly DrawingLayer[]
  readonly strokes: readonly Stroke[]
  readonly issues: readonly FileIssue[]
}

/** Issues that are told one by one; the rest is counted. */
const MAX_ISSUES = 200

export class Issues {
  private readonly list: FileIssue[] = []
  private left = 0

  add(line: number | null, message: string): void {
    if (this.list.length < MAX_ISSUES) this.list.push({ line, message })
    else this.left += 1
  }

  all(): FileIssue[] {
    return this.left === 0 ? this.list : [...this.list, { line: null, message: `and ${this.left} more` }]
  }
}

/** Collects strokes as a reader finds them, within the bounds of what a plan can hold. */
export class StrokeList {
  readonly strokes: Stroke[] = []
  private pieceCount = 0
  isFull = false

  constructor(
    private readonly issues: Issues,
    private readonly toleranceMm: number,
  ) {}

  add(layer: string, line: number | null, curves: readonly Curve[], by: Affine): void {
    if (this.isFull) return
    const carried = curves.map((curve) => carryCurve(by, curve))
    if (!carried.every((curve) => holdingPoints(curve).every(isNear))) {
      this.issues.add(line, OUT_OF_SIGHT)
      return
    }
    const pieces: Piece[] = []
    for (const curve of carried) {
      const found = toPieces(curve, this.toleranceMm)
      for (const piece of found ?? []) if (!isNothing(piece)) pieces.push(piece)
      if (found === null || this.pieceCount + pieces.length > MAX_PIECES) {
        this.isFull = true
        this.issues.add(line, `more than ${MAX_PIECES} lines and arcs: what follows is left out`)
        return
      }
    }
    if (pieces.length === 0) {
      this.issues.add(line, 'has no length: left out')
      return
    }
    this.pieceCount += pieces.length
    this.strokes.push({ layer, line, pieces, circle: findCircle(carried), point: null })
  }

  addPoint(layer: string, line: number | null, point: Point): void {
    if (this.isFull) return
    if (!isNear(point)) {
      this.issues.add(line, OUT_OF_SIGHT)
      return
    }
    this.pieceCount += 1
    this.isFull = this.pieceCount > MAX_PIECES
    this.strokes.push({ layer, line, pieces: [], circle: null, point })
  }
}

/** Further out nothing of a part can lie: a kilometre. */
const FURTHEST_MM = 1e6
const OUT_OF_SIGHT = 'lies more than a kilometre out: left out'

const isNear = ([x, y]: Point) => Math.abs(x) <= FURTHEST_MM && Math.abs(y) <= FURTHEST_MM

const isNothing = ({ from, via, to }: Piece) => via === null && from[0] === to[0] && from[1] === to[1]

function findCircle(curves: readonly Curve[]): Stroke['circle'] {
  const [only, second] = curves
  if (only?.kind !== 'ellipse' || second !== undefined || !isCircle(only)) return null
  if (Math.abs(Math.abs(only.sweepRad) - 2 * Math.PI) > 1e-9) return null
  return { middle: only.middle, radius: Math.hypot(...only.u) }
}
