import type { ApertureUse } from '../apertures/aperture'

/** Kinds of objects, as they stand in `kinds`. */
export const FLASH = 1
export const LINE = 2
/** Arcs along the given side: with the clock as seen on the top face, and against it. */
export const ARC_CLOCKWISE = 3
export const ARC_COUNTERCLOCKWISE = 4
export const REGION = 5

/** Numbers of an object in `numbers`. */
export const NUMBERS_PER_OBJECT = 6
/** Numbers of a contour's corner in `corners`: where it is, and the centre of the arc that leads to it. */
export const NUMBERS_PER_CORNER = 4

/**
 * The objects of one layer in the order of the file, in flat arrays (one entry an object) that threads can hand over. Coordinates are whole nanometres,
 * x to the right and y up as in the file.
 *
 * `numbers` of a flash: x, y. Of a line: from x, from y, to x, to y. Of an arc: the same and its centre; where from and to are one point it is a full circle.
 * Of a region: its first contour and how many it has.
 */
export interface LayerObjects {
  readonly count: number
  readonly kinds: Uint8Array
  /** 1 where the object takes away what came before it. */
  readonly isClear: Uint8Array
  readonly numbers: Int32Array
  /** Which of `apertures` drew it; -1 for a region. */
  readonly apertureAt: Int32Array
  /** Which of `attributeSets` it carries. */
  readonly attributesAt: Int32Array
  /** The line of the file that drew it; of the flash or repeat for what a block was unfolded to. */
  readonly lines: Uint32Array
  /** Where each contour's corners begin, and one more for the end. */
  readonly contourStarts: Uint32Array
  /** x, y, centre x, centre y of each corner. */
  readonly corners: Int32Array
  /** How the edge that ends in the corner runs: LINE or one of the arcs; 0 for a contour's first corner. */
  readonly cornerKinds: Uint8Array
  readonly apertures: readonly ApertureUse[]
  /** Attributes as written, `name,value,value`. The first set is empty. */
  readonly attributeSets: readonly (readonly string[])[]
}

/** The values of an object's attribute, or null: `attributeOf(objects, 7, '.N')` is the names of its net. */
export function attributeOf(objects: LayerObjects, index: number, name: string): readonly string[] | null {
  const set = objects.attributeSets[objects.attributesAt[index] ?? 0] ?? []
  const found = set.find((entry) => entry === name || entry.startsWith(`${name},`))
  return found === undefined ? null : found.split(',').slice(1)
}
