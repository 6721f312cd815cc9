/** One revision, as its screens show it. */
import type { ArtworkReviewFacts, LimitOverride, TestedLife } from '@/lib/engine'
import type { Design } from '@/lib/engine/design'
import type { Evaluation } from '@/lib/engine/results'
import type {
  Blocker,
  CheckedLimit,
  GrantedCapacity,
  ProjectRole,
  ReleaseTerms,
  SigningSummary,
  Stage,
} from '@/lib/review'
import type { AttachmentView, ItemView } from './checklist'
import type { CompanyView, PersonView } from './people'
import type { ProposalSummary } from './proposals'
import type { DeclarationView, PackageView, SignatureView, StageMoveView, StandingView } from './release'
import type { ReviewActionView } from './review-actions'
import type { SignOffView } from './sign-off'
import type { ThreadView } from './threads'
import type { RevisionTemplateView } from './workspace'

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
  /** Flex tests that the person's results may rest on, fitted: without any specimen. */
  readonly testedLives: readonly TestedLife[]
  /** What was read in the artwork. */
  readonly artworkFacts: ArtworkReviewFacts
  /** Limits that the results are checked against and that are not shown: without their values. */
  readonly checkedLimits: readonly CheckedLimit[]
  readonly template: RevisionTemplateView
  readonly items: readonly ItemView[]
  readonly threads: readonly ThreadView[]
  readonly actions: readonly ReviewActionView[]
  readonly proposals: readonly ProposalSummary[]
  readonly artwork: readonly AttachmentView[]
  readonly declarations: readonly DeclarationView[]
  /** Each fabricator's standing to the present content; to a fabricator their own alone. */
  readonly standings: readonly StandingView[]
  /** Whom an action can be given to; empty for those who cannot give one. */
  readonly team: readonly PersonView[]
  readonly signatures: readonly SignatureView[]
  readonly stageMoves: readonly StageMoveView[]
  /** Fabricators that see the revision; to a fabricator their own company alone. */
  readonly sharedWith: readonly CompanyView[]
  readonly package: PackageView | null
  /** The decision to release; null before it, and for one from before terms were recorded. */
  readonly release: (ReleaseTerms & { readonly replaces: string | null }) | null
  /** Label of the revision in force that a release would replace; null where there is none. */
  readonly wouldReplace: string | null
  readonly blockers: readonly Blocker[]
  /** What keeps the person asking from signing; empty for those who cannot sign anyway. */
  readonly signingBlockers: readonly Blocker[]
  /** Hash of the signed content as it stands: a signature names the hash that its signer saw. Empty for a fabricator. */
  readonly contentHash: string
  /** Capacities that the person asking was granted, of which they choose one to sign in. */
  readonly signingCapacities: readonly GrantedCapacity[]
  /** Who made, reviewed and approved it, and by which policy. */
  readonly signOff: SignOffView
  /** The statement to sign. */
  readonly statement: string
  /** What the statement covers, in brief; null for those who cannot sign now. */
  readonly signingSummary: SigningSummary | null
  /** What the person asking may do now: role and stage taken together. */
  readonly may: RevisionRights
  readonly role: ProjectRole | null
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
  /** Decide on fabricators' conditions. */
  readonly decideConditions: boolean
  /** Take fabricators off this release, and put them back. */
  readonly chooseFabricators: boolean
  /** Propose a change of construction, bends or features. */
  readonly propose: boolean
  readonly decideProposal: boolean
  readonly takeOnAction: boolean
  readonly advance: boolean
  readonly sendBack: boolean
  readonly withdraw: boolean
  readonly sign: boolean
  /** Declare the content reviewed, where they are no author of it. */
  readonly review: boolean
  readonly release: boolean
  readonly share: boolean
  /** Keep its construction for other projects. */
  readonly keepConstruction: boolean
  readonly copy: boolean
  readonly downloadPackage: boolean
  readonly viewTrail: boolean
  readonly viewMinutes: boolean
}
