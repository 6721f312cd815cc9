import type { Drawn } from './drawn'
import type { Rings } from './ground'
import { distanceToRings, isInside } from './rings'

/** A border of a stiffener this near to the outline follows it, and ends nothing on the film. Stiffeners are set back by up to as much. Our choice. */
const ALONG_OUTLINE_NM = 400_000
/** Overlap is looked for up to this. */
const FAR_NM = 5_000_000
/** Long borders are looked at in steps of this. */
const STEP_NM = 100_000

/**
 * How far a stiffener reaches past the ends of the coverlay: from its borders on the film to the borders of openings beneath it, or over it, the nearest of all. 0 where it ends
 * within an opening: there the film lies bare between both ends. Null where no opening lies near its borders. Windows in a stiffener are left out: they are cut for parts.
 */
export function nearestOverlap(
  stiffener: Drawn,
  openings: readonly Drawn[],
  part: Rings,
): { readonly nm: number; readonly at: readonly [number, number] } | null {
  let least = FAR_NM
  let at: readonly [number, number] | null = null
  for (const [x, y] of listEnds(stiffener, part)) {
    for (const { islands, edges } of openings) {
      if (islands.at(Math.round(x), Math.round(y)) !== null) return { nm: 0, at: [x, y] }
      edges.near(x, y, least, (edge) => {
        const [ax = 0, ay = 0, bx = 0, by = 0] = edges.ends.subarray(4 * edge, 4 * edge + 4)
        const distance = edges.distanceTo(edge, x, y)
        if (distance >= least) return
        // The coverlay ends under the stiffener there: elsewhere the stiffener does not hold its end.
        if (stiffener.islands.at(Math.round((ax + bx) / 2), Math.round((ay + by) / 2)) === null) return
        least = distance
        at = [x, y]
      })
    }
  }
  return at === null ? null : { nm: least, at }
}

/** Places along the outer borders of a stiffener that lie on the film. */
function listEnds({ islands }: Drawn, part: Rings): [number, number][] {
  const found: [number, number][] = []
  for (const { borders } of islands.tiles) {
    for (const { path, areaNm2 } of borders) {
      if (areaNm2 <= 0) continue
      for (let at = 0; at < path.length; at += 2) {
        const following = (at + 2) % path.length
        const [ax = 0, ay = 0, bx = 0, by = 0] = [path[at], path[at + 1], path[following], path[following + 1]]
        const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / STEP_NM))
        for (let step = 0; step < count; step += 1) {
          const [x, y] = [ax + ((bx - ax) * step) / count, ay + ((by - ay) * step) / count]
          if (isInside(part, x, y) && distanceToRings(part, x, y) > ALONG_OUTLINE_NM) found.push([x, y])
        }
      }
    }
  }
  return found
}
