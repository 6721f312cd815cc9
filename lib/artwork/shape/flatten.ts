import type { FlatPath } from './path'

/**
 * Arcs become chords whose corners lie a little outside and whose middles lie a little inside the arc, so that the area stays what it was and no point of either is
 * farther than the tolerance from the other. Corners of a whole circle are the same for every circle of one size, wherever it is.
 */
export function segmentsOf(sweepRad: number, radiusNm: number, toleranceNm: number): number {
  // Of a chord's sagitta two thirds lie outside and a third inside once the area is kept.
  const sagitta = Math.min(1.5 * toleranceNm, radiusNm)
  const widest = radiusNm <= 0 ? Math.PI : 2 * Math.acos(1 - sagitta / radiusNm)
  return Math.max(Math.ceil(sweepRad / Math.min(widest, Math.PI / 4) - 1e-9), 1)
}

/** The radius of a polygon's corners whose area is that of the circle. */
const cornerRadius = (radiusNm: number, angleRad: number): number => radiusNm * Math.sqrt(angleRad / Math.sin(angleRad))

export function circlePath(xNm: number, yNm: number, radiusNm: number, toleranceNm: number): FlatPath {
  const count = Math.max(8, segmentsOf(2 * Math.PI, radiusNm, toleranceNm))
  const step = (2 * Math.PI) / count
  const radius = cornerRadius(radiusNm, step)
  const path: FlatPath = []
  for (let at = 0; at < count; at += 1)
    path.push(xNm + radius * Math.cos(at * step), yNm + radius * Math.sin(at * step))
  return path
}

/**
 * Adds the corners of an arc to a path, without its two ends.
 * @param sweepRad  positive against the clock
 */
export function addArc(
  path: FlatPath,
  xNm: number,
  yNm: number,
  radiusNm: number,
  fromRad: number,
  sweepRad: number,
  toleranceNm: number,
): void {
  const count = segmentsOf(Math.abs(sweepRad), radiusNm, toleranceNm)
  const step = sweepRad / count
  const radius = cornerRadius(radiusNm, Math.abs(step))
  for (let at = 1; at < count; at += 1)
    path.push(xNm + radius * Math.cos(fromRad + at * step), yNm + radius * Math.sin(fromRad + at * step))
}
