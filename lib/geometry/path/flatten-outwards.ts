import { type LineOrArc, pointAt } from './edge'

/**
 * Corners of a polygon that holds all of what lies to the left of a loop: chords where an arc bends away from it, tangents where it bulges. It strays
 * from the arcs by no more than the error, plus whatever rounding the caller applies to the corners.
 */
export function flattenOutwards(edges: readonly LineOrArc[], errorNm: number): (readonly [number, number])[] {
  return edges.flatMap((edge): (readonly [number, number])[] => {
    if (edge.kind === 'line') return [edge.from]
    const { radiusNm, sweepRad, centre, startRad } = edge
    const isBulge = sweepRad > 0
    const reach = isBulge ? radiusNm / (radiusNm + errorNm) : 1 - errorNm / radiusNm
    const step = 2 * Math.acos(Math.min(1, Math.max(0, reach)))
    const pieces = Math.max(1, Math.ceil(Math.abs(sweepRad) / Math.max(step, 1e-3)))
    if (!isBulge) {
      return Array.from({ length: pieces }, (_, at) => (at === 0 ? edge.from : pointAt(edge, at / pieces)))
    }
    const far = radiusNm / Math.cos(sweepRad / pieces / 2)
    const corners = Array.from({ length: pieces }, (_, at): readonly [number, number] => {
      const rad = startRad + (sweepRad * (at + 0.5)) / pieces
      return [centre[0] + far * Math.cos(rad), centre[1] + far * Math.sin(rad)]
    })
    return [edge.from, ...corners]
  })
}
