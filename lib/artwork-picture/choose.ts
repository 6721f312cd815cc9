import type { DrawnLayer } from './format'

/** What of a layer is drawn in a view. */
export interface Chosen {
  /** Runs of paths, as first and end, in the order of the layer. */
  readonly runs: readonly number[]
  readonly pathCount: number
  readonly triangleCount: number
  /** Pieces and holes in sight that are smaller than a pixel, and so are not drawn. */
  readonly tooSmallCount: number
}

/** A window in the layer's units: least x, least y, greatest x, greatest y. */
type Window = readonly [minX: number, minY: number, maxX: number, maxY: number]

/**
 * The paths of a layer that are drawn: those of tiles that the window meets, whose longer side is at least a pixel. Takes a step for each tile and for each run, and no step for what is too small,
 * since pieces and holes stand by size.
 *
 * @param pixel  side of a pixel in the layer's units
 */
export function choosePaths(layer: DrawnLayer, [minX, minY, maxX, maxY]: Window, pixel: number): Chosen {
  const { tileStarts, tileBoxes, pieceStarts, pathSizes } = layer
  const runs: number[] = []
  let [pathCount, triangleCount, tooSmallCount] = [0, 0, 0]
  const take = (first: number, end: number) => {
    if (runs.at(-1) === first) runs[runs.length - 1] = end
    else runs.push(first, end)
    pathCount += end - first
    triangleCount += countTriangles(layer, first, end)
  }
  for (let tile = 0; tile + 1 < tileStarts.length; tile += 1) {
    const at = 4 * tile
    if ((tileBoxes[at] ?? 0) > maxX || (tileBoxes[at + 2] ?? 0) < minX) continue
    if ((tileBoxes[at + 1] ?? 0) > maxY || (tileBoxes[at + 3] ?? 0) < minY) continue
    const [first = 0, end = 0] = [tileStarts[tile], tileStarts[tile + 1]]
    const large = firstBelow(first, end, (piece) => pathSizes[pieceStarts[piece] ?? 0] ?? 0, pixel)
    tooSmallCount += end - large
    for (let piece = first; piece < large; piece += 1) {
      const [outer = 0, last = 0] = [pieceStarts[piece], pieceStarts[piece + 1]]
      const drawn = firstBelow(outer + 1, last, (path) => pathSizes[path] ?? 0, pixel)
      tooSmallCount += last - drawn
      take(outer, drawn)
    }
  }
  return { runs, pathCount, triangleCount, tooSmallCount }
}

/** A path of n corners is n − 2 triangles about its first corner. */
function countTriangles({ pathStarts }: DrawnLayer, first: number, end: number): number {
  return (pathStarts[end] ?? 0) - (pathStarts[first] ?? 0) - 2 * (end - first)
}

/** The first of a falling row that is below the limit; the end where none is. */
function firstBelow(first: number, end: number, sizeOf: (at: number) => number, limit: number): number {
  let [low, high] = [first, end]
  while (low < high) {
    const middle = (low + high) >> 1
    if (sizeOf(middle) < limit) high = middle
    else low = middle + 1
  }
  return low
}
