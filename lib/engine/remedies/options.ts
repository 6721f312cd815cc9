import type { ItemDefinition } from '../catalogue'
import type { ArtworkReviewFacts, LimitOverride } from '../context'
import type { Design } from '../design'
import type { TestedLife } from '../flex-tests'
import type { NeededMaterial, RemedyFamily } from './remedy'

export interface RemedyOptions {
  /** Limits of the workspace and of a fabricator; later ones win. */
  readonly limits?: readonly LimitOverride[]
  /** Flex tests of the workspace and of fabricators, fitted. */
  readonly testedLives?: readonly TestedLife[]
  /** What was measured in the artwork decides here as it does in the review. */
  readonly facts?: ArtworkReviewFacts
  /** Items of the checklist that a change may make fail; the delivered ones where left out. */
  readonly items?: readonly ItemDefinition[]
  /** Materials that the fabricator does not have: changes that need one are marked. */
  readonly unavailableMaterialIds?: readonly string[]
  /** Families that are not tried, such as those that move the radius where the assembly fixes it. */
  readonly leftOutFamilies?: readonly RemedyFamily[]
  /** Most changes in one set, 1 to 4; 4 by default. Larger sets than pairs are tried only while no allowed one meets. */
  readonly mostChanges?: number
  /** Relative cost of a design; without it cost is not compared. */
  readonly costOf?: (design: Design) => number | null
  /** Parts that one panel holds of a design; asked for the remedies that are kept alone. */
  readonly partsPerPanelOf?: (design: Design) => number | null
  /** Every material of a design as it is bought; asked for the remedies that are kept alone. */
  readonly materialsOf?: (design: Design) => readonly NeededMaterial[]
  /** Told what share of the search is done, 0 to 1, after each set that was continued by every further change. May throw to end the search. */
  readonly onProgress?: (fraction: number) => void
}

/** Families that change the inside radius: left out where the assembly fixes it. */
export const RADIUS_FAMILIES: readonly RemedyFamily[] = ['larger-radius', 'split-bend']
