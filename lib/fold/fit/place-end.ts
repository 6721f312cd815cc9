import { locateInRegion, type Region } from '@/lib/geometry'
import { NM_PER_MM, type PointMm, toNm } from '@/lib/plan'
import type { FlatPartOfPlan, StillPiece } from '../from-plan/flat-part-of-plan'
import { bendBand, poseBehind } from '../kinematics/bend-band'
import type { FlatBand, FlatPart } from '../kinematics/flat-part'
import { composePoses, FLAT_POSE, invertPose, movePoint, type Pose, turnVector } from '../kinematics/pose'
import { dot, lengthOf, minus, times, type Vector } from '../kinematics/vector'

/** An edge of the flat part, and how high its middle lies. */
export interface FlatEnd {
  readonly plateId: string
  /** Middle of the edge, halfway through the thickness there. */
  readonly at: Vector
  /** Out of the part, square to the edge. */
  readonly outwards: Vector
}

/** Where an end comes to lie, and how. */
export interface PlacedEnd {
  readonly at: Vector
  readonly pointsTo: Vector
  readonly topFaces: Vector
}

/** How much one bend moves the end: for each mm by which its inside radius, or the place of its axis, is off. */
export interface EndShift {
  readonly bandId: string
  readonly perRadiusMm: Vector
  readonly perPlaceMm: Vector
}

/** How far beside the edge a point has to lie in the part: 10 um. */
const BESIDE_NM = 10_000

/** The end of an edge of the plan; null where the edge borders nothing that stays plane. */
export function findFlatEnd({ pieces, part }: FlatPartOfPlan, fromMm: PointMm, toMm: PointMm): FlatEnd | null {
  const [dx, dy] = [toMm[0] - fromMm[0], toMm[1] - fromMm[1]]
  const long = Math.hypot(dx, dy)
  if (long === 0) return null
  const middle: PointMm = [(fromMm[0] + toMm[0]) / 2, (fromMm[1] + toMm[1]) / 2]
  const [mx, my] = toNm([round(middle[0]), round(middle[1])])
  const beside = (side: 1 | -1) =>
    findPiece(pieces, Math.round(mx - (side * BESIDE_NM * dy) / long), Math.round(my + (side * BESIDE_NM * dx) / long))
  const [left, right] = [beside(1), beside(-1)]
  const piece = left ?? right
  // An edge with the part on both sides is no end of it.
  if (piece === null || (left !== null && right !== null)) return null
  const inwards = left === null ? -1 : 1
  const solid = part.plates.flatMap(({ solids }) => solids).find(({ id }) => id === piece.id)
  if (solid === undefined) return null
  return {
    plateId: piece.plateId,
    at: [middle[0], middle[1], (solid.bottomMm + solid.topMm) / 2],
    outwards: [(inwards * dy) / long, (-inwards * dx) / long, 0],
  }
}

const round = (mm: number) => Math.round(mm * NM_PER_MM) / NM_PER_MM

function findPiece(pieces: readonly StillPiece[], x: number, y: number): StillPiece | null {
  const isIn = (region: Region) => locateInRegion(region, [x, y]) === 'inside'
  return pieces.find(({ region }) => isIn(region)) ?? null
}

/** One bend on the way from the plate that stays, and whether it is gone through from its start. */
interface Leg {
  readonly band: FlatBand
  readonly isForward: boolean
}

/** Bends between the plate that stays and another, in the order in which a fold follows them. */
export function findWay(part: FlatPart, fromPlateId: string, toPlateId: string): readonly Leg[] | null {
  const ways = new Map<string, readonly Leg[]>([[fromPlateId, []]])
  const waiting = [fromPlateId]
  for (const plateId of waiting) {
    const way = ways.get(plateId) ?? []
    if (plateId === toPlateId) return way
    for (const band of part.bands) {
      const isForward = band.fromPlateId === plateId
      if (!isForward && band.toPlateId !== plateId) continue
      const next = isForward ? band.toPlateId : band.fromPlateId
      if (ways.has(next)) continue
      ways.set(next, [...way, { band, isForward }])
      waiting.push(next)
    }
  }
  return null
}

