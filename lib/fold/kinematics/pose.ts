import { cross, dot, lengthOf, minus, plus, type Vector } from './vector'

/** Where a rigid piece of the flat part comes to lie: the images of the three axes, and of the origin. */
export interface Pose {
  readonly axes: readonly [Vector, Vector, Vector]
  readonly origin: Vector
}

export const FLAT_POSE: Pose = {
  axes: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  origin: [0, 0, 0],
}

export function turnVector({ axes }: Pose, [x, y, z]: Vector): Vector {
  const [a, b, c] = axes
  return [a[0] * x + b[0] * y + c[0] * z, a[1] * x + b[1] * y + c[1] * z, a[2] * x + b[2] * y + c[2] * z]
}

export function movePoint(pose: Pose, point: Vector): Vector {
  return plus(turnVector(pose, point), pose.origin)
}

/** First `inner`, then `outer`. */
export function composePoses(outer: Pose, inner: Pose): Pose {
  const [a, b, c] = inner.axes
  return {
    axes: [turnVector(outer, a), turnVector(outer, b), turnVector(outer, c)],
    origin: movePoint(outer, inner.origin),
  }
}

/** The way back: the axes are orthonormal, so their transpose undoes them. */
export function invertPose({ axes, origin }: Pose): Pose {
  const [a, b, c] = axes
  const back = (vector: Vector): Vector => [dot(a, vector), dot(b, vector), dot(c, vector)]
  const [x, y, z] = back(origin)
  return {
    axes: [
      [a[0], b[0], c[0]],
      [a[1], b[1], c[1]],
      [a[2], b[2], c[2]],
    ],
    origin: [0 - x, 0 - y, 0 - z],
  }
}

/** How far two poses of one piece are apart: the way between the images of a point, and the angle between their axes. */
export function measureGap(
  first: Pose,
  second: Pose,
  atPoint: Vector,
): { readonly offsetMm: Vector; readonly turnDeg: Vector } {
  return {
    offsetMm: minus(movePoint(second, atPoint), movePoint(first, atPoint)),
    turnDeg: findTurn(first, second),
  }
}

/** The rotation from `first` to `second` as a vector along its axis, as long as its angle in degrees (0 to 180). */
function findTurn(first: Pose, second: Pose): Vector {
  // Twice the sine of the angle along the axis: half the sum of the cross products of each axis and its image.
  const sum = first.axes.reduce<Vector>(
    (total, axis, index) => plus(total, cross(axis, second.axes[index as 0])),
    [0, 0, 0],
  )
  const sine = lengthOf(sum) / 2
  const cosine = (first.axes.reduce((total, axis, index) => total + dot(axis, second.axes[index as 0]), 0) - 1) / 2
  const angleDeg = (Math.atan2(sine, cosine) * 180) / Math.PI
  if (sine > 1e-9)
    return [(sum[0] / 2 / sine) * angleDeg, (sum[1] / 2 / sine) * angleDeg, (sum[2] / 2 / sine) * angleDeg]
  if (cosine > 0) return [0, 0, 0]
  return halfTurnAxis(first, second, angleDeg)
}

/** At half a turn the sine says nothing; the axis is what the sum of both images of an axis points along. */
function halfTurnAxis(first: Pose, second: Pose, angleDeg: number): Vector {
  const sums = first.axes.map((axis, index) => plus(axis, second.axes[index as 0]))
  const longest = sums.reduce((best, sum) => (lengthOf(sum) > lengthOf(best) ? sum : best))
  const size = lengthOf(longest)
  return [(longest[0] / size) * angleDeg, (longest[1] / size) * angleDeg, (longest[2] / size) * angleDeg]
}
