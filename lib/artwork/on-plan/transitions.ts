import type { CopperStack } from '../copper/copper-stack'
import { NM_PER_MM } from '../limits'
import type { JoiningHole } from '../nets/connect'
import { FLASH, NUMBERS_PER_OBJECT } from '../objects/objects'
import { extentOf } from '../shape/extents'
import { Outlines } from '../shape/outlines'
import type { PlanGround, Rings } from './ground'
import type { OnPlanFacts } from './on-plan-facts'
import { distanceToRings, forEdges, isInside } from './rings'

type ToMm = (x: number, y: number) => [number, number]
type Own = (rings: Rings) => number[][]
type NearHole = NonNullable<OnPlanFacts['platedHoleToOutline']>

/** A hole farther from the outline than this is far by any rule. */
const FAR_FROM_OUTLINE_NM = 1_000_000
/** The same of a rigid border. */
const FAR_FROM_BORDER_NM = 10_000_000
/** Borders of two zones this near to each other are one. */
const SAME_BORDER_NM = 2000
/** Arcs of lands are followed this nearly. */
const TOLERANCE_NM = 1000

/** From the wall of a plated hole to the outline and cut-outs. What lies off the part is none of its holes. */
export function nearestHoleToOutline(holes: readonly JoiningHole[], part: Rings, toMm: ToMm): NearHole | null {
  let found: NearHole | null = null
  for (const { xNm, yNm, diameterNm } of holes) {
    const middle = distanceToRings(part, xNm, yNm)
    if (!isInside(part, xNm, yNm) && middle > diameterNm / 2) continue
    const wall = isInside(part, xNm, yNm) ? Math.max(0, middle - diameterNm / 2) : 0
    if (wall > FAR_FROM_OUTLINE_NM || (found !== null && wall / NM_PER_MM >= found.mm)) continue
    found = { mm: wall / NM_PER_MM, atMm: toMm(xNm, yNm), diameterMm: diameterNm / NM_PER_MM }
  }
  return found
}

/** The nearest hole, and the nearest land without one, to the borders between rigid zones and others; null where the plan has no such border. */
export function nearestToTransitions(
  { layers }: CopperStack,
  holes: readonly JoiningHole[],
  ground: PlanGround,
  own: Own,
  toMm: ToMm,
): OnPlanFacts['transitions'] {
  const borders = listBorders(ground).map((border) => own([border])[0] ?? [])
  if (borders.length === 0) return null
  const distance = (x: number, y: number) => distanceToRings(borders, x, y)
  let hole: NonNullable<OnPlanFacts['transitions']>['hole'] = null
  for (const { xNm, yNm, diameterNm } of holes) {
    const wall = Math.max(0, distance(xNm, yNm) - diameterNm / 2)
    if (wall > FAR_FROM_BORDER_NM || (hole !== null && wall / NM_PER_MM >= hole.mm)) continue
    hole = { mm: wall / NM_PER_MM, atMm: toMm(xNm, yNm), diameterMm: diameterNm / NM_PER_MM }
  }
  let land: NonNullable<OnPlanFacts['transitions']>['land'] = null
  for (const { objects, fileName } of layers) {
    const outlines = new Outlines(objects, TOLERANCE_NM)
    for (let object = 0; object < objects.count; object += 1) {
      if (objects.kinds[object] !== FLASH || objects.isClear[object] === 1) continue
      const extent = extentOf(objects, object)
      if (extent === null) continue
      const [minX, minY, maxX, maxY] = extent
      const from = object * NUMBERS_PER_OBJECT
      const [x = 0, y = 0] = objects.numbers.subarray(from, from + 2)
      const least = (land?.mm ?? FAR_FROM_BORDER_NM / NM_PER_MM) * NM_PER_MM
      if (distance(x, y) - Math.hypot(maxX - minX, maxY - minY) > least) continue
      if (holes.some(({ xNm, yNm }) => xNm >= minX && xNm <= maxX && yNm >= minY && yNm <= maxY)) continue
      const nm = distanceOfLand(borders, outlines.of(object))
      if (nm < least) land = { mm: nm / NM_PER_MM, atMm: toMm(x, y), fileName }
    }
  }
  return { hole, land }
}

/** 0 where a border runs through the land. */
function distanceOfLand(borders: Rings, paths: Rings): number {
  let least = Infinity
  for (const path of paths)
    for (let at = 0; at + 1 < path.length; at += 2)
      least = Math.min(least, distanceToRings(borders, path[at] ?? 0, path[at + 1] ?? 0))
  forEdges(borders, (ax, ay, bx, by) => {
    if (isInside(paths, ax, ay) || isInside(paths, (ax + bx) / 2, (ay + by) / 2)) least = 0
    else least = Math.min(least, distanceToRings(paths, ax, ay))
  })
  return crosses(borders, paths) ? 0 : least
}

function crosses(borders: Rings, paths: Rings): boolean {
  let isCrossed = false
  forEdges(borders, (ax, ay, bx, by) => {
    forEdges(paths, (cx, cy, dx, dy) => {
      const side = (x: number, y: number) => Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax))
      const other = (x: number, y: number) => Math.sign((dx - cx) * (y - cy) - (dy - cy) * (x - cx))
      if (side(cx, cy) * side(dx, dy) < 0 && other(ax, ay) * other(bx, by) < 0) isCrossed = true
    })
  })
  return isCrossed
}

/** Edges that a rigid zone shares with another, each as a ring of two corners. */
function listBorders({ zones }: PlanGround): number[][] {
  const others = zones.filter(({ isRigid }) => !isRigid)
  const found: number[][] = []
  for (const { rings } of zones.filter(({ isRigid }) => isRigid))
    forEdges(rings, (ax, ay, bx, by) => {
      const [x, y] = [(ax + bx) / 2, (ay + by) / 2]
      const isShared = (other: Rings) =>
        (
          [
            [ax, ay],
            [x, y],
            [bx, by],
          ] as const
        ).every(([px, py]) => distanceToRings(other, px, py) <= SAME_BORDER_NM)
      if (others.some((other) => isShared(other.rings))) found.push([ax, ay, bx, by])
    })
  return found
}
