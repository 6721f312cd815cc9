import 'server-only'

/**
 * The data layer: the only folder that sees the database. Every function takes the actor first, loads the record,
 * authorises on what was loaded, and hands out plain views.
 *
 * Reads return a view, or throw NotFoundError (absent and forbidden alike) or NotAllowedError (seen, but not theirs).
 * Writes return an Outcome: the value, or a refusal that the person can act on. They throw the same two errors.
 *
 * Without an actor are only what comes before one (first set-up, signing in and out, sessions, invitations, links that work
 * once), what whoever runs the installation calls from the command line, and what the server's own worker does: the
 * list in test/integration/access names them.
 */
export {
  changePassword,
  type DemoAccount,
  getOwnAccount,
  listAccounts,
  listDemoAccounts,
  listPeople,
  markAccountsAsDemo,
  setAccountState,
  setAdminRight,
} from './accounts'
export { askForAddressChange, confirmAddress, previewAddressChange } from './address-changes'
export type { Actor } from './authorization'
export { type Backup, createBackup } from './backups'
export { answerItem, decideWaiver, proposeWaiver } from './checklist'
export { getCompany, removeCompanyPerson, setCompanyRole } from './companies'
export { confirmCompany, listAllCompanies } from './company-claims'
export { type ComparisonRequest, compareInProject, listComparable } from './comparisons'
export { beginPasskeyConfirmation } from './confirmation'
export { WriteConflictError } from './database-errors'
export { declareBuildable } from './declarations'
export type { SavedDesign } from './design-save'
export { getDrawingFile, getSheetIdentity } from './drawings'
export { NotAllowedError, NotFoundError } from './errors'
export { getFabricationFit } from './fabrication-fit'
export { getSheet, listSheetVersions, type SavedSheet, saveSheet } from './fabrication-sheets'
export { getFileRoom } from './file-room'
export { MAX_FILE_BYTES } from './file-store'
export { sweepFiles } from './file-sweep'
export {
  addArtwork,
  attachFile,
  getArtworkFile,
  getAttachmentFile,
  removeArtwork,
  removeAttachment,
} from './files'
export { createFirstAdmin, isWorkspaceEmpty } from './first-admin'
export {
  allowIdentity,
  beginIdentityLink,
  finishIdentityLink,
  getOwnIdentity,
  removeIdentity,
  signInByIdentity,
} from './identities'
export {
  acceptInvitation,
  createInvitation,
  inviteToCompany,
  joinByInvitation,
  previewInvitation,
  revokeInvitation,
} from './invitations'
export { type LeadCountView, listLeadCounts } from './lead-counts'
export { getLimitSheet, listCompanies, setLimit } from './limits'
export { getLiveStart, type LiveEvent, type LiveEvents, listLiveEvents } from './live-events'
export { getMailChoices, setMailChoices } from './mail-choices'
export { queueDigests } from './mail-digest'
export { getMail, listMail, type MailboxView, type MailEntryView, type MailView, sendMailAgain } from './mail-reads'
export { removeMember, setMembershipRole } from './members'
export {
  beginSending,
  type ClaimedMail,
  claimMail,
  type MailFailure,
  type MailWay,
  noteFailed,
  noteSent,
} from './outbox'
export { bringToProject, decideParticipation, listOwnCompanies, setCompanySharing } from './participations'
export {
  arePasskeysPossible,
  beginPasskeySetUp,
  finishPasskeySetUp,
  makePasskeyChallenge,
  removePasskey,
  signInByPasskey,
} from './passkeys'
export {
  answerResetRequests,
  askForReset,
  makeResetLink,
  previewReset,
  recoverAccount,
  setPasswordByLink,
} from './password-resets'
export {
  type ComparedConstructionView,
  type CostsView,
  type FabricatorCostView,
  type FabricatorEstimateView,
  getCosts,
  getPanels,
  getRemedyBases,
  type PanelsView,
  type RemedyBasisView,
} from './production'
export { createProject, getProject, listProjects } from './projects'
export { decideProposal, getProposal, proposeChange, withdrawProposal } from './proposals'
export { getPackageFile, releaseRevision } from './releases'
export {
  createRevision,
  evaluateAgain,
  exportDesign,
  exportResults,
  getRevision,
  importDesign,
  saveDesign,
} from './revisions'
export { type SearchHit, type SearchKind, type SearchView, searchReviews } from './search'
export {
  beginCodeSetUp,
  finishCodeSetUp,
  finishSecondStep,
  getSecondFactor,
  removeCodes,
  removeSecondFactor,
  renewRecoveryCodes,
} from './second-factor'
export {
  endSession,
  findActor,
  isSessionOpen,
  listOwnSessions,
  loadActor,
  openSession,
  SESSION_SECONDS,
  type SignedIn,
  type SignInMethod,
  signOut,
  signOutEverywhere,
} from './sessions'
export { changeSettings, getSettingsView } from './settings'
export { listFabricators, shareRevision, unshareRevision } from './shares'
export { exportSheetFile, importSheetFile, previewSheetFile } from './sheet-files'
export { authenticate, type SecondStep } from './sign-in'
export { signRevision, withdrawSignature } from './signatures'
export { advanceRevision, type MovedRevision, sendBackRevision, withdrawRevision } from './stage-moves'
export { getTemplateUpdate, updateTemplate } from './template-updates'
export {
  addOwnItem,
  type ChangedTemplate,
  changeDeliveredItem,
  changeOwnItem,
  getCatalogueInForce,
  getTemplate,
  removeOwnItem,
} from './templates'
export { listThreadReaders, type ThreadReader } from './thread-readers'
export { closeThread, editComment, openThread, reopenThread, replyToThread } from './threads'
export {
  checkWholeTrail,
  exportTrail,
  listRevisionTrail,
  readWholeTrail,
  type WholeTrailCheck,
} from './trail-reads'
export type * from './views'
export { type KnownDevice, OWN_VISIT, type Visit } from './visit'
export { adoptOlderState } from './vouched/adopt-state'
export type { StateCheck, StateMisfit } from './vouched/state-check'
export { listWaits } from './waits'
