import { directionAt, type LineOrArc, lengthOfEdge, pointAt, type Region } from '@/lib/geometry'
import type { CarriedBody } from '../bodies/flat-bodies'
import { bendPoint } from '../kinematics/bend-band'
import { type FlatPart, type FlatSolid, type LeafOf, listLeaves } from '../kinematics/flat-part'
import { type FoldedBand, type FoldShares, foldPart } from '../kinematics/fold-part'
import { movePoint, type Pose, turnVector } from '../kinematics/pose'
import { cross, minus, plus, times, type Vector } from '../kinematics/vector'
import type { ExactCurve, ExactSolid } from './brep'
import { inMm, NM_PER_MM, type Placing, raise, unit, wallPlane } from './prism'

/** An edge across a bend, or along its axis, to within this is so: rounding of borders to nanometres. */
const STRAIGHT_MM = 1e-5
/** Turn of one cubic piece at most: it leaves its curve by less than 1e-6 of the radius. */
const PIECE_RAD = Math.PI / 36

/**
 * All bodies of the part with their true surfaces: planes, cylinders of the bends' radii, and straight lines between two curves where a border
 * crosses a bend at a slant.
 *
 * @param regions  of each body by its id, with arcs as they were drawn; a body without one is left out
 * @param shares  as `foldPart`
 */
export function listExactSolids(
  part: FlatPart,
  carried: readonly CarriedBody[],
  regions: ReadonlyMap<string, Region>,
  fixedPlateId: string,
  shares: FoldShares,
): readonly (ExactSolid & LeafOf)[] {
  const folded = foldPart(part, fixedPlateId, shares)
  const make = (solid: FlatSolid, place: (leaf: FlatSolid, region: Region) => Placing): (ExactSolid & LeafOf)[] => {
    const region = regions.get(solid.id)
    if (region === undefined) return []
    return listLeaves(solid).flatMap((each) => {
      const { id, bottomMm, topMm, solidId, leaf } = each
      return topMm <= bottomMm
        ? []
        : [{ ...raise({ id, region, bottomMm, topMm }, place(each, region)), solidId, leaf }]
    })
  }
  const onPlate = (solid: FlatSolid, plateId: string) => {
    const pose = folded.plates.get(plateId)
    return pose === undefined ? [] : make(solid, (leaf, region) => rigidPlacing(pose, leaf, region))
  }
  return [
    ...part.plates.flatMap(({ id, solids }) => solids.flatMap((solid) => onPlate(solid, id))),
    ...part.bands.flatMap((band) => {
      const bent = folded.bands.get(band.id)
      if (bent === undefined) return []
      return make(band, (leaf, region) =>
        bent.angleRad === 0 ? rigidPlacing(bent.pose, leaf, region) : bentPlacing(bent, leaf, region),
      )
    }),
    ...carried.flatMap((body) => onPlate(body, body.plateId)),
  ]
}

const areaMm2 = ({ areaNm2 }: Region) => areaNm2 / NM_PER_MM ** 2

function rigidPlacing(pose: Pose, { bottomMm, topMm }: FlatSolid, region: Region): Placing {
  const point = (flat: Vector) => movePoint(pose, flat)
  const up = turnVector(pose, [0, 0, 1])
  return {
    point,
    curve: (edge, heightMm) =>
      edge.kind === 'line'
        ? { kind: 'line' }
        : {
            kind: 'circle',
            centre: point(inMm(edge.centre, heightMm)),
            axis: edge.sweepRad > 0 ? up : times(up, -1),
            radiusMm: edge.radiusNm / NM_PER_MM,
          },
    wall: (edge) =>
      edge.kind === 'line'
        ? wallPlane(point(inMm(edge.from, bottomMm)), point(inMm(edge.to, bottomMm)), point(inMm(edge.from, topMm)))
        : {
            surface: {
              kind: 'cylinder',
              origin: point(inMm(edge.centre, bottomMm)),
              axis: up,
              radiusMm: edge.radiusNm / NM_PER_MM,
            },
            // A border that turns left bulges out of the area.
            isOutward: edge.sweepRad > 0,
          },
    level: (heightMm) => ({
      surface: { kind: 'plane', origin: point([0, 0, heightMm]), normal: up },
      isOutward: true,
    }),
    volumeMm3: areaMm2(region) * (topMm - bottomMm),
  }
}

