/** Parts on panels: rectangle grids, and true outlines on double lattices. */
export {
  FOIL_DIRECTIONS,
  type FoilDirection,
  type PanelFormat,
  type PanelFormatsContent,
  panelFormatSchema,
  panelFormatsContentSchema,
} from './format'
export {
  type ExtraRoom,
  type NestedPart,
  type Nesting,
  type NestingMethod,
  NO_EXTRA,
  nestPart,
  PART_ROLLING_DIRECTIONS,
  type PartRollingDirection,
} from './nest-part'
export { type PartReading, readNestedPart } from './nested-part'
export { type Placement, placeOutline } from './placement'
export {
  countAlong,
  countBlocks,
  countGrid,
  type GridBlock,
  packBothWays,
  packOneWay,
  type RectangleTask,
} from './rectangle-grid'
