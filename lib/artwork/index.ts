/** Artwork: readers for the open formats of circuit data, and the geometry of what they hold. Bytes in, objects and issues out; nothing is judged here. */

export { buildCopperStack } from './copper/copper-stack'
export { readDrill } from './drill/read-drill'
export {
  ARTWORK_READER_VERSION,
  type ArtworkFacts,
  type ArtworkFileFacts,
  type ArtworkNetsFacts,
  artworkFactsSchema,
  type GivenRole,
} from './facts/artwork-facts'
export { gatherFacts } from './facts/gather-facts'
export { readGerber } from './gerber/read-gerber'
export { readIpc2581 } from './ipc2581/read-ipc2581'
export { readJob } from './job/read-job'
export { MOST_FILE_BYTES } from './limits'
export { readNetlist } from './netlist/read-netlist'
export { attributeOf, type LayerObjects } from './objects/objects'
export type { GroundBand, PlanGround } from './on-plan/ground'
export { measureOnPlan } from './on-plan/measure-on-plan'
export {
  ON_PLAN_VERSION,
  type OnPlanBand,
  type OnPlanBandLayer,
  type OnPlanFacts,
  type OnPlanHatch,
  onPlanFactsSchema,
} from './on-plan/on-plan-facts'
export { drawLayers } from './picture/draw-layers'
export { makeFrame, type PictureFrame, spotInPicture } from './picture/frame'
export { type ArtworkSet, readSet, type SetFile } from './set/read-set'
export { LAYER_ROLES } from './set/role'
export { type NamedFile, unpackFiles } from './set/unpack'
export { shapeOfLayer } from './shape/copper'
export { extentOfLayer } from './shape/extents'
