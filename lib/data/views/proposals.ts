/** Proposed changes, and comparisons. */
import type { ContentComparison, PatchOperation } from '@/lib/review'
import type { CompanyView, PersonView } from './people'
import type { ThreadView } from './threads'

export type ProposalState = 'proposed' | 'accepted' | 'declined' | 'withdrawn'

/** A proposed change, without what it would come to. */
export interface ProposalSummary {
  readonly id: string
  readonly revisionId: string
  readonly title: string
  readonly state: ProposalState
  /** The fabricator that takes part; null is the team alone. */
  readonly company: CompanyView | null
  readonly proposedBy: PersonView
  readonly proposedByCompany: string
  readonly proposedAt: string
  readonly decidedBy: PersonView | null
  readonly decidedAt: string | null
  readonly decisionNote: string
  /** The design's version that it was made on, and that accepting it made. */
  readonly baseVersion: number
  readonly madeVersion: number | null
  readonly threadId: string
}

/** A proposed change with what it would come to. */
export interface ProposalView extends ProposalSummary {
  /** The design's version as it stands: the `seenVersion` of a decision. */
  readonly designVersion: number
  /** RFC 6902 (JSON Patch); tests come before what they guard. */
  readonly patch: readonly PatchOperation[]
  /** Each operation in words. */
  readonly operations: readonly string[]
  /** Does it still apply to the design as it stands? Empty where it does, or where it is decided. */
  readonly obstacles: readonly string[]
  /** `present`: the design as it stands, and as accepting would leave it. `base`: as it was proposed. */
  readonly comparedWith: 'present' | 'base'
  readonly comparison: ContentComparison
  /** Questions of the items that the comparison names, by id. */
  readonly questions: Readonly<Record<string, string>>
  readonly thread: ThreadView | null
  readonly may: { readonly decide: boolean; readonly withdraw: boolean }
}

/** Something that can stand on a side of a comparison. */
export interface ComparableView {
  /** As in an address: `revision:<id>`. */
  readonly ref: string
  readonly label: string
  readonly revisionId: string
}

export interface ComparisonView {
  readonly from: ComparableView
  readonly to: ComparableView
  readonly comparison: ContentComparison
  /** Questions of the items that the comparison names, by id. */
  readonly questions: Readonly<Record<string, string>>
}
