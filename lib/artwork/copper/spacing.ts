import { type CopperEdges, FAR_NM, toSegment } from './edges'

/** Past this many edges a layer is a picture, or takes longer than the answer is worth. */
const MOST_EDGES = 1_500_000

export interface LeastSpace {
  readonly spaceNm: number
  /** In the middle of the gap. */
  readonly xNm: number
  readonly yNm: number
}

/**
 * The least distance between two islands of copper; null where none is nearer than `farNm` to another, or the layer has too many edges. A slot within one island is no
 * space: nothing there can short.
 *
 * @param only  edges of which the space is asked; all of them where left out
 * @param farNm  what lies farther is far; 0.25 mm where left out
 */
export function findLeastSpace(
  edges: CopperEdges,
  { only, farNm = FAR_NM }: { readonly only?: Iterable<number>; readonly farNm?: number } = {},
): LeastSpace | null {
  if (only === undefined && edges.count > MOST_EDGES) return null
  const { ends, islands } = edges
  let best: LeastSpace | null = null
  let least = farNm
  const consider = (x: number, y: number, other: number) => {
    const [dx, dy] = toSegment(
      x,
      y,
      ends[4 * other] ?? 0,
      ends[4 * other + 1] ?? 0,
      ends[4 * other + 2] ?? 0,
      ends[4 * other + 3] ?? 0,
    )
    const distance = Math.hypot(dx, dy)
    if (distance >= least) return
    least = distance
    best = { spaceNm: distance, xNm: x + dx / 2, yNm: y + dy / 2 }
  }
  for (const edge of only ?? Array.from({ length: edges.count }, (_, at) => at)) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends.subarray(4 * edge, 4 * edge + 4)
    const island = islands[edge]
    // Nearest points of two edges that do not cross are an end of one of them and some point of the other.
    edges.nearEdge(edge, least, (other) => {
      if (islands[other] === island) return
      consider(ax, ay, other)
      consider(bx, by, other)
      consider(ends[4 * other] ?? 0, ends[4 * other + 1] ?? 0, edge)
      consider(ends[4 * other + 2] ?? 0, ends[4 * other + 3] ?? 0, edge)
    })
  }
  return best
}
