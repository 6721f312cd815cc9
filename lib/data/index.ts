import type {
  AcceptInvitationInput,
  AccountStateInput,
  AddArtworkInput,
  AdminRightInput,
  AdvanceInput,
  AnswerItemInput,
  AttachFileInput,
  ChangePasswordInput,
  CloseThreadInput,
  DecideWaiverInput,
  DeclarationInput,
  EditCommentInput,
  EvaluateAgainInput,
  FirstAdminInput,
  ImportDesignInput,
  InvitationInput,
  JoinByInvitationInput,
  LimitInput,
  MembershipRoleInput,
  NewRevisionInput,
  OpenThreadInput,
  ProjectInput,
  ProposeWaiverInput,
  ReleaseInput,
  RemoveFileInput,
  RemoveMemberInput,
  ReopenThreadInput,
  ReplyInput,
  RevokeInvitationInput,
  SaveDesignInput,
  SendBackInput,
  SettingsInput,
  ShareRevisionInput,
  SignInInput,
  SignInput,
  WithdrawInput,
} from '@/lib/inputs'
import type { TrailRecord } from '@/lib/review'
import type {
  AccountView,
  AttachmentView,
  CompanyView,
  CreatedInvitation,
  FileDownload,
  InvitationView,
  LimitSheetView,
  Outcome,
  PersonView,
  ProjectSummary,
  ProjectView,
  RevisionView,
  SettingsView,
  TrailEntryView,
  WaitView,
} from './views'

export type * from './views'

/**
 * Who is acting. Made by `findActor` from a session; every function loads the person's standing again from the
 * database, so an old actor gives no right that was since taken away.
 */
export interface Actor {
  readonly userId: string
  readonly name: string
  readonly email: string
  readonly isAdmin: boolean
  readonly memberships: readonly { readonly projectId: string; readonly role: string; readonly companyId: string }[]
}

// Reads return the view, or throw NotFoundError (absent and forbidden alike) or NotAllowedError (seen but not theirs to do).
// Writes return an Outcome. Both take the actor first; the few that have none are named here: isWorkspaceEmpty,
// createFirstAdmin, authenticate, findActor, previewInvitation, acceptInvitation, listAllTrailRecords, backUpTo.

// Accounts
export declare function isWorkspaceEmpty(): Promise<boolean>
/** Refused once anybody exists, and unless the server listens on the loopback address only. */
export declare function createFirstAdmin(
  input: FirstAdminInput,
): Promise<Outcome<{ userId: string; projectId: string }>>
/** Same refusal for a wrong password, an unknown address and a disabled account; slows down after failures. */
export declare function authenticate(
  input: SignInInput,
): Promise<Outcome<{ userId: string; name: string; email: string; sessionVersion: number }>>
/** Null when the account is gone, disabled, or the session was ended. */
export declare function findActor(userId: string, sessionVersion: number): Promise<Actor | null>
export declare function getOwnAccount(actor: Actor): Promise<AccountView>
/** Ends all other sessions; the caller's goes on with the session version returned. */
export declare function changePassword(
  actor: Actor,
  input: ChangePasswordInput,
): Promise<Outcome<{ sessionVersion: number }>>
export declare function signOutEverywhere(actor: Actor): Promise<Outcome<{ sessionVersion: number }>>
/** Admin. */
export declare function listAccounts(actor: Actor): Promise<readonly AccountView[]>
export declare function setAccountState(actor: Actor, input: AccountStateInput): Promise<Outcome<null>>
export declare function setAdminRight(actor: Actor, input: AdminRightInput): Promise<Outcome<null>>

// People of a project
export declare function createInvitation(actor: Actor, input: InvitationInput): Promise<Outcome<CreatedInvitation>>
export declare function revokeInvitation(actor: Actor, input: RevokeInvitationInput): Promise<Outcome<null>>
/** What the link offers; throws NotFoundError for an unknown token, and says `used`, `expired`, `revoked` by state. */
export declare function previewInvitation(token: string): Promise<InvitationView>
export declare function acceptInvitation(
  input: AcceptInvitationInput,
): Promise<Outcome<{ userId: string; projectId: string }>>
export declare function joinByInvitation(
  actor: Actor,
  input: JoinByInvitationInput,
): Promise<Outcome<{ projectId: string }>>
export declare function setMembershipRole(actor: Actor, input: MembershipRoleInput): Promise<Outcome<null>>
export declare function removeMember(actor: Actor, input: RemoveMemberInput): Promise<Outcome<null>>

// Projects
export declare function listProjects(actor: Actor): Promise<readonly ProjectSummary[]>
export declare function getProject(actor: Actor, projectId: string): Promise<ProjectView>
export declare function createProject(actor: Actor, input: ProjectInput): Promise<Outcome<{ projectId: string }>>

