import type { FlatBand, FlatPart } from '../kinematics/flat-part'
import { type FoldedBand, type FoldedPart, placeInBand } from '../kinematics/fold-part'
import { invertPose, movePoint } from '../kinematics/pose'
import type { Vector } from '../kinematics/vector'

/** A band that is wrapped round another one: pressed on from outside, the inner one is bent tighter than its radius. */
export interface BandOver {
  readonly overId: string
  readonly underId: string
  /** Least radial distance of their faces at the places that were looked at; never less than the true one by more than the sag between them, 0 where they meet. */
  readonly gapMm: number
}

/** Places of the outer band that are looked at, across and along it. */
const ACROSS = 25
const ALONG = 9
/** Seen from the inner band's centre the outer one covers at least as much of its turn: less is a neighbour in a stack. Our choice. */
const LEAST_COVER_DEG = 30

/**
 * Which bends lie over each other in a state of the fold: the outer one lies outside of the inner one's arc, along its axis and within its turn, no further off than the
 * inner one's own radius (our choice: further off nothing presses).
 */
export function listBandsOver(part: FlatPart, folded: FoldedPart): BandOver[] {
  const bent = part.bands.filter(({ lengthMm, angleDeg }) => lengthMm > 0 && angleDeg !== 0)
  return bent.flatMap((under) =>
    bent.flatMap((over): BandOver[] => {
      const [inner, outer] = [folded.bands.get(under.id), folded.bands.get(over.id)]
      if (under === over || inner === undefined || outer === undefined) return []
      const gapMm = findGap(inner, listPlaces(outer))
      return gapMm === null ? [] : [{ overId: over.id, underId: under.id, gapMm }]
    }),
  )
}

function listPlaces(folded: FoldedBand): readonly (readonly Vector[])[] {
  const { band } = folded
  const [low, high] = rangeAlong(band)
  return Array.from({ length: ACROSS }, (_, i) =>
    Array.from({ length: ALONG }, (__, j) => {
      const x = (band.lengthMm * i) / (ACROSS - 1)
      const y = low + ((high - low) * j) / (ALONG - 1)
      const flat = fromFrame(band, x, y)
      return [band.bottomMm, band.topMm].map((z) => placeInBand(folded, [flat[0], flat[1], z]))
    }).flat(),
  )
}

/** Null where the places do not lie over the band. */
function findGap(inner: FoldedBand, rows: readonly (readonly Vector[])[]): number | null {
  const { band, angleRad } = inner
  if (angleRad === 0) return null
  const radiusMm = band.lengthMm / Math.abs(angleRad)
  const sign = Math.sign(angleRad)
  const [insideMm, outsideMm] =
    sign > 0
      ? [band.topMm - band.neutralMm, band.neutralMm - band.bottomMm]
      : [band.neutralMm - band.bottomMm, band.topMm - band.neutralMm]
  const outerMm = radiusMm + outsideMm
  const [low, high] = rangeAlong(band)
  const [toFlat, toFrame] = [invertPose(inner.pose), inner.intoFrame]
  let gapMm = Number.POSITIVE_INFINITY
  const turns: number[] = []
  for (const row of rows) {
    const found = row.flatMap((point) => {
      const [x, y, z] = movePoint(toFrame, movePoint(toFlat, point))
      // From the middle of the arc; the band begins straight below it, or above where it turns the other way.
      const down = radiusMm - sign * (z - band.neutralMm)
      const turn = Math.atan2(x, down)
      const isWithin = y > low && y < high && turn > 0 && turn < Math.abs(angleRad)
      const distanceMm = Math.hypot(x, down)
      return isWithin && distanceMm > radiusMm ? [{ turn, distanceMm }] : []
    })
    for (const { turn, distanceMm } of found) {
      turns.push(turn)
      gapMm = Math.min(gapMm, Math.max(0, distanceMm - outerMm))
    }
  }
  const coverDeg = ((Math.max(...turns) - Math.min(...turns)) * 180) / Math.PI
  return turns.length > 1 && coverDeg >= LEAST_COVER_DEG && gapMm <= radiusMm - insideMm ? gapMm : null
}

/** Extent of a band along its axis, in its own frame. */
function rangeAlong({ loops, start, across }: FlatBand): readonly [number, number] {
  const ys = loops.flatMap((loop) => loop.map(([x, y]) => (y - start[1]) * across[0] - (x - start[0]) * across[1]))
  return [Math.min(...ys), Math.max(...ys)]
}

const fromFrame = ({ start, across }: FlatBand, x: number, y: number): readonly [number, number] => [
  start[0] + across[0] * x - across[1] * y,
  start[1] + across[1] * x + across[0] * y,
]
