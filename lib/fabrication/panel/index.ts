/** Parts on panels: rectangle grids, and true outlines on double lattices. */
export {
  type PanelFormat,
  type PanelFormatsContent,
  panelFormatsContentSchema,
} from './format'
export {
  type ExtraRoom,
  type NestedPart,
  type Nesting,
  NO_EXTRA,
  nestPart,
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
