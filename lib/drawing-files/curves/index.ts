/** Curves of drawing files, and the lines and arcs that stand for them. */
export { type Affine, carry, IDENTITY, type Point, product, scaleBy, shiftBy, turnBy } from './affine'
export {
  type Curve,
  carryCurve,
  type EllipseCurve,
  FULL_TURN_RAD,
  holdingPoints,
  makeBulge,
  makeCircularArc,
  makeLine,
} from './curve'
export { circleThrough, isCircle, MAX_PIECES, type Piece, toPieces } from './to-pieces'
