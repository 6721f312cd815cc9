import type { LimitOverride } from '@/lib/engine'
import type { CatalogueTemplate, SwitchedOffItem } from '@/lib/engine/catalogue'
import type { Design } from '@/lib/engine/design'
import type { Evaluation, Issue, ItemResult } from '@/lib/engine/results'
import type { CapabilityCounts, CapabilityVerdict, OrderAdvice, ShelfCounts, ShelfState } from '@/lib/fabrication'
import type {
  AnswerState,
  Blocker,
  ContentComparison,
  PatchOperation,
  ProjectRole,
  SigningCapacity,
  Stage,
} from '@/lib/review'

/**
 * What `lib/data` hands out: plain values that can cross to a client component, never database rows. Times are
 * ISO 8601 in UTC.
 */

export type { AnswerState, Blocker, ProjectRole, Stage }

export interface PersonView {
  readonly id: string
  readonly name: string
}

export interface CompanyView {
  readonly id: string
  readonly kind: 'team' | 'fabricator'
  readonly name: string
}

export interface AccountView {
  readonly id: string
  readonly email: string
  readonly name: string
  readonly isAdmin: boolean
  readonly isDisabled: boolean
  readonly createdAt: string
  readonly memberships: readonly {
    readonly projectId: string
    readonly projectName: string
    readonly role: ProjectRole
    readonly companyName: string
  }[]
}

export interface InvitationView {
  readonly id: string
  readonly projectId: string
  readonly projectName: string
  readonly role: ProjectRole
  readonly companyName: string
  readonly email: string | null
  readonly state: 'open' | 'used' | 'expired' | 'revoked'
  readonly createdAt: string
  readonly expiresAt: string
}

/** Holds the token, which is shown once and never stored. */
export interface CreatedInvitation {
  readonly invitation: InvitationView
  readonly token: string
  /** Address to hand to the invited person. */
  readonly link: string
}

export interface RevisionSummary {
  readonly id: string
  readonly projectId: string
  readonly label: string
  readonly stage: Stage
  readonly stageSince: string
  readonly createdAt: string
  readonly createdBy: PersonView
  readonly designName: string
  /** Counts of item verdicts, as recorded. */
  readonly verdictCounts: Readonly<Record<string, number>>
  readonly supersededByLabel: string | null
  readonly hasPackage: boolean
}

