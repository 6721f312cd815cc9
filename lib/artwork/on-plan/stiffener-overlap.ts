import { toSegment } from '../copper/edges'
import type { JoiningHole } from '../nets/connect'
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
  for (const [sx, sy, tx, ty] of listEnds(stiffener, part)) {
    for (const { islands, edges } of openings) {
      if (islands.at(Math.round(sx), Math.round(sy)) !== null) return { nm: 0, at: [sx, sy] }
      const consider = (x: number, y: number, [dx, dy]: readonly [number, number], isFromEnd: boolean) => {
        const distance = Math.hypot(dx, dy)
        if (distance >= least) return
        // The coverlay ends under the stiffener there: elsewhere the stiffener does not hold its end.
        const [qx, qy] = isFromEnd ? [x + dx, y + dy] : [x, y]
        if (stiffener.islands.at(Math.round(qx), Math.round(qy)) === null) return
        least = distance
        at = isFromEnd ? [x, y] : [x + dx, y + dy]
      }
      edges.near(sx, sy, least + STEP_NM, (edge) => {
        const [ax = 0, ay = 0, bx = 0, by = 0] = edges.ends.subarray(4 * edge, 4 * edge + 4)
        consider(sx, sy, toSegment(sx, sy, ax, ay, bx, by), true)
        consider(ax, ay, toSegment(ax, ay, sx, sy, tx, ty), false)
        consider(bx, by, toSegment(bx, by, sx, sy, tx, ty), false)
      })
    }
  }
  return at === null ? null : { nm: least, at }
}

/** The wall of the nearest hole to a border of a stiffener on the film; null where none is near. */
export function nearestHoleToStiffener(
  stiffener: Drawn,
  holes: readonly JoiningHole[],
  part: Rings,
): { readonly nm: number; readonly hole: JoiningHole } | null {
  let found: { readonly nm: number; readonly hole: JoiningHole } | null = null
  const ends = listEnds(stiffener, part)
  for (const hole of holes) {
    for (const end of ends) {
      const nm = Math.max(0, Math.hypot(...toSegment(hole.xNm, hole.yNm, ...end)) - hole.diameterNm / 2)
      if (nm < (found?.nm ?? FAR_NM)) found = { nm, hole }
    }
  }
  return found
}

type Piece = readonly [ax: number, ay: number, bx: number, by: number]

/** Short pieces of the outer borders of a stiffener that lie on the film. */
function listEnds({ islands }: Drawn, part: Rings): Piece[] {
  const found: Piece[] = []
  for (const { borders } of islands.tiles) {
    for (const { path, areaNm2 } of borders) {
      if (areaNm2 <= 0) continue
      for (let at = 0; at < path.length; at += 2) {
        const following = (at + 2) % path.length
        const [ax = 0, ay = 0, bx = 0, by = 0] = [path[at], path[at + 1], path[following], path[following + 1]]
        const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / STEP_NM))
        const along = (step: number) => [ax + ((bx - ax) * step) / count, ay + ((by - ay) * step) / count] as const
        for (let step = 0; step < count; step += 1) {
          const [x, y] = along(step + 0.5)
          if (isInside(part, x, y) && distanceToRings(part, x, y) > ALONG_OUTLINE_NM)
            found.push([...along(step), ...along(step + 1)])
        }
      }
    }
  }
  return found
}