function poseAlong(way: readonly Leg[]): Pose {
  return way.reduce((pose, { band, isForward }) => {
    const behind = poseBehind(bendBand(band, 1))
    return composePoses(pose, isForward ? behind : invertPose(behind))
  }, FLAT_POSE)
}

/**
 * Where an end comes to lie when every bend is made, and how it moves where bends are off. Angles kept, a place is exactly linear in radii and
 * places of axes, so that what one mm does holds for any tolerance. A bend that is rounder takes its longer band from both sides of its axis.
 *
 * @returns null where no bends lead from the plate that stays to the end
 */
export function placeEnd(
  part: FlatPart,
  fixedPlateId: string,
  end: FlatEnd,
): { readonly placed: PlacedEnd; readonly shifts: readonly EndShift[] } | null {
  const way = findWay(part, fixedPlateId, end.plateId)
  if (way === null) return null
  const pose = poseAlong(way)
  const at = movePoint(pose, end.at)
  const moved = (index: number, change: (band: FlatBand) => FlatBand) =>
    minus(
      movePoint(
        poseAlong(way.map((leg, place) => (place === index ? { ...leg, band: change(leg.band) } : leg))),
        end.at,
      ),
      at,
    )
  return {
    placed: { at, pointsTo: turnVector(pose, end.outwards), topFaces: turnVector(pose, [0, 0, 1]) },
    shifts: way.map(({ band }, index) => {
      const longerMm = (Math.abs(band.angleDeg) * Math.PI) / 180
      return {
        bandId: band.id,
        perRadiusMm: moved(index, (flat) => ({
          ...flat,
          lengthMm: flat.lengthMm + longerMm,
          start: [flat.start[0] - (flat.across[0] * longerMm) / 2, flat.start[1] - (flat.across[1] * longerMm) / 2],
        })),
        perPlaceMm: moved(index, (flat) => ({
          ...flat,
          start: [flat.start[0] + flat.across[0], flat.start[1] + flat.across[1]],
        })),
      }
    }),
  }
}

/** Up to as many shifts every corner of what they span is looked at; beyond, their sum bounds it. */
const MOST_CORNERS = 12
const NEXT_TO_NOTHING_MM = 1e-9

/**
 * Least and greatest length of an offset that shifts may add to, each wholly or not, either way. The greatest lies at a corner of what they
 * span, which is convex; the least is bounded along the offset's own direction.
 */
export function boundOffset(
  offset: Vector,
  shifts: readonly Vector[],
): { readonly lowMm: number; readonly highMm: number } {
  const nominal = lengthOf(offset)
  const moving = shifts.filter((shift) => lengthOf(shift) > 0)
  // An offset of next to nothing points nowhere: nothing is then known of the least.
  const unit = nominal > NEXT_TO_NOTHING_MM ? times(offset, 1 / nominal) : null
  const nearer = moving.reduce((sum, shift) => sum + (unit === null ? nominal : Math.abs(dot(shift, unit))), 0)
  const lowMm = Math.max(0, nominal - nearer)
  if (moving.length > MOST_CORNERS) {
    return { lowMm, highMm: moving.reduce((sum, shift) => sum + lengthOf(shift), nominal) }
  }
  let highMm = nominal
  for (let corner = 0; corner < 2 ** moving.length; corner += 1) {
    const [x, y, z] = moving.reduce<Vector>((sum, shift, bit) => {
      const sign = (corner >> bit) & 1 ? 1 : -1
      return [sum[0] + sign * shift[0], sum[1] + sign * shift[1], sum[2] + sign * shift[2]]
    }, offset)
    highMm = Math.max(highMm, Math.hypot(x, y, z))
  }
  return { lowMm, highMm }
}
