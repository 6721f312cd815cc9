/** Projects, their revisions in brief, and what waits. */
import type { RevisionTarget } from '@/lib/addresses'
import type { VerdictTally } from '@/lib/engine'
import type { ProjectRole, Sharing, Stage } from '@/lib/review'
import type { ParticipationState } from './companies'
import type { CompanyView, InvitationView, PersonView } from './people'

export interface RevisionSummary {
  readonly id: string
  readonly projectId: string
  readonly label: string
  readonly stage: Stage
  readonly stageSince: string
  readonly createdAt: string
  readonly createdBy: PersonView
  readonly designName: string
  /** Counts of item verdicts, as recorded: computed, stated and judged apart. */
  readonly verdictCounts: VerdictTally
  readonly supersededByLabel: string | null
  readonly hasPackage: boolean
}

export interface ProjectSummary {
  readonly id: string
  readonly name: string
  readonly description: string
  /** What the person asking is in it; null for an admin who is not in it. */
  readonly role: ProjectRole | null
  readonly isArchived: boolean
  readonly revisionCount: number
  readonly latestRevision: { readonly id: string; readonly label: string; readonly stage: Stage } | null
}

export interface ProjectMemberView {
  readonly user: PersonView
  /** Null where the person asking may not see addresses. */
  readonly email: string | null
  readonly role: ProjectRole
  readonly company: CompanyView
}

export interface TimelineEntry {
  readonly at: string
  readonly actorName: string
  readonly sentence: string
  readonly revisionId: string | null
}

/** A fabricator in one project. */
export interface ProjectFabricatorView extends CompanyView {
  readonly state: ParticipationState
  /** A name that somebody typed, which nobody confirmed. */
  readonly isOfProjectAlone: boolean
  /** May revisions be shared with it? */
  readonly maySeeRevisions: boolean
  /** What it lets the team have. */
  readonly sharing: Sharing
}

export interface ProjectView {
  readonly id: string
  readonly name: string
  readonly description: string
  readonly role: ProjectRole | null
  readonly revisions: readonly RevisionSummary[]
  readonly people: readonly ProjectMemberView[]
  /** To a fabricator: their own company alone. */
  readonly fabricators: readonly ProjectFabricatorView[]
  readonly invitations: readonly InvitationView[]
  readonly timeline: readonly TimelineEntry[]
  /** Since when it is archived; null where it is not. */
  readonly archivedAt: string | null
  readonly may: {
    /** Rename and archive it. */
    readonly edit: boolean
    readonly invite: boolean
    readonly createRevision: boolean
    readonly managePeople: boolean
    readonly seeTrail: boolean
    readonly seeAccess: boolean
  }
}

/** One thing that waits for the person, with the one next act. */
export interface WaitView {
  readonly projectId: string
  readonly revisionId: string
  readonly projectName: string
  readonly revisionLabel: string
  readonly stage: Stage
  readonly since: string
  readonly reason: string
  /** What to do, and where: a tab of the revision and, where there is one, the record. */
  readonly nextAct: string
  readonly target: RevisionTarget
}
