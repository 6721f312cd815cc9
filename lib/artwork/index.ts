/** Artwork: readers for the open formats of circuit data, and the geometry of what they hold. Bytes in, objects and issues out; nothing is judged here. */
export type { Issue, Question } from './audit'
export type { GerberReading } from './gerber/gerber-reading'
export { readGerber } from './gerber/read-gerber'
export { attributeOf, type LayerObjects } from './objects/objects'
export { shapeOfLayer } from './shape/copper'
export { extentOfLayer } from './shape/extents'
