import type { ArtworkFacts, GivenRole, NamedFile, OnPlanFacts, PlanGround } from '@/lib/artwork'
import type { ArtworkReviewFacts, Design, LimitOverride, ReviewFacts, TestedLife } from '@/lib/engine'
import type { CatalogueTemplate } from '@/lib/engine/catalogue'
import type {
  ExtraRoom,
  MatrixRow,
  NestedPart,
  PanelFormat,
  PurchaseAssessment,
  RemedyBasis,
  ShelfContent,
} from '@/lib/fabrication'

/** One evaluation: the engine's input, with the catalogue as the version that it is made from, since items hold functions. */
export interface EvaluationOrder {
  readonly design: Design
  readonly limits: readonly LimitOverride[]
  readonly facts: ReviewFacts
  /** Flex tests of the workspace and of fabricators, fitted. */
  readonly testedLives: readonly TestedLife[]
  readonly template: CatalogueTemplate
}

/** One part on one panel. */
export interface NestingOrder {
  readonly part: NestedPart
  readonly format: PanelFormat
  readonly extra: ExtraRoom
}

export interface RemedyOrder extends WayOutOrder {
  readonly bendId: string
}

/** What is asked for all bends and items of a draft at once. */
export interface WayOutOrder {
  readonly design: Design
  /** Changes of the inside radius are not tried. */
  readonly isRadiusFixed: boolean
  readonly limits: readonly LimitOverride[]
  readonly testedLives: readonly TestedLife[]
  readonly facts: ArtworkReviewFacts
  /** The review's version of the catalogue: a change may make an item of it fail. */
  readonly template: CatalogueTemplate
  /** What prices them and which materials there are; null compares neither. */
  readonly basis: RemedyBasis | null
  /** Calendar day, ISO 8601: delivery is counted from it. */
  readonly today: string
}

/** A material that is not held, with what stands on the fabricator's shelf. */
export interface SubstituteOrder extends EvaluationOrder {
  readonly purchase: PurchaseAssessment
  readonly shelf: ShelfContent
  /** The fabricator's matrix, so that a substitute does not leave it; null where there is none to hold it against. */
  readonly matrix: readonly MatrixRow[] | null
}

/** The artwork of a revision, archives as they were uploaded. */
export interface ArtworkOrder {
  readonly files: readonly NamedFile[]
  readonly roles: readonly GivenRole[]
  /** The plan that they are laid over; null where none is drawn. */
  readonly ground: PlanGround | null
}

export interface ArtworkResult {
  readonly facts: ArtworkFacts
  /** Null where there is no plan. */
  readonly onPlan: OnPlanFacts | null
  /** The layers as they are looked at, as `readPicture` of lib/artwork-picture reads them. */
  readonly picture: Uint8Array<ArrayBuffer>
}
