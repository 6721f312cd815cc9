/** Drawing files: DXF and SVG, read into lines and arcs in mm, and DXF written. Pure; nothing in a file throws, and what it can take is bounded. */
export { type Chain, chainStrokes } from './chain'
export { circleThrough, type Piece, type Point } from './curves'
export type { Drawing, FileIssue, Stroke } from './drawing'
export { drawDxf } from './dxf/draw-dxf'
export { readDxf } from './dxf/read-dxf'
export { DRAWING_UNITS } from './dxf/units'
export { type WrittenDrawing, writeDxf } from './dxf/write-dxf'
export { drawSvg, readSvg } from './svg/read-svg'
