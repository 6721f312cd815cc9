import type { StackedCopper } from '../copper/copper-stack'
import { toSegment } from '../copper/edges'
import { NM_PER_MM } from '../limits'
import type { Rings } from './ground'
import type { OnPlanFacts } from './on-plan-facts'
import { forEdges, isInside } from './rings'

/** Copper farther from the outline than this is far by any rule. */
const FAR_NM = 1_000_000

/**
 * How near copper comes to the outline, 0 where it crosses; null where that is more than 1 mm. Connector ends are left out: their contacts run to the edge on purpose. So
 * is copper beyond the outline that never meets it, such as a frame's text.
 */
export function measureToOutline(
  { edges }: StackedCopper,
  part: Rings,
  fingers: readonly Rings[],
  toMm: (x: number, y: number) => [number, number],
): OnPlanFacts['layers'][number]['toOutline'] {
  let least = FAR_NM
  let at: [number, number] | null = null
  const consider = (x: number, y: number, dx: number, dy: number) => {
    const distance = Math.hypot(dx, dy)
    if (distance >= least) return
    least = distance
    at = [x, y]
  }
  forEdges(part, (ax, ay, bx, by) => {
    const length = Math.hypot(bx - ax, by - ay)
    const count = Math.max(1, Math.ceil(length / FAR_NM))
    const seen = new Set<number>()
    for (let step = 0; step < count; step += 1) {
      const middle = (step + 0.5) / count
      edges.near(ax + (bx - ax) * middle, ay + (by - ay) * middle, length / count / 2 + least, (edge) => {
        if (seen.has(edge)) return
        seen.add(edge)
        const [cx = 0, cy = 0, dx = 0, dy = 0] = edges.ends.subarray(4 * edge, 4 * edge + 4)
        const [mx, my] = [(cx + dx) / 2, (cy + dy) / 2]
        if (fingers.some((rings) => isInside(rings, mx, my))) return
        if (crosses(ax, ay, bx, by, cx, cy, dx, dy)) {
          consider(mx, my, 0, 0)
          return
        }
        if (!isInside(part, mx, my)) return
        consider(cx, cy, ...toSegment(cx, cy, ax, ay, bx, by))
        consider(dx, dy, ...toSegment(dx, dy, ax, ay, bx, by))
        consider(ax, ay, ...toSegment(ax, ay, cx, cy, dx, dy))
      })
    }
  })
  return at === null ? null : { mm: least / NM_PER_MM, atMm: toMm(...(at as [number, number])) }
}

function crosses(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean {
  const side = (x: number, y: number) => Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax))
  const other = (x: number, y: number) => Math.sign((dx - cx) * (y - cy) - (dy - cy) * (x - cx))
  return side(cx, cy) * side(dx, dy) < 0 && other(ax, ay) * other(bx, by) < 0
}
