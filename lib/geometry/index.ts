/** Polygons in whole micrometres. Pure, and nothing of ours is imported: every decision in here is exact. */
export { addConvex, CIRCLE_EXCESS_FRACTION, getConvexHull, makeDisc } from './convex'
export { type ConvexCover, type CoverOptions, coverByConvex } from './convex-cover'
export { type Intervals, makeNoFit, type NoFit } from './no-fit'
export { at, MAX_COORDINATE_UM, type Point, type Polygon, requireWholeMicrometres, turnOf } from './point'
export {
  type Bounds,
  getAreaUm2,
  getBounds,
  getDoubleArea,
  isUprightRectangle,
  moveToOrigin,
  QUARTER_TURNS_DEG,
  type QuarterTurnDeg,
  tidy,
  translate,
  turnBy,
} from './polygon'
export { type Crossing, doSegmentsMeet, findCrossing } from './simple'
export { triangulate } from './triangulate'
