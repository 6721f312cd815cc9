import { boundsOf, edgesOfLoop, edgesOfPath, type LineOrArc } from '@/lib/geometry'
import { NM_PER_MM, type Plan, pathInNm } from '@/lib/plan'
import { roundPx } from '../picture'

export type Point = readonly [x: number, y: number]

/** From a plan's millimetres, y up, to a picture's measures, y down. */
export interface PlanFrame {
  /** Picture measures in one millimetre of the part. */
  readonly factor: number
  readonly toPicture: (mm: Point) => Point
}

/** Least and greatest coordinates of the outline, in mm; null without one. */
export function boundsOfPlan(plan: Plan): { readonly minMm: Point; readonly maxMm: Point } | null {
  if (plan.outline === null) return null
  const { minX, minY, maxX, maxY } = boundsOf(edgesOfLoop(pathInNm(plan.outline)))
  return { minMm: [minX / NM_PER_MM, minY / NM_PER_MM], maxMm: [maxX / NM_PER_MM, maxY / NM_PER_MM] }
}

export function makePlanFrame(leftTop: Point, upperLeftMm: Point, factor: number): PlanFrame {
  return {
    factor,
    toPicture: ([x, y]) => [leftTop[0] + (x - upperLeftMm[0]) * factor, leftTop[1] + (upperLeftMm[1] - y) * factor],
  }
}

type Nodes = NonNullable<Plan['outline']>

/** SVG path of a plan's path, arcs as arcs. */
export const pathOfNodes = (nodes: Nodes, frame: PlanFrame, isClosed: boolean): string =>
  pathOfEdges(isClosed ? edgesOfLoop(pathInNm(nodes)) : edgesOfPath(pathInNm(nodes)), frame, isClosed)

export function pathOfEdges(edges: readonly LineOrArc[], frame: PlanFrame, isClosed: boolean): string {
  const place = ([x, y]: readonly [number, number]) => {
    const [px, py] = frame.toPicture([x / NM_PER_MM, y / NM_PER_MM])
    return `${roundPx(px)},${roundPx(py)}`
  }
  const [first] = edges
  if (first === undefined) return ''
  const ways = edges.map((edge) => {
    if (edge.kind === 'line') return `L${place(edge.to)}`
    const radius = roundPx((edge.radiusNm / NM_PER_MM) * frame.factor)
    // Seen with y down, a counter-clockwise arc still turns to the left: sweep 0.
    return `A${radius},${radius} 0 0 ${edge.sweepRad > 0 ? 0 : 1} ${place(edge.to)}`
  })
  return `M${place(first.from)}${ways.join('')}${isClosed ? 'Z' : ''}`
}

/** A circle as a line like others, which names may interrupt. */
export function pathOfCircle([x, y]: Point, radius: number): string {
  const half = (to: number) => `A${roundPx(radius)},${roundPx(radius)} 0 0 1 ${roundPx(to)},${roundPx(y)}`
  return `M${roundPx(x - radius)},${roundPx(y)}${half(x + radius)}${half(x - radius)}`
}

/** Lines at 45 degrees within a closed polygon, as one path. */
export function hatchOf(corners: readonly Point[], spacing: number): string {
  const levels = corners.map(([x, y]) => x + y)
  const [low, high] = [Math.min(...levels), Math.max(...levels)]
  let path = ''
  for (let level = Math.ceil(low / spacing) * spacing; level < high; level += spacing) {
    const cuts = corners
      .flatMap((corner, at): Point[] => {
        const next = corners[(at + 1) % corners.length] ?? corner
        const [a, b] = [corner[0] + corner[1] - level, next[0] + next[1] - level]
        if (a > 0 === b > 0) return []
        const share = a / (a - b)
        return [[corner[0] + share * (next[0] - corner[0]), corner[1] + share * (next[1] - corner[1])]]
      })
      .sort((one, other) => one[0] - other[0])
    for (let at = 0; at + 1 < cuts.length; at += 2) {
      const [from, to] = [cuts[at] as Point, cuts[at + 1] as Point]
      path += `M${roundPx(from[0])},${roundPx(from[1])}L${roundPx(to[0])},${roundPx(to[1])}`
    }
  }
  return path
}
