import 'server-only'

export { type AccessPlace, forgetOldAccess, noteAccess } from './acts/access/access-notes'
/**
 * The data layer: the only folder that sees the database. Every function takes the actor first, loads the record,
 * authorises on what was loaded, and returns plain views.
 *
 * Reads return a view, or throw NotFoundError (absent and forbidden alike) or NotAllowedError (seen, but not theirs).
 * Writes return an ActResult: the value, or a refusal that the person can act on. They throw the same two errors.
 *
 * Without an actor are only what comes before one (first set-up, signing in and out, sessions, invitations, links that work
 * once), what the operator of the installation calls from the command line, and what the server's own worker does: the
 * list in test/integration/access names them.
 */
export { changePassword, markAccountsAsDemo, setAccountState, setAdminRight } from './acts/access/accounts'
export { askForAddressChange, confirmAddress, previewAddressChange } from './acts/access/address-changes'
export { beginPasskeyConfirmation } from './acts/access/confirmation'
export { createFirstAdmin, isWorkspaceEmpty } from './acts/access/first-admin'
export {
  allowIdentity,
  beginIdentityLink,
  finishIdentityLink,
  removeIdentity,
  signInByIdentity,
} from './acts/access/identities'
export {
  arePasskeysPossible,
  beginPasskeySetUp,
  finishPasskeySetUp,
  makePasskeyChallenge,
  removePasskey,
  signInByPasskey,
} from './acts/access/passkeys'
export {
  answerResetRequests,
  askForReset,
  makeResetLink,
  previewReset,
  recoverAccount,
  setPasswordByLink,
} from './acts/access/password-resets'
export {
  beginCodeSetUp,
  finishCodeSetUp,
  finishSecondStep,
  removeCodes,
  removeSecondFactor,
  renewRecoveryCodes,
} from './acts/access/second-factor'
export {
  endSession,
  findActor,
  isSessionOpen,
  loadActor,
  openSession,
  SESSION_SECONDS,
  type SignedIn,
  type SignInMethod,
  signOut,
  signOutEverywhere,
} from './acts/access/sessions'
export { authenticate, type SecondStep } from './acts/access/sign-in'
export { confirmCompany } from './acts/companies/company-claims'
export { removeCompanyPerson, setCompanyRole } from './acts/companies/company-people'
export { restoreSheetVersion, type SavedSheet, saveSheet } from './acts/companies/fabrication-sheets'
export { setLimit } from './acts/companies/limits'
export { bringToProject, decideParticipation, setCompanySharing } from './acts/companies/participations'
export { importSheetFile } from './acts/companies/sheet-files'
export { readArtworkAgain, stopArtworkReading } from './acts/jobs/artwork'
export { type JobView, readJob, runKeptJob, stopJob } from './acts/jobs/kept-jobs'
export { askForRemedies, askForWayOut } from './acts/jobs/remedies'
export { grantCapacity, withdrawCapacity } from './acts/projects/capacities'
export { createInvitation, inviteToCompany, revokeInvitation } from './acts/projects/invitations'
export { acceptInvitation, joinByInvitation } from './acts/projects/joining'
export { removeMember, setMembershipRole } from './acts/projects/members'
export { chooseProfiles } from './acts/projects/profiles'
export { archiveProject, changeProject, createProject } from './acts/projects/projects'
export { shareRevision, unshareRevision } from './acts/projects/shares'
export { followSignOffPolicy, setSignOffPolicy } from './acts/projects/sign-off-policy'
export { answerItem, answerItems } from './acts/review/answers'
export { setArtworkRole } from './acts/review/artwork-roles'
export { decideCondition } from './acts/review/conditions'
export { declareBuildable } from './acts/review/declarations'
export { acknowledgeDifference, takeUpDifference } from './acts/review/differences'
export { noteOnDrawing } from './acts/review/drawing-notes'
export { addArtwork, attachFile, removeArtwork, removeAttachment } from './acts/review/files'
export { recordMeeting } from './acts/review/meetings'
export { acceptNeed, dropNeed, reportNeed, stateNeed } from './acts/review/needs'
export { getPackageFile } from './acts/review/package-receipts'
export { decideProposal, proposeChange, withdrawProposal } from './acts/review/proposals'
export { putBackOnRelease, takeOffRelease } from './acts/review/release-fabricators'
export { releaseRevision } from './acts/review/releases'
export {
  changeAction,
  closeAction,
  dropAction,
  reopenAction,
  reportAction,
  takeOnAction,
} from './acts/review/review-actions'
export { declareReviewed, withdrawReview } from './acts/review/review-statements'
export { createRevision, evaluateAgain, importDesign, saveDesign } from './acts/review/revisions'
export { signRevision, withdrawSignature } from './acts/review/signatures'
export { advanceRevision, type MovedRevision, sendBackRevision, withdrawRevision } from './acts/review/stage-moves'
export { updateTemplate } from './acts/review/template-updates'
export {
  assignThread,
  closeThread,
  editComment,
  openThread,
  reopenThread,
  replyToThread,
} from './acts/review/threads'
export { decideWaiver, proposeWaiver } from './acts/review/waivers'
export { adoptOlderState } from './acts/workspace/adopt-state'
export { type Backup, createBackup, makeBackup } from './acts/workspace/backups'
export { importCatalogue } from './acts/workspace/catalogue-import'
export { sweepFiles } from './acts/workspace/file-sweep'
export {
  keepConstruction,
  type SavedLibraryEntry,
  saveOwnMaterial,
  withdrawLibraryEntry,
} from './acts/workspace/library'
export { getMail, sendMailAgain } from './acts/workspace/mail'
export { setMailChoices } from './acts/workspace/mail-choices'
export { queueDigests } from './acts/workspace/mail-digest'
export { addProfile, changeProfile, removeProfile } from './acts/workspace/profiles'
export { changeSettings } from './acts/workspace/settings'
export { reportKeyCompromised, rotateSigningKey } from './acts/workspace/signing-keys'
export {
  addOwnItem,
  type ChangedTemplate,
  changeDeliveredItem,
  changeOwnItem,
  removeOwnItem,
  saveWorkspaceFlexTests,
} from './acts/workspace/templates'
export type { SavedDesign } from './consequences/design-save'
export { getCompanyAccessFile, getProjectAccessFile, listCompanyAccess, listProjectAccess } from './reads/access-log'
export { type DemoAccount, getOwnAccount, listAccounts, listDemoAccounts, listPeople } from './reads/accounts'
export { getArtworkPicture, getArtworkReading } from './reads/artwork'
export { getCompany } from './reads/companies'
export { listAllCompanies, listCompanies, listOwnCompanies } from './reads/company-lists'
export { type ComparisonRequest, compareInProject, listComparable } from './reads/comparisons'
export { getDrawingFile, getSheetIdentity } from './reads/drawings'
export { getFabricationFit } from './reads/fabrication-fit'
export { getSheet, listSheetVersions } from './reads/fabrication-sheets'
export { type FabricatorStartView, getFabricatorStart } from './reads/fabricator-start'
export { listFabricators } from './reads/fabricators'
export { getFileRoom } from './reads/file-room'
export { getArtworkFile, getAttachmentFile } from './reads/files'
export { getHome, type HomeView } from './reads/home'
export { previewInvitation } from './reads/invitations'
export { getPackageStatus, getStatusListFile } from './reads/issue-status'
export { listIssues } from './reads/issues'
export { type LeadCountView, listLeadCounts } from './reads/lead-counts'
export { getLibrary, getRevisionStarts, listOwnMaterials } from './reads/library'
export { getLimitList } from './reads/limits'
export { getLiveStart, type LiveEvent, type LiveEvents, listLiveEvents } from './reads/live-events'
export { getMailChoices, listMail, type MailboxView, type MailEntryView, type MailView } from './reads/mail'
export { getMeetings, getNeeds } from './reads/meetings'
export { getOwnIdentity, getSecondFactor, listOwnSessions } from './reads/own-access'
export { MAX_ROWS_ON_PAGE, type Paged } from './reads/paged'
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
} from './reads/production'
export { getCatalogueFile, getProjectProfiles, previewCatalogue } from './reads/profiles'
export { getCapacities, getProjectSignOffPolicy, listCapacityProjects } from './reads/project-sign-off'
export { getProject, listProjects } from './reads/projects'
export { getProposal } from './reads/proposals'
export { isDatabaseThere, type Pulse, takePulse } from './reads/pulse'
export { listQuestions, type QuestionsView } from './reads/questions'
export { getQuotation, getQuotationFile, type QuotationPageView } from './reads/quotation'
export { listRefusedSignIns } from './reads/refused-sign-ins'
export { getTrailFile, listRevisionTrail } from './reads/revision-trail'
export { exportDesign, exportResults, getRevision } from './reads/revisions'
export { type SearchHit, type SearchKind, type SearchView, searchReviews } from './reads/search'
export { getSettingsView } from './reads/settings'
export { exportSheetFile, previewSheetFile } from './reads/sheet-files'
export { getSheetVersion } from './reads/sheet-versions'
export { getKeyRegister, getKeyRegisterFile, getPackageTrust } from './reads/signing-keys'
export { workOutOutdated } from './reads/standings'
export { getTemplateUpdate } from './reads/template-updates'
export { getCatalogueInForce, getTemplate, getWorkspaceFlexTests } from './reads/templates'
export { listThreadReaders, type ThreadReader } from './reads/thread-readers'
export {
  checkStoredTrail,
  checkWholeTrail,
  exportTrail,
  readWholeTrail,
  type StoredTrailCheck,
  type WholeTrailCheck,
} from './reads/trail-reads'
export { listWaits } from './reads/waits'
export type { Actor } from './records/authorization'
export { forgetOldJobs, listDueJobs } from './records/job-record'
export {
  beginSending,
  type ClaimedMail,
  claimMail,
  type MailFailure,
  type MailWay,
  noteFailed,
  noteSent,
} from './records/outbox'
export { type KnownDevice, OWN_VISIT, type Visit } from './records/visit'
export { WriteConflictError } from './store/database-errors'
export { NotAllowedError, NotFoundError, RefusalError } from './store/errors'
export { MAX_FILE_BYTES } from './store/file-store'
export type { StateCheck, StateMisfit } from './store/vouched/state-check'
export type * from './views'
