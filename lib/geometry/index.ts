/** Polygons in whole micrometres. Pure, and nothing of ours is imported: every decision in here is exact. */
export { addConvex, makeDisc } from './convex'
export { type ConvexCover, coverByConvex } from './convex-cover'
export { type Intervals, makeNoFit, type NoFit } from './no-fit'
export * from './path'
export { at, type Polygon, requireWholeMicrometres } from './point'
export {
  getAreaUm2,
  getBounds,
  isUprightRectangle,
  moveToOrigin,
  QUARTER_TURNS_DEG,
  type QuarterTurnDeg,
  tidy,
  translate,
  turnBy,
} from './polygon'
export { type PointNm, sideOfLine } from './predicates'
export * from './region'
export { findCrossing } from './simple'
export { triangulate } from './triangulate'
