import { CopperEdges } from '../copper/edges'
import { Islands } from '../copper/islands'
import { ringsOfOutline } from '../facts/outline-loops'
import { NM_PER_MM } from '../limits'
import { type LayerObjects, REGION } from '../objects/objects'
import type { ArtworkSet, SetFile } from '../set/read-set'
import { type LayerShape, shapeOfLayer } from '../shape/copper'
import { areaNm2 } from '../shape/path'
import { boxOf, isInside, windRings } from './rings'

/** What a file covers, with its borders. */
export interface Drawn {
  readonly fileName: string
  readonly side: SetFile['role']['side']
  readonly islands: Islands
  readonly edges: CopperEdges
  readonly areaNm2: number
}

/** A cover or a stiffener with more objects than this is a picture. */
const MOST_OBJECTS = 100_000
/** Arcs that are drawn as a line round an area are followed this nearly. */
const OUTLINE_TOLERANCE_NM = 1000
/** @param mayBeOutlined  a closed line is the border of an area: stiffeners are drawn in either way */
export function listDrawn(set: ArtworkSet, role: 'coverlay' | 'stiffener', mayBeOutlined: boolean): Drawn[] {
  return set.files.flatMap(({ name, reading, role: own }): Drawn[] => {
    if (own.role !== role || reading.kind !== 'gerber') return []
    const { objects } = reading
    if (objects.count === 0 || objects.count > MOST_OBJECTS) return []
    const shape = (mayBeOutlined ? shapeOfOutline(objects) : null) ?? shapeOfLayer(objects)
    const islands = new Islands(shape)
    return [
      {
        fileName: name,
        side: own.side,
        islands,
        edges: new CopperEdges(islands),
        areaNm2: shape.areaMm2 * NM_PER_MM ** 2,
      },
    ]
  })
}

/** What lies within lines that close; null where something else is drawn, or they do not close. */
function shapeOfOutline(objects: LayerObjects): LayerShape | null {
  if (objects.kinds.subarray(0, objects.count).includes(REGION) || objects.isClear.includes(1)) return null
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
