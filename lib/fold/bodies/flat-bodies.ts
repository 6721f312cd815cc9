import { type FlatBand, type FlatPart, type FlatSolid, type LeafOf, listLeaves } from '../kinematics/flat-part'
import type { Vector } from '../kinematics/vector'
import { clipBetween, type FlatPiece, fillWithTriangles } from './cut-flat'

/** What stands on a plate and moves with it: a stiffener, a component, a connector. */
export interface CarriedBody extends FlatSolid {
  readonly plateId: string
}

/** A convex prism of the flat part; those of a band are strips across it, bent as a whole. */
export interface FlatPrism {
  readonly corners: readonly Vector[]
  /** How far a strip's true surface can stand from the hull of its corners once its band is folded. */
  readonly sagMm: number
  readonly leaf: LeafOf['leaf']
}

/** A solid of the part with all its leaves: they lie side by side wherever the fold brings them, and are not compared with each other. */
export interface FlatBody {
  readonly id: string
  readonly carrier: { readonly plateId: string } | { readonly bandId: string }
  /** Whether it stands on the part, rather than being of it. */
  readonly isCarried: boolean
  readonly heightMm: number
  readonly prisms: readonly FlatPrism[]
}

/** Strips of a band turn by this much each at first; closer looks halve it. */
export const STRIP_DEG = 15

/**
 * All solids of the part: its plates and bands, and what the plates carry.
 *
 * @param stripDeg  turn of one strip of a folded band
 */
export function listFlatBodies(
  part: FlatPart,
  carried: readonly CarriedBody[],
  stripDeg: number = STRIP_DEG,
): readonly FlatBody[] {
  const solid = (flat: FlatSolid, plateId: string, isCarried: boolean): FlatBody => ({
    id: flat.id,
    carrier: { plateId },
    isCarried,
    heightMm: flat.topMm - flat.bottomMm,
    prisms: fillWithTriangles(flat.loops).flatMap((piece) => raiseLeaves(piece, flat, 0)),
  })
  return [
    ...part.plates.flatMap(({ id, solids }) => solids.map((area) => solid(area, id, false))),
    ...carried.map((body) => solid(body, body.plateId, true)),
    ...part.bands.map((band) => cutBand(band, stripDeg)),
  ]
}

export function cutBand(band: FlatBand, stripDeg: number): FlatBody {
  const count = Math.max(1, Math.ceil(Math.abs(band.angleDeg) / stripDeg))
  const halfTurnRad = ((Math.abs(band.angleDeg) / count / 2) * Math.PI) / 180
  const pieces = fillWithTriangles(band.loops)
  const prisms: FlatPrism[] = []
  for (let strip = 0; strip < count; strip += 1) {
    const [from, to] = [(band.lengthMm * strip) / count, (band.lengthMm * (strip + 1)) / count]
    for (const piece of pieces) {
      const clipped = clipBetween(piece, band.start, band.across, from, to)
      if (clipped.length > 0) {
        prisms.push(...raiseLeaves(clipped, band, sagOf(band, halfTurnRad)))
      }
    }
  }
  return { id: band.id, carrier: { bandId: band.id }, isCarried: false, heightMm: band.topMm - band.bottomMm, prisms }
}

/** Arc over chord at the outer face: the inner one is nearer to its chord. */
function sagOf(band: FlatBand, halfTurnRad: number): number {
  const angleRad = (Math.abs(band.angleDeg) * Math.PI) / 180
  if (angleRad === 0) return 0
  const outerMm = band.lengthMm / angleRad + Math.max(band.topMm - band.neutralMm, band.neutralMm - band.bottomMm)
  const quarter = Math.sin(halfTurnRad / 2)
  return 2 * outerMm * quarter * quarter
}

const raiseLeaves = (piece: FlatPiece, solid: FlatSolid, sagMm: number): readonly FlatPrism[] =>
  listLeaves(solid).map(({ bottomMm, topMm, leaf }) => ({ corners: raise(piece, bottomMm, topMm), sagMm, leaf }))

const raise = (piece: FlatPiece, bottomMm: number, topMm: number): readonly Vector[] =>
  piece.flatMap(([x, y]): Vector[] => [
    [x, y, bottomMm],
    [x, y, topMm],
  ])
