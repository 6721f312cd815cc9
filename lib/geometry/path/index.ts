/** Paths of lines and exact arcs in whole nanometres. What is inside of them is decided exactly; lengths and areas are in doubles. */
export { CONTACT_NM, crossEdges, type Meeting, shareOnArc, shareOnLine } from './cross'
export { type Distance, distanceBetweenEdgeSets, looseBox } from './distance'
export {
  directionAt,
  isAtMostHalf,
  isSamePoint,
  type LineOrArc,
  lengthOfEdge,
  makeArc,
  makeEdge,
  makeLine,
  pointAt,
  reverseEdge,
  roundPoint,
} from './edge'
export { flattenOutwards } from './flatten-outwards'
export { type Location, locatePoint, nearestOnEdge } from './locate'
export {
  areBoxesNear,
  type Box,
  boundsOf,
  edgesOfLoop,
  edgesOfPath,
  extentAlong,
  flattenEdges,
  isInBox,
  type Loop,
  lengthOf,
  type Motion,
  type Path,
  reversePath,
  signedAreaOf,
  transformPath,
} from './path'
