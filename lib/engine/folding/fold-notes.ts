import type { Design } from '../design'
import { describeBendsOver, listBendsOver } from './bends-over'
import type { FoldableDesign } from './fold-design'
import { describeLeafRuns } from './leaf-runs'

/** What a picture of the folded part does not show by itself, in sentences: bends that lie over each other, and what is left over of leaves. */
export const listFoldNotes = (design: Design, folding: FoldableDesign): readonly string[] => [
  ...listBendsOver(design, folding).map(describeBendsOver),
  ...describeLeafRuns(design, folding.leafRuns),
]
