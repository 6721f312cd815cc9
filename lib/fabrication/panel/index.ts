/** Parts on panels: rectangle grids, and true outlines on double lattices. */
export {
  type FoilDirection,
  type PanelFormat,
  type PanelFormatsContent,
  panelFormatsContentSchema,
} from './format'
export {
  type ExtraRoom,
  type NestedPart,
  type Nesting,
  type NestingMethod,
  NO_EXTRA,
  nestPart,
  type PartRollingDirection,
} from './nest-part'
export { type PartReading, readNestedPart } from './nested-part'
export type { Placement } from './placement'
export {
  countAlong,
  countBlocks,
  countGrid,
  type GridBlock,
  packBothWays,
  type RectangleTask,
} from './rectangle-grid'
