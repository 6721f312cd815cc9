import { NM_PER_MM } from '../limits'
import { FLASH, type LayerObjects, REGION } from '../objects/objects'
import { boxOf, isInside, windRings } from '../on-plan/rings'
import type { LayerShape } from '../shape/copper'
import { areaNm2 } from '../shape/path'
import { ringsOfOutline } from './outline-loops'

/** Arcs that are drawn as a line round an area are followed this nearly. */
const OUTLINE_TOLERANCE_NM = 1000
/** What lies within lines that close; null where something else is drawn, or they do not close. */
export function shapeWithin(objects: LayerObjects): LayerShape | null {
  const kinds = objects.kinds.subarray(0, objects.count)
  if (kinds.includes(REGION) || kinds.includes(FLASH) || objects.isClear.includes(1)) return null
  const rings = ringsOfOutline(objects, OUTLINE_TOLERANCE_NM)
  if (rings.length === 0) return null
  // Within an odd number of them: a line within another is the border of a cut-out.
  const wound = rings.map((ring) => {
    const depth = rings.filter((other) => other !== ring && isInside([other], ring[0] ?? 0, ring[1] ?? 0)).length
    const [outer = [], hole = []] = windRings([ring, ring])
    return depth % 2 === 0 ? outer : hole
  })
  const [minX, minY, maxX, maxY] = boxOf(rings)
  const rounded = wound.map((ring) => ring.map(Math.round))
  const areaMm2 = rounded.reduce((sum, ring) => sum + areaNm2(ring), 0) / NM_PER_MM ** 2
  // A rim of its own keeps borders off the tile's.
  return {
    tiles: [{ extentNm: [minX - 1000, minY - 1000, maxX + 1000, maxY + 1000], paths: rounded }],
    areaMm2,
    toleranceNm: OUTLINE_TOLERANCE_NM,
  }
}