export interface ProjectSummary {
  readonly id: string
  readonly name: string
  readonly description: string
  /** What the person asking is in it; null for an admin who is not in it. */
  readonly role: ProjectRole | null
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

export interface ProjectView {
  readonly id: string
  readonly name: string
  readonly description: string
  readonly role: ProjectRole | null
  readonly revisions: readonly RevisionSummary[]
  readonly people: readonly ProjectMemberView[]
  /** To a fabricator: their own company alone. */
  readonly fabricators: readonly CompanyView[]
  readonly invitations: readonly InvitationView[]
  readonly timeline: readonly TimelineEntry[]
  readonly may: {
    readonly invite: boolean
    readonly createRevision: boolean
    readonly managePeople: boolean
    readonly seeTrail: boolean
  }
}

export interface AttachmentView {
  readonly id: string
  readonly fileName: string
  readonly sizeBytes: number
  readonly mediaType: string
  readonly sha256: string
  readonly uploadedBy: PersonView
  readonly at: string
}

export interface AnswerView {
  readonly state: AnswerState
  readonly reason: string
  readonly version: number
  readonly by: PersonView
  readonly at: string
}

export interface WaiverView {
  readonly id: string
  readonly itemId: string
  readonly state: 'proposed' | 'approved' | 'declined'
  /** Does it cover what the item comes to now? A waiver covers the numbers that it was proposed on, and no others. */
  readonly covers: boolean
  readonly reason: string
  readonly proposedBy: PersonView
  readonly proposedAt: string
  readonly decidedBy: PersonView | null
  readonly decidedAt: string | null
  readonly decisionNote: string
  /** May the person asking approve or decline it? */
  readonly mayDecide: boolean
}

/** One item of the checklist for one revision. Wording, sources and section come from the catalogue by `itemId`. */
export interface ItemView {
  readonly itemId: string
  readonly result: ItemResult
  /** The state that counts: the answer's, or `waived` under an approved waiver, or what the computation says. */
  readonly state: AnswerState
  readonly answer: AnswerView | null
  /** 0 where there is no answer yet: the `seenVersion` of an answer. */
  readonly answerVersion: number
  /** Label of the revision that the answer was taken over from; null where it was given here. */
  readonly carriedFrom: string | null
  /** Inputs of the item that changed since the answer was given, in the trade's words. */
  readonly changedInputs: readonly string[]
  readonly history: readonly AnswerView[]
  readonly waivers: readonly WaiverView[]
  readonly attachments: readonly AttachmentView[]
  readonly threadIds: readonly string[]
  /** Answers that may be given against the computed verdict. */
  readonly legalStates: readonly AnswerState[]
  readonly mayAnswer: boolean
  /** Why a recorded answer or waiver does not count; empty where all counts. */
  readonly setAside: string
  /** Whether the concern must be waived before release. */
  readonly needsWaiver: boolean
}

export interface CommentView {
  readonly id: string
  readonly author: PersonView
  readonly companyName: string
  readonly text: string
  readonly isAnswer: boolean
  readonly version: number
  readonly at: string
  readonly editedAt: string | null
  readonly earlierTexts: readonly { readonly text: string; readonly at: string }[]
  readonly attachments: readonly AttachmentView[]
  readonly mayEdit: boolean
}

export interface ThreadView {
  readonly id: string
  readonly revisionId: string
  readonly anchor: { readonly kind: string; readonly id: string; readonly label: string }
  /** On an artwork file, in its own coordinates; null for a thread about all of it, or about something else. */
  readonly place: { readonly xMm: number; readonly yMm: number } | null
  readonly kind: 'note' | 'should-change' | 'must-change' | 'engineering-query'
  readonly title: string
  readonly state: 'open' | 'answered' | 'closed'
  readonly version: number
  readonly openedBy: PersonView
  readonly openedAt: string
  /** The fabricator that takes part; null is the team alone. */
  readonly company: CompanyView | null
  readonly answeredBy: PersonView | null
  readonly answeredAt: string | null
  readonly closedBy: PersonView | null
  readonly closedAt: string | null
  readonly closeReason: string | null
  readonly comments: readonly CommentView[]
  readonly may: { readonly reply: boolean; readonly answer: boolean; readonly close: boolean; readonly reopen: boolean }
}

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

export interface DeclarationView {
  readonly id: string
  readonly company: CompanyView
  readonly isBuildable: boolean
  readonly note: string
  readonly madeBy: PersonView
  readonly madeAt: string
  /** Was it made on the present content? */
  readonly stands: boolean
}

export interface SignatureView {
  readonly id: string
  readonly signer: PersonView
  readonly capacity: string
  readonly statement: string
  readonly contentHash: string
  readonly signedAt: string
  /** May the person asking take it back? */
  readonly mayWithdraw: boolean
  readonly voidedAt: string | null
  readonly voidedBy: PersonView | null
  readonly voidReason: string | null
  /** Which signed fields changed, in the trade's words. */
  readonly changes: readonly string[]
}

export interface StageMoveView {
  readonly from: Stage
  readonly to: Stage
  readonly reason: string
  readonly by: PersonView
  readonly at: string
}

export interface PackageView {
  readonly sha256: string
  readonly sizeBytes: number
  readonly fileName: string
  readonly releasedBy: PersonView
  readonly releasedAt: string
}

/** Everything that the screens of one revision show to the person asking. */
export interface RevisionView {
  readonly id: string
  readonly project: { readonly id: string; readonly name: string }
  readonly label: string
  readonly stage: Stage
  readonly stageSince: string
  /** `seenVersion` of moves, declarations, signatures and releases. */
  readonly version: number
  /** `seenVersion` of saves of the design. */
  readonly designVersion: number
  readonly design: Design
  readonly designHash: string
  readonly createdAt: string
  readonly createdBy: PersonView
  readonly basedOn: { readonly id: string; readonly label: string } | null
  readonly supersededBy: { readonly id: string; readonly label: string } | null
  readonly editors: readonly PersonView[]
  readonly evaluation: Evaluation
  readonly evaluationRecord: {
    readonly recordedAt: string
    readonly engineVersion: string
    /** Why the recorded results no longer stand; empty while they do. */
    readonly staleBecause: readonly string[]
  }
  /** Limits that workspace and fabricators set, as the recorded evaluation uses them. */
  readonly limits: readonly LimitOverride[]
  readonly template: RevisionTemplateView
  readonly items: readonly ItemView[]
  readonly threads: readonly ThreadView[]
  readonly proposals: readonly ProposalSummary[]
  readonly artwork: readonly AttachmentView[]
  readonly declarations: readonly DeclarationView[]
  readonly signatures: readonly SignatureView[]
  readonly stageMoves: readonly StageMoveView[]
  /** Fabricators that see the revision; to a fabricator their own company alone. */
  readonly sharedWith: readonly CompanyView[]
  readonly package: PackageView | null
  readonly blockers: readonly Blocker[]
  /** What keeps the person asking from signing; empty for those who cannot sign anyway. */
  readonly signingBlockers: readonly Blocker[]
  /** Hash of the signed content as it stands: a signature names the hash that its signer saw. Empty for a fabricator. */
  readonly contentHash: string
  /** Capacities of which the person asking chooses one to sign in; empty: in one of their own words. */
  readonly signingCapacities: readonly string[]
  /** The statement to sign. */
  readonly statement: string
  /** What the person asking may do now: role and stage taken together. */
  readonly may: RevisionRights
  readonly role: ProjectRole | null
}

/** The workspace's version of the catalogue that the review began with, or was brought up to. */
export interface RevisionTemplateView {
  /** 0 is the catalogue as delivered. */
  readonly version: number
  readonly latestVersion: number
  /** Own items and changed wording; its limits are left out. */
  readonly content: CatalogueTemplate
  readonly switchedOff: readonly SwitchedOffItem[]
}

/** The workspace's catalogue as it is now, with the history of its versions, newest first. */
export interface TemplateView {
  readonly version: number
  readonly content: CatalogueTemplate
  readonly mayEdit: boolean
  readonly versions: readonly {
    readonly version: number
    readonly summary: string
    readonly reason: string
    readonly changedBy: PersonView
    readonly changedAt: string
    /** Reviews under way that go by it. */
    readonly openReviewCount: number
  }[]
}

/** What bringing a review up to the newest version of the catalogue would do, before it is done. */
export interface TemplateUpdateView {
  readonly fromVersion: number
  readonly toVersion: number
  /** Differences between the two versions, in words. */
  readonly changes: readonly string[]
  readonly verdictMoves: readonly {
    readonly itemId: string
    readonly question: string
    readonly before: string
    readonly after: string
  }[]
  /** Questions whose answers are asked for again. */
  readonly reopened: readonly string[]
  /** Signatures that would be voided. */
  readonly voidedSignatures: number
  readonly mayUpdate: boolean
}

export interface RevisionRights {
  readonly edit: boolean
  readonly answer: boolean
  readonly comment: boolean
  /** Engineering queries are a fabricator's to raise. */
  readonly raiseQuery: boolean
  readonly proposeWaiver: boolean
  readonly approveWaiver: boolean
  readonly declare: boolean
  /** Propose a change of construction, bends or features. */
  readonly propose: boolean
  readonly decideProposal: boolean
  readonly advance: boolean
  readonly sendBack: boolean
  readonly withdraw: boolean
  readonly sign: boolean
  readonly release: boolean
  readonly share: boolean
  readonly copy: boolean
  readonly downloadPackage: boolean
  readonly viewTrail: boolean
}

export interface LimitView {
  readonly key: string
  readonly value: number
  readonly note: string
  readonly version: number
  readonly setBy: PersonView
  readonly setAt: string
}

export interface LimitSheetView {
  /** Null for the workspace's own. */
  readonly company: CompanyView | null
  readonly mayEdit: boolean
  /** Only limits that were set; the dictionary of limits has the keys, units and published values. */
  readonly limits: readonly LimitView[]
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
  readonly target: { readonly tab: string; readonly id: string | null }
}

export interface SettingsView {
  readonly version: number
  readonly workspaceName: string
  readonly secondPairOfEyes: boolean
  readonly waiverNeedsSecondPerson: boolean
  readonly artworkRequired: boolean
  readonly requiredSignatures: number
  readonly signingCapacities: readonly SigningCapacity[]
  readonly invitationDays: number
}

export interface TrailEntryView {
  readonly sequence: number
  readonly at: string
  readonly actorName: string
  readonly action: string
  readonly sentence: string
  readonly revisionId: string | null
  readonly hash: string
}

export interface FileDownload {
  readonly fileName: string
  readonly mediaType: string
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** One version of a sheet that a fabricator keeps; `version` 0 is before there is one. */
export interface SheetVersionView {
  readonly version: number
  /** YYYY-MM-DD; the day that the fabricator put on it. */
  readonly issuedOn: string
  readonly note: string
  readonly setBy: PersonView
  readonly setAt: string
}

export interface SheetView<C> {
  readonly company: CompanyView
  readonly mayEdit: boolean
  /** Null where the fabricator has not said anything yet. */
  readonly current: (SheetVersionView & { readonly content: C }) | null
}

/** A cell of a file that cannot be taken. */
export interface BadCellView {
  /** Line of the file, counted from 1. */
  readonly line: number
  readonly column: string
  readonly text: string
  readonly reason: string
}

/** What a file would do to a sheet; nothing of it is done. */
export interface SheetFilePreview {
  readonly fileName: string
  /** The version that it is held against. */
  readonly seenVersion: number
  readonly rowCount: number
  readonly goodRowCount: number
  readonly badRowCount: number
  readonly bad: readonly BadCellView[]
  /** Headings of the file that the sheet does not know, and that are passed over. */
  readonly unknownColumns: readonly string[]
  /** Headings of the sheet, for the rows below. */
  readonly columns: readonly string[]
  readonly added: readonly (readonly string[])[]
  readonly changed: readonly { readonly before: readonly string[]; readonly after: readonly string[] }[]
  readonly removed: readonly (readonly string[])[]
  readonly unchangedCount: number
}

/** Where one value of the design falls with one fabricator. */
export interface FitCellView {
  readonly verdict: CapabilityVerdict
  /** What the deciding row states; null where the matrix says nothing. */
  readonly comfortable: string | null
  readonly stretch: string | null
  readonly conditions: string
  readonly note: string
  /** What would have to change. */
  readonly change: string | null
}

export interface FitValueView {
  readonly text: string
  readonly place: string
  readonly foilUm: number | null
  /** One for each fabricator, in their order. */
  readonly cells: readonly FitCellView[]
}

export interface FitParameterView {
  readonly key: string
  readonly group: string
  readonly name: string
  readonly measuredAs: string
  readonly values: readonly FitValueView[]
  /** Why there is no value: the design has no such thing, or does not say. */
  readonly without: { readonly kind: 'absent' | 'unknown'; readonly reason: string } | null
}

export interface FitSubstituteView {
  readonly name: string
  readonly moves: readonly string[]
}

export interface FitMaterialView {
  readonly layerId: string
  readonly name: string
  readonly state: ShelfState
  readonly reason: string | null
  readonly form: string
  readonly leadTimeDays: number | null
  readonly minimumOrderM2: number | null
  readonly note: string
  readonly order: OrderAdvice | null
  readonly substitutes: readonly FitSubstituteView[]
  /** On the shelf and tried, and left out since a verdict would get worse. */
  readonly leftOut: readonly { readonly name: string; readonly because: string }[]
}

export interface FabricatorFitView {
  readonly company: CompanyView
  readonly matrix: { readonly version: number; readonly issuedOn: string } | null
  readonly counts: CapabilityCounts | null
  readonly shelf: {
    readonly version: number
    readonly issuedOn: string
    readonly buildTimeDays: number | null
    readonly counts: ShelfCounts
    readonly materials: readonly FitMaterialView[]
  } | null
}

/** A revision against what its fabricators can build and hold. A fabricator's holds the own company alone. */
export interface FabricationFitView {
  readonly revisionId: string
  readonly label: string
  /** Calendar day that order dates are counted from. */
  readonly today: string
  readonly needDate: string | null
  readonly isFabricator: boolean
  readonly fabricators: readonly FabricatorFitView[]
  readonly parameters: readonly FitParameterView[]
}

/** Who changed what since the version that the person saw. */
export interface ChangeSince {
  readonly by: string
  readonly at: string
  readonly what: readonly string[]
}

/** A refusal that the person can act on. Nothing was written. */
export type Refusal =
  | { readonly kind: 'invalid'; readonly message: string; readonly issues: readonly Issue[] }
  | { readonly kind: 'blocked'; readonly message: string; readonly blockers: readonly Blocker[] }
  | {
      readonly kind: 'stale'
      readonly message: string
      readonly seenVersion: number
      readonly currentVersion: number
      readonly changes: readonly ChangeSince[]
    }
  /** The record is not in a state in which this can be done, or another one stands in the way. */
  | { readonly kind: 'clash'; readonly message: string; readonly issues: readonly Issue[] }

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: Refusal }
