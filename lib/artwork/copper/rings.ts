import type { CopperEdges } from './edges'
import type { Islands } from './islands'

/** Land beyond this round a hole is wide by any rule: it is not measured further. */
const WIDE_RING_NM = 1_000_000

export interface Ring {
  readonly xNm: number
  readonly yNm: number
  readonly holeNm: number
  /** From the hole's wall to the nearest edge of copper; below 0 where the hole breaks out of its land. At most 1 mm. */
  readonly ringNm: number
}

/** The land round a hole on a layer; null where the layer has no copper at the hole. */
export function measureRing(
  islands: Islands,
  edges: CopperEdges,
  xNm: number,
  yNm: number,
  holeNm: number,
): Ring | null {
  const radius = holeNm / 2
  const centre = islands.at(xNm, yNm)
  const touched = rimOf(xNm, yNm, radius + 1000).some(([x, y]) => islands.at(x, y) !== null)
  if (centre === null && !touched) return null
  let nearest = radius + WIDE_RING_NM
  edges.near(xNm, yNm, nearest, (edge) => {
    const distance = edges.distanceTo(edge, xNm, yNm)
    // A land that is drawn with its hole has an edge within the drill: that copper is drilled away.
    if (centre === null && distance < radius * DRAWN_HOLE) return
    if (distance < nearest) nearest = distance
  })
  return { xNm, yNm, holeNm, ringNm: nearest - radius }
}

/** A drawn hole is at most as wide as its drill, apart from rounding. */
const DRAWN_HOLE = 1.001

/** Places round a hole's wall. */
export function rimOf(xNm: number, yNm: number, radiusNm: number): (readonly [number, number])[] {
  return Array.from({ length: 16 }, (_, at) => {
    const rad = (at * Math.PI) / 8
    return [Math.round(xNm + radiusNm * Math.cos(rad)), Math.round(yNm + radiusNm * Math.sin(rad))] as const
  })
}
