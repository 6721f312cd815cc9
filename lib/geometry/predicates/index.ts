import { incircle, orient2d } from 'robust-predicates'

/**
 * A place in the plane in whole nanometres, x to the right and y up. An inch is 25 400 000 nm, so lengths in mm, um, mil and
 * inches to six, three, three and six decimals are all whole here.
 */
export type PointNm = readonly [xNm: number, yNm: number]

/**
 * Signs of geometry, exact for any doubles (adaptive arithmetic after Shewchuk 1997, by robust-predicates, which takes y as pointing
 * down: its signs are turned here once, and nowhere else is it imported).
 */
export type Side = -1 | 0 | 1

/** 1 where `point` lies to the left of the way from `from` to `to`, -1 to the right, 0 in line. */
export function sideOfLine(from: PointNm, to: PointNm, point: PointNm): Side {
  return sign(-orient2d(from[0], from[1], to[0], to[1], point[0], point[1]))
}

/** Twice the signed area of a, b, c, positive for a left turn; its sign is exact, its value good to a few units in the last place. */
export function crossOf(a: PointNm, b: PointNm, c: PointNm): number {
  return -orient2d(a[0], a[1], b[0], b[1], c[0], c[1])
}

/** 1 where `point` lies inside the circle through a, b, c, -1 outside, 0 on it, in whichever order the three come. They are not in line. */
export function sideOfCircle(a: PointNm, b: PointNm, c: PointNm, point: PointNm): Side {
  const turn = sideOfLine(a, b, c)
  return sign(turn * incircle(a[0], a[1], b[0], b[1], c[0], c[1], point[0], point[1]) * INSIDE_OF_LEFT_TURN)
}

/** What incircle gives for a point inside of three that turn left: measured, and held by a test. */
const INSIDE_OF_LEFT_TURN = 1

function sign(value: number): Side {
  return value > 0 ? 1 : value < 0 ? -1 : 0
}
