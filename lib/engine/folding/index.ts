/** A design folded: its plan, thickness and bends brought to what `lib/fold` folds. */
export { checkFold, type FoldableDesign, findOrder, prepareFolding } from './fold-design'
