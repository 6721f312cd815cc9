/** Pieces of the plane bounded by lines and arcs: made, located, cut and measured. */
export { checkLoop, checkNodes, type LoopIssue } from './check-loop'
export {
  distanceBetweenRegions,
  edgesOfRegion,
  findInnerPoint,
  locateInRegion,
  makeCheckedRegion,
  makeRegion,
  type Region,
} from './region'
export { clipToBand, type Split, splitByLines } from './split'
