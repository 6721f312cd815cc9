/** A design folded: its plan, thickness and bends brought to what `lib/fold` folds. */
export { type ExactCurve, type ExactSolid, type ExactSurface, normalOf, type Vector } from '@/lib/fold'
export { listBendsOver } from './bends-over'
export { checkFold, type Foldable, type FoldableDesign, findOrder, listChains, prepareFolding } from './fold-design'
export { describeLoopSlack, measureLoopSlack, missTarget, placeConnectorEnd } from './fold-fit'
export { listFoldNotes } from './fold-notes'
export { measureRoom, ROOM_SIDES, type RoomSide } from './folded-room'
export {
  type FoldStep,
  listFoldSteps,
  listSolids,
  type NamedSolid,
  type ShapeBody,
  type ShapeRole,
  shapeFold,
} from './folded-shape'
export { placeOfBody } from './named-bodies'
