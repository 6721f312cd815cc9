import type { StackedCopper } from '../copper/copper-stack'
import { intersect } from '../shape/boolean'
import { areaNm2, type FlatPath, translate } from '../shape/path'
import type { Rings } from './ground'
import { boxOf, windRings } from './rings'

/** What a layer covers within a piece of the plane: its paths, tile by tile. */
export function copperIn(layer: StackedCopper, rings: Rings): FlatPath[] {
  const wound = windRings(rings)
  const [minX, minY, maxX, maxY] = boxOf(rings)
  return layer.islands.tiles.flatMap(({ extentNm, borders }) => {
    if (extentNm[0] > maxX || extentNm[2] < minX || extentNm[1] > maxY || extentNm[3] < minY) return []
    const [dx, dy] = [Math.round((extentNm[0] + extentNm[2]) / 2), Math.round((extentNm[1] + extentNm[3]) / 2)]
    const near = (path: FlatPath) => translate(path, -dx, -dy)
    return intersect(
      borders.map(({ path }) => near(path)),
      wound.map(near),
    ).map((path) => translate(path, dx, dy))
  })
}

export const areaOfPaths = (paths: readonly FlatPath[]): number => paths.reduce((sum, path) => sum + areaNm2(path), 0)

/** What two sets of paths cover in common. */
export function overlapOf(paths: readonly FlatPath[], others: readonly FlatPath[]): number {
  const [x = 0, y = 0] = paths[0] ?? []
  const near = (path: FlatPath) => translate(path, -x, -y)
  return areaOfPaths(intersect(paths.map(near), others.map(near)))
}
