import { CopperEdges } from '../copper/edges'
import { Islands } from '../copper/islands'
import { shapeWithin } from '../facts/shape-within'
import { NM_PER_MM } from '../limits'
import type { ArtworkSet, SetFile } from '../set/read-set'
import { shapeOfLayer } from '../shape/copper'

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
/** What the files of a role cover: areas, or what lies within lines that close. */
export function listDrawn(set: ArtworkSet, role: 'coverlay' | 'stiffener'): Drawn[] {
  return set.files.flatMap(({ name, reading, role: own }): Drawn[] => {
    if (own.role !== role || reading.kind !== 'gerber') return []
    const { objects } = reading
    if (objects.count === 0 || objects.count > MOST_OBJECTS) return []
    const shape = shapeWithin(objects) ?? shapeOfLayer(objects)
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
