/** Parts on panels: rectangle grids, and true outlines on double lattices. */
export {
  type PanelFormat,
  type PanelFormatsContent,
  panelFormatsContentSchema,
} from './format'
export { nestPart } from './nest-array'
export {
  type ExtraRoom,
  type NestedPart,
  type Nesting,
  NO_EXTRA,
} from './nest-part'
export { readNestedPart } from './nested-part'
export { measureOutline } from './outline-size'
export {
  countAlong,
  countBlocks,
  countGrid,
  type GridBlock,
  packBothWays,
  type RectangleTask,
} from './rectangle-grid'
