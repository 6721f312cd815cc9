import type { StackedCopper } from '../copper/copper-stack'
import { findHatch } from '../copper/hatch'
import { NM_PER_MM } from '../limits'
import { grow, intersect, unite } from '../shape/boolean'
import { areaNm2, type FlatPath, translate } from '../shape/path'
import { areaOfPaths, copperIn } from './cover'
import type { Rings } from './ground'
import type { OnPlanHatch } from './on-plan-facts'
import { areaOfRings, boxOf, windRings } from './rings'

type ToMm = (x: number, y: number) => [number, number]

/** Copper that is wider than this in every direction is solid: bars of hatches are narrower, and a wider patch bends as a sheet. Our choice. */
const SOLID_NM = 2_000_000

/**
 * The hatch of a layer where these edges lie.
 *
 * @param axisDeg  what its angle is told from, in the file's coordinates
 */
export function describeHatch(
  layer: StackedCopper,
  edges: Iterable<number>,
  axisDeg: number,
  toMm: ToMm,
): OnPlanHatch | null {
  const hatch = findHatch(layer.edges, edges)
  if (hatch === null) return null
  const turned = (((hatch.turnDeg - axisDeg) % 90) + 90) % 90
  return {
    barMm: hatch.barNm / NM_PER_MM,
    pitchMm: hatch.pitchNm / NM_PER_MM,
    angleDeg: Math.min(turned, 90 - turned),
    openFraction: hatch.openFraction,
    atMm: toMm(...hatch.at),
  }
}

/** How much of a place lies under copper that is solid, and somewhere in the largest patch of it. Copper beyond the border counts too: a bend is narrower than a patch may be. */
export function measureSolid(
  layer: StackedCopper,
  rings: Rings,
  toMm: ToMm,
): { fraction: number; atMm: [number, number] } | null {
  const whole = areaOfRings(rings)
  if (whole === 0) return null
  const [minX, minY, maxX, maxY] = boxOf(rings)
  const [left, low, right, high] = [minX - SOLID_NM, minY - SOLID_NM, maxX + SOLID_NM, maxY + SOLID_NM]
  const [dx, dy] = [Math.round((left + right) / 2), Math.round((low + high) / 2)]
  const near = (path: FlatPath) => translate(path, -dx, -dy)
  const copper = unite(copperIn(layer, [[left, low, right, low, right, high, left, high]]).map(near))
  const solid = grow(grow(copper, -SOLID_NM / 2), SOLID_NM / 2)
  const inside = intersect(solid, windRings(rings).map(near))
  const areaNm = areaOfPaths(inside)
  if (areaNm <= 0) return null
  const largest = inside.reduce((most, path) => (areaNm2(path) > areaNm2(most) ? path : most))
  return { fraction: Math.min(1, areaNm / whole), atMm: toMm(...middleOf(translate(largest, dx, dy))) }
}

/** Of its corners. */
function middleOf(path: FlatPath): [number, number] {
  let [x, y] = [0, 0]
  for (let at = 0; at + 1 < path.length; at += 2) {
    x += path[at] ?? 0
    y += path[at + 1] ?? 0
  }
  return [(2 * x) / path.length, (2 * y) / path.length]
}
