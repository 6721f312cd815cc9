import type { Stage } from '../stages'
import type { ProjectRole, Sharing } from './rights'

export interface WorkspaceSubject {
  readonly kind: 'workspace'
}

export interface AccountSubject {
  readonly kind: 'account'
  readonly userId: string
}

export interface ProjectSubject {
  readonly kind: 'project'
  readonly projectId: string
}

export interface CompanySubject {
  readonly kind: 'company'
  readonly companyId: string
  /** Projects in which the company agreed to take part, with what it lets each have. */
  readonly takesPartIn: readonly { readonly projectId: string; readonly sharing: Sharing }[]
}

export interface RevisionSubject {
  readonly kind: 'revision'
  readonly projectId: string
  readonly stage: Stage
  /** Fabricators with whom it is shared. */
  readonly sharedWithCompanyIds: readonly string[]
  /** A signature stands on the present content. */
  readonly hasLiveSignature: boolean
  /** The person who asks was granted a capacity in which to sign; absent where it does not matter. */
  readonly hasCapacity?: boolean
}

export interface SignatureSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'signature'
  readonly signerId: string
}

export interface ItemSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'item'
  readonly answeredBy: readonly ProjectRole[]
}

export interface WaiverSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'waiver'
  /** The policy of the project lets the person who asks approve it: `explainNoApproval` says nothing. */
  readonly isIndependent: boolean
}

export interface ThreadSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'thread'
  readonly openedBy: string
  readonly openedByCompanyId: string
  /** The fabricator that takes part, and whose people alone see it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
}

export interface ProposalSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'proposal'
  readonly proposedBy: string
  /** The fabricator that takes part, as for a thread. */
  readonly audienceCompanyId: string | null
}

export interface ReviewActionSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'review-action'
  readonly ownerId: string
  readonly ownerCompanyId: string
  /** Who reported it done; null while nobody has. */
  readonly reportedById: string | null
  /** The fabricator that sees it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
}

export interface CommentSubject extends Omit<ThreadSubject, 'kind'> {
  readonly kind: 'comment'
  readonly authorId: string
}