function bentPlacing(bent: FoldedBand, { bottomMm, topMm }: FlatSolid, region: Region): Placing {
  const { band, angleRad, frame, pose } = bent
  const point = (flat: Vector) => movePoint(pose, bendPoint(bent, flat))
  /** Signed: positive where the centre lies over the top face. */
  const neutralRadiusMm = band.lengthMm / angleRad
  const radiusMm = (heightMm: number) => Math.abs(neutralRadiusMm - (heightMm - band.neutralMm))
  const axis = turnVector(pose, turnVector(frame, [0, 1, 0]))
  const centreAt = (flat: Vector) => {
    const alongMm = (flat[1] - band.start[1]) * band.across[0] - (flat[0] - band.start[0]) * band.across[1]
    return movePoint(pose, movePoint(frame, [0, alongMm, band.neutralMm + neutralRadiusMm]))
  }
  const acrossMm = ([x, y]: readonly [number, number]) =>
    (x / NM_PER_MM - band.start[0]) * band.across[0] + (y / NM_PER_MM - band.start[1]) * band.across[1]
  /** How a border of the band runs: only one at a slant, or an arc, becomes more than a line or a circle. */
  const kindOf = (edge: LineOrArc): 'along-axis' | 'across' | 'slanted' => {
    if (edge.kind === 'arc') return 'slanted'
    const [dx, dy] = [(edge.to[0] - edge.from[0]) / NM_PER_MM, (edge.to[1] - edge.from[1]) / NM_PER_MM]
    const [ax, ay] = band.across
    if (Math.abs(dx * ax + dy * ay) < STRAIGHT_MM) return 'along-axis'
    return Math.abs(dy * ax - dx * ay) < STRAIGHT_MM ? 'across' : 'slanted'
  }
  const curve = (edge: LineOrArc, heightMm: number): ExactCurve => {
    const kind = kindOf(edge)
    if (kind === 'along-axis') return { kind: 'line' }
    if (kind === 'slanted') {
      return { kind: 'spline', poles: polesOf(edge, heightMm, point, angleRad / band.lengthMm, acrossMm) }
    }
    // From one border to the other the band turns about its axis backwards where the top face is inside.
    const isForward = acrossMm(edge.to) > acrossMm(edge.from) === angleRad > 0
    return {
      kind: 'circle',
      centre: centreAt(inMm(edge.from, heightMm)),
      axis: isForward ? times(axis, -1) : axis,
      radiusMm: radiusMm(heightMm),
    }
  }
  return {
    point,
    curve,
    wall: (edge) => {
      const [low, high] = [curve(edge, bottomMm), curve(edge, topMm)]
      if (low.kind === 'spline' && high.kind === 'spline') {
        return { surface: { kind: 'ruled', low: low.poles, high: high.poles }, isOutward: true }
      }
      const from = point(inMm(edge.from, bottomMm))
      const above = point(inMm(edge.from, topMm))
      if (low.kind === 'line') return wallPlane(from, point(inMm(edge.to, bottomMm)), above)
      // The tangent at its start stands for the arc: both lie in the plane of the circle.
      const [dx, dy] = directionAt(edge, 0)
      const ahead = tangentOf(point, inMm(edge.from, bottomMm), [dx, dy, 0])
      return {
        surface: { kind: 'plane', origin: from, normal: unit(cross(ahead, minus(above, from))) },
        isOutward: true,
      }
    },
    level: (heightMm) => ({
      surface: {
        kind: 'cylinder',
        origin: centreAt([band.start[0], band.start[1], heightMm]),
        axis,
        radiusMm: radiusMm(heightMm),
      },
      // Up is away from the axis where the centre lies under the bottom face.
      isOutward: angleRad < 0,
    }),
    // The height at which a slice keeps its area is the neutral one; the others grow with their radius.
    volumeMm3: (areaMm2(region) * (topMm - bottomMm) * radiusMm((bottomMm + topMm) / 2)) / Math.abs(neutralRadiusMm),
  }
}

/** Step of the difference quotient: half the digits of a double, in millimetres. */
const STEP_MM = 1e-5

/** How fast a bent point moves while the flat one moves along a direction. */
function tangentOf(point: (flat: Vector) => Vector, at: Vector, along: Vector): Vector {
  const [ahead, behind] = [point(plus(at, times(along, STEP_MM))), point(minus(at, times(along, STEP_MM)))]
  return times(minus(ahead, behind), 1 / (2 * STEP_MM))
}

/** Cubic Hermite pieces through points of the bent curve with its tangents, as Bézier poles without the points where pieces meet. */
function polesOf(
  edge: LineOrArc,
  heightMm: number,
  point: (flat: Vector) => Vector,
  radPerMm: number,
  acrossMm: (at: readonly [number, number]) => number,
): readonly Vector[] {
  const longMm = lengthOfEdge(edge) / NM_PER_MM
  const reachMm = edge.kind === 'arc' ? longMm : Math.abs(acrossMm(edge.to) - acrossMm(edge.from))
  const turnRad = reachMm * Math.abs(radPerMm) + (edge.kind === 'arc' ? Math.abs(edge.sweepRad) : 0)
  const count = Math.max(1, Math.ceil(turnRad / PIECE_RAD))
  const at = Array.from({ length: count + 1 }, (_, index) => index / count)
  const points = at.map((share) => point(inMm(exactEnd(edge, share), heightMm)))
  const tangents = at.map((share) => {
    const [dx, dy] = directionAt(edge, share)
    return times(tangentOf(point, inMm(exactEnd(edge, share), heightMm), [dx, dy, 0]), longMm / count)
  })
  const poles: Vector[] = []
  points.forEach((here, index) => {
    const tangent = times(tangents[index] ?? [0, 0, 0], 1 / 3)
    if (index > 0) poles.push(minus(here, tangent))
    if (index === 0 || index === count) poles.push(here)
    if (index < count) poles.push(plus(here, tangent))
  })
  return poles
}

/** The ends as they are drawn: those computed from angle and radius differ by rounding. */
function exactEnd(edge: LineOrArc, share: number): readonly [number, number] {
  if (share === 0) return edge.from
  return share === 1 ? edge.to : pointAt(edge, share)
}
