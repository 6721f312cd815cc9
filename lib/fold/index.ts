/** The part folded: where its pieces come to lie, and what comes too near to what. Millimetres and degrees; nothing is judged here. */
export { type BodyFace, normalOf } from './bodies/body-faces'
export type { CarriedBody } from './bodies/flat-bodies'
export { type FoldedBody, listFoldedBodies } from './bodies/folded-bodies'
export { listBandsOver } from './clash/bends-over'
export { checkFolded, type FoldedCheck } from './clash/check-folded'
export type { Clash } from './clash/find-clashes'
export type { FoldOrder } from './clash/sweep-fold'
export type { ExactCurve, ExactSolid, ExactSurface } from './exact/brep'
export { listExactSolids } from './exact/exact-solids'
export { type Envelope, measureEnvelope } from './fit/measure-envelope'
export { type Loop, measureLoop } from './fit/measure-loop'
export { boundOffset, findFlatEnd, type PlacedEnd, placeEnd } from './fit/place-end'
export {
  type BendMeasures,
  type FlatPartOfPlan,
  findPieceUnder,
  flatPartOfPlan,
  type ZoneHeights,
} from './from-plan/flat-part-of-plan'
export type { LeafOf, LeafSpan } from './kinematics/flat-part'
export { foldPart } from './kinematics/fold-part'
export type { Vector } from './kinematics/vector'
export { type FoundOrder, findFoldOrder } from './order/find-fold-order'
