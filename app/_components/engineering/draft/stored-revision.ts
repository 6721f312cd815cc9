import type { ArtworkReviewFacts, Design, Evaluation, LimitOverride, Material, TestedLife } from '@/lib/engine'
import type { CatalogueTemplate } from '@/lib/engine/catalogue'
import type { CheckedLimit } from '@/lib/review'

/** What a page passes to the editor: the stored design, its version, and what the person may do. */
export interface StoredRevision {
  readonly revisionId: string
  readonly label: string
  readonly design: Design
  readonly designVersion: number
  readonly evaluation: Evaluation
  readonly limits: readonly LimitOverride[]
  /** Flex tests of the workspace and of fabricators, fitted. */
  readonly testedLives: readonly TestedLife[]
  /** What was read in the artwork: a draft is held against it as the saved design is. */
  readonly artworkFacts: ArtworkReviewFacts
  /** Limits that are checked when saved: their values are not here. */
  readonly checkedLimits: readonly CheckedLimit[]
  /** The review's version of the catalogue: what the server evaluates by. */
  readonly template: CatalogueTemplate
  /** Materials that the workspace keeps, where the page offers them. */
  readonly ownMaterials: readonly Material[]
  readonly mayEdit: boolean
  /** Why it cannot be edited, in words; shown instead of the save bar. */
  readonly lockedBecause: string
  /** What proposing a change needs; null where the person may not, or the page is not about what can be proposed. */
  readonly proposing: ProposingContext | null
}

export interface ProposingContext {
  readonly projectId: string
  /** Fabricators that the team may let take part; a fabricator's own company always does. */
  readonly fabricators: readonly { readonly id: string; readonly name: string }[]
  readonly isFabricator: boolean
}
