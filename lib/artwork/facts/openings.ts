import { CopperEdges } from '../copper/edges'
import { Islands } from '../copper/islands'
import { findNarrowPlaces } from '../copper/narrow'
import { findLeastSpace } from '../copper/spacing'
import { NM_PER_MM } from '../limits'
import type { LayerObjects } from '../objects/objects'
import { shapeOfLayer } from '../shape/copper'
import type { ArtworkFileFacts } from './artwork-facts'
import { widthInMm } from './copper-facts'
import { shapeWithin } from './shape-within'

/** Strips of cover are looked for up to this: wider than any method needs. */
const WIDEST_WEB_NM = 1_000_000
/** Openings are looked at up to this width. */
const WIDEST_OPENING_NM = 3_000_000
/** A cover with more objects than this is a picture. */
const MOST_OBJECTS = 200_000

/** What a file of a cover draws, read as openings in it: their area, and the narrowest strip between two. Null where there is nothing, or too much. */
export function measureOpenings(objects: LayerObjects): ArtworkFileFacts['openings'] {
  if (objects.count === 0 || objects.count > MOST_OBJECTS) return null
  // Openings drawn by their borders are what lies within.
  const shape = shapeWithin(objects) ?? shapeOfLayer(objects)
  const islands = new Islands(shape)
  const edges = new CopperEdges(islands)
  const web = findLeastSpace(edges, { farNm: WIDEST_WEB_NM })
  return {
    areaMm2: shape.areaMm2,
    count: islands.count(),
    leastWeb: web === null ? null : { mm: web.spaceNm / NM_PER_MM, atMm: [web.xNm / NM_PER_MM, web.yNm / NM_PER_MM] },
    leastOpening: widthInMm(
      findNarrowPlaces(edges, { farNm: WIDEST_OPENING_NM, longestDotNm: Infinity })?.neck ?? null,
    ),
  }
}
