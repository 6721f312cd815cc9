/** Pieces of the plane bounded by lines and arcs: made, located, cut and measured. */
export { checkLoop, checkNodes, type LoopIssue } from './check-loop'
export {
  distanceBetweenRegions,
  distanceToRegion,
  edgesOfRegion,
  findInnerPoint,
  locateInRegion,
  makeCheckedRegion,
  makeRegion,
  type Region,
  type RegionIssue,
  type RegionResult,
} from './region'
export { type Band, clipToBand, JOIN_REACH_NM, type Split, type SplitPiece, splitByLines } from './split'
