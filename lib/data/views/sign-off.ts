/** Who made, reviewed and approves a revision, the policy of a project, and the capacities granted in it. */
import type { Author, Difference, PolicyChange, SignOffPolicy } from '@/lib/review'

export interface PolicyRowView {
  readonly label: string
  readonly words: string
  /** Looser than what is usual. */
  readonly isLoosened: boolean
}

export interface ReviewStatementView {
  readonly id: string
  readonly name: string
  readonly role: string
  readonly note: string
  readonly madeAt: string
  /** It is on the present content and by somebody who is no author of it. */
  readonly counts: boolean
  readonly isWithdrawn: boolean
  readonly mayWithdraw: boolean
}

export interface DifferenceView extends Difference {
  /** The person asking may let it stand: they did not say it. */
  readonly mayLetStand: boolean
  readonly mayTakeUp: boolean
  /** Of the acknowledgement; null where there is none. */
  readonly acknowledgementId: string | null
}

export interface SignOffView {
  readonly authors: readonly Author[]
  readonly reviews: readonly ReviewStatementView[]
  /** Why the person asking cannot declare the content reviewed; empty where they can, and for those who never do. */
  readonly whyNoReview: string
  /** Null where the review began before there were policies. */
  readonly policy: { readonly version: number; readonly rows: readonly PolicyRowView[] } | null
  /** Where a policy looser than usual was made use of. */
  readonly loosenedUses: readonly string[]
  /** What following the project's present policy would change; null where there is nothing to follow. */
  readonly toFollow: { readonly version: number; readonly changes: readonly PolicyChange[] } | null
  readonly mayFollow: boolean
  /** Where words differ from numbers; what was let stand says by whom and why. */
  readonly differences: readonly DifferenceView[]
}

export interface ProjectSignOffPolicyView {
  readonly projectId: string
  readonly projectName: string
  readonly version: number
  readonly rules: SignOffPolicy
  readonly rows: readonly PolicyRowView[]
  readonly mayEdit: boolean
}

export interface CapacityView {
  readonly id: string
  readonly userId: string
  readonly name: string
  readonly capacity: string
  readonly statement: string
  readonly grantedByName: string
  readonly grantedAt: string
  /** Null while it is in force. */
  readonly withdrawnAt: string | null
  readonly withdrawReason: string | null
}

export interface CapacityProjectView {
  readonly id: string
  readonly name: string
  /** In force. */
  readonly capacityCount: number
}

export interface CapacitiesView {
  readonly projectId: string
  readonly projectName: string
  readonly capacities: readonly CapacityView[]
  readonly mayGrant: boolean
  /** People whom a capacity can be granted to by the person asking. */
  readonly people: readonly { readonly userId: string; readonly name: string }[]
}