// Revisions
export declare function createRevision(actor: Actor, input: NewRevisionInput): Promise<Outcome<{ revisionId: string }>>
/** The whole view; what the person asking may not see is left out of it. */
export declare function getRevision(actor: Actor, revisionId: string): Promise<RevisionView>
/** Checks references, saves, evaluates, stores the results and voids signatures that no longer cover the content. */
export declare function saveDesign(
  actor: Actor,
  input: SaveDesignInput,
): Promise<Outcome<{ version: number; designVersion: number; voidedSignatures: number }>>
export declare function importDesign(
  actor: Actor,
  input: ImportDesignInput,
): Promise<Outcome<{ version: number; designVersion: number; voidedSignatures: number }>>
export declare function exportDesign(actor: Actor, revisionId: string): Promise<FileDownload>
export declare function exportResults(actor: Actor, revisionId: string): Promise<FileDownload>
/** With the present engine and limits. */
export declare function evaluateAgain(actor: Actor, input: EvaluateAgainInput): Promise<Outcome<{ version: number }>>
export declare function shareRevision(actor: Actor, input: ShareRevisionInput): Promise<Outcome<null>>
export declare function unshareRevision(actor: Actor, input: ShareRevisionInput): Promise<Outcome<null>>
/** Fabricators of the project that do not see the revision yet. Team only. */
export declare function listFabricators(actor: Actor, projectId: string): Promise<readonly CompanyView[]>

// Checklist
export declare function answerItem(
  actor: Actor,
  input: AnswerItemInput,
): Promise<Outcome<{ answerVersion: number; version: number }>>
export declare function proposeWaiver(actor: Actor, input: ProposeWaiverInput): Promise<Outcome<{ waiverId: string }>>
export declare function decideWaiver(actor: Actor, input: DecideWaiverInput): Promise<Outcome<{ version: number }>>
export declare function attachFile(actor: Actor, input: AttachFileInput): Promise<Outcome<AttachmentView>>
/** Takes the file off the answer; its bytes and the record stay. */
export declare function removeAttachment(actor: Actor, input: RemoveFileInput): Promise<Outcome<null>>
export declare function addArtwork(actor: Actor, input: AddArtworkInput): Promise<Outcome<AttachmentView>>
export declare function removeArtwork(actor: Actor, input: RemoveFileInput): Promise<Outcome<null>>

// Threads
export declare function openThread(actor: Actor, input: OpenThreadInput): Promise<Outcome<{ threadId: string }>>
export declare function replyToThread(actor: Actor, input: ReplyInput): Promise<Outcome<{ commentId: string }>>
export declare function closeThread(actor: Actor, input: CloseThreadInput): Promise<Outcome<null>>
export declare function reopenThread(actor: Actor, input: ReopenThreadInput): Promise<Outcome<null>>
export declare function editComment(actor: Actor, input: EditCommentInput): Promise<Outcome<null>>

// Fabricator's declaration, moves, signature, release
export declare function declareBuildable(
  actor: Actor,
  input: DeclarationInput,
): Promise<Outcome<{ declarationId: string }>>
export declare function advanceRevision(
  actor: Actor,
  input: AdvanceInput,
): Promise<Outcome<{ stage: string; version: number }>>
export declare function sendBackRevision(
  actor: Actor,
  input: SendBackInput,
): Promise<Outcome<{ stage: string; version: number }>>
export declare function withdrawRevision(
  actor: Actor,
  input: WithdrawInput,
): Promise<Outcome<{ stage: string; version: number }>>
/** Asks for the password again; refused when the content hash is not the one that the person saw. */
export declare function signRevision(
  actor: Actor,
  input: SignInput,
): Promise<Outcome<{ signatureId: string; version: number }>>
export declare function releaseRevision(
  actor: Actor,
  input: ReleaseInput,
): Promise<Outcome<{ packageSha256: string; version: number }>>

// Downloads
export declare function getPackageFile(actor: Actor, revisionId: string): Promise<FileDownload>
export declare function getAttachmentFile(actor: Actor, attachmentId: string): Promise<FileDownload>
export declare function getArtworkFile(actor: Actor, artworkId: string): Promise<FileDownload>

// Limits
/** The workspace's sheet, or a company's. A fabricator sees the own company's and no other's. */
export declare function getLimitSheet(actor: Actor, companyId: string | null): Promise<LimitSheetView>
export declare function setLimit(actor: Actor, input: LimitInput): Promise<Outcome<{ version: number }>>
/** Companies whose sheet the person may open. */
export declare function listCompanies(actor: Actor): Promise<readonly CompanyView[]>

// Home, settings, trail, backup
export declare function listWaits(actor: Actor): Promise<readonly WaitView[]>
export declare function getSettingsView(actor: Actor): Promise<SettingsView>
export declare function changeSettings(actor: Actor, input: SettingsInput): Promise<Outcome<{ version: number }>>
/** Records of one revision that the person may see, newest first. */
export declare function listRevisionTrail(actor: Actor, revisionId: string): Promise<readonly TrailEntryView[]>
/** Admin: the whole trail as JSON Lines. */
export declare function exportTrail(actor: Actor): Promise<FileDownload>
/** Admin: checks the whole chain. */
export declare function checkWholeTrail(
  actor: Actor,
): Promise<{ recordCount: number; firstBad: { sequence: number; reason: string } | null }>
/** Every record, oldest first: for the command that checks the chain. */
export declare function listAllTrailRecords(): Promise<readonly TrailRecord[]>
/** Admin: a consistent copy of the SQLite database and its files into the data folder; on PostgreSQL names the server's own tool. */
export declare function createBackup(actor: Actor): Promise<Outcome<{ folder: string; sizeBytes: number }>>
export declare function listPeople(actor: Actor): Promise<readonly PersonView[]>
export type { InvitationView }
