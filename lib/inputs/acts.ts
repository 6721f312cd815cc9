import type { z } from 'zod'
import type { Action, TrailAction } from '@/lib/review'
import * as accounts from './accounts'
import { actionInput } from './common'
import * as companies from './companies'
import { passkeyConfirmationInput } from './confirmation'
import * as declarations from './declarations'
import { importSheetFileInput, restoreSheetVersionInput, saveSheetInput } from './fabrication'
import * as library from './library'
import { mailChoicesInput, sendMailAgainInput } from './mail'
import * as meetings from './meetings'
import * as people from './people'
import * as proposals from './proposals'
import * as review from './review'
import * as reviewActions from './review-actions'
import * as revisions from './revisions'
import * as signOff from './sign-off'
import * as signingKeys from './signing-keys'
import * as templates from './templates'

/** One thing that a signed-in person does: what they send, whose it is to do, and what the trail records of it. */
interface Act {
  readonly input: z.ZodType
  /**
   * The rule that is asked; several where it depends on what the act is done to. `own`: everybody, to their own account. How
   * a refusal is worded stands with the rule, what a record says and who is told with the word of the trail.
   */
  readonly rule: Action | readonly Action[] | 'own'
  readonly records: readonly TrailAction[]
}

const act = <const A extends Act>(declared: A): A => declared

/**
 * Every act of a signed-in person, under the name of its function in the data layer. Actions of the application take their
 * schema from here; tests compare the table with the functions, the rules and the words of the trail.
 */
export const ACTS = {
  // Workspace
  changeSettings: act({ input: accounts.settingsInput, rule: 'settings:edit', records: ['settings-changed'] }),
  setAccountState: act({
    input: accounts.accountStateInput,
    rule: 'account:manage',
    records: ['account-disabled', 'account-enabled'],
  }),
  setAdminRight: act({
    input: accounts.adminRightInput,
    rule: 'account:manage',
    records: ['admin-right-given', 'admin-right-taken'],
  }),
  makeResetLink: act({ input: accounts.accountInput, rule: 'account:manage', records: ['reset-link-made'] }),
  removeSecondFactor: act({ input: accounts.accountInput, rule: 'account:manage', records: ['second-factor-removed'] }),
  allowIdentity: act({ input: accounts.accountInput, rule: 'account:manage', records: ['identity-allowed'] }),
  rotateSigningKey: act({
    input: signingKeys.rotateSigningKeyInput,
    rule: 'signing-key:rotate',
    records: ['signing-key-rotated'],
  }),
  reportKeyCompromised: act({
    input: signingKeys.reportKeyCompromisedInput,
    rule: 'signing-key:rotate',
    records: ['signing-key-compromised'],
  }),
  createBackup: act({ input: actionInput, rule: 'backup:make', records: ['backup-made'] }),
  sendMailAgain: act({ input: sendMailAgainInput, rule: 'mail:view', records: ['mail-sent-again'] }),
  addOwnItem: act({ input: templates.addOwnItemInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  changeOwnItem: act({ input: templates.changeOwnItemInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  removeOwnItem: act({ input: templates.removeOwnItemInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  changeDeliveredItem: act({
    input: templates.changeDeliveredItemInput,
    rule: 'catalogue:edit',
    records: ['catalogue-changed'],
  }),
  saveWorkspaceFlexTests: act({
    input: templates.saveWorkspaceFlexTestsInput,
    rule: 'catalogue:edit',
    records: ['catalogue-changed'],
  }),
  addProfile: act({ input: templates.addProfileInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  changeProfile: act({ input: templates.changeProfileInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  removeProfile: act({ input: templates.removeProfileInput, rule: 'catalogue:edit', records: ['catalogue-changed'] }),
  importCatalogue: act({
    input: templates.importCatalogueInput,
    rule: 'catalogue:edit',
    records: ['catalogue-changed'],
  }),
  saveOwnMaterial: act({ input: library.saveOwnMaterialInput, rule: 'library:edit', records: ['material-saved'] }),
  withdrawLibraryEntry: act({
    input: library.withdrawLibraryEntryInput,
    rule: 'library:edit',
    records: ['library-entry-withdrawn'],
  }),
  keepConstruction: act({
    input: library.keepConstructionInput,
    rule: 'construction:keep',
    records: ['construction-kept'],
  }),
  setLimit: act({
    input: review.limitInput,
    rule: ['limits:edit-workspace', 'limits:edit-fabricator'],
    records: ['limit-set', 'limit-removed', 'catalogue-changed'],
  }),

  // Own account
  changePassword: act({ input: accounts.changePasswordInput, rule: 'own', records: ['password-changed'] }),
  endSession: act({ input: accounts.endSessionInput, rule: 'own', records: ['session-ended'] }),
  setMailChoices: act({ input: mailChoicesInput, rule: 'own', records: [] }),
  askForAddressChange: act({ input: accounts.changeAddressInput, rule: 'own', records: ['address-change-asked'] }),
  beginCodeSetUp: act({ input: accounts.ownPasswordInput, rule: 'own', records: [] }),
  finishCodeSetUp: act({ input: accounts.codeSetUpInput, rule: 'own', records: ['second-factor-added'] }),
  removeCodes: act({ input: accounts.ownPasswordInput, rule: 'own', records: ['second-factor-removed'] }),
  renewRecoveryCodes: act({ input: accounts.ownPasswordInput, rule: 'own', records: ['recovery-codes-made'] }),
  beginPasskeySetUp: act({ input: accounts.ownPasswordInput, rule: 'own', records: [] }),
  finishPasskeySetUp: act({ input: accounts.passkeySetUpInput, rule: 'own', records: ['second-factor-added'] }),
  removePasskey: act({ input: accounts.removePasskeyInput, rule: 'own', records: ['second-factor-removed'] }),
  beginIdentityLink: act({ input: accounts.ownPasswordInput, rule: 'own', records: [] }),
  removeIdentity: act({ input: accounts.ownPasswordInput, rule: 'own', records: ['identity-removed'] }),
  beginPasskeyConfirmation: act({ input: passkeyConfirmationInput, rule: 'own', records: [] }),

  // Projects and fabricators
  createProject: act({ input: people.projectInput, rule: 'project:create', records: ['project-created'] }),
  changeProject: act({ input: people.changeProjectInput, rule: 'project:edit', records: ['project-changed'] }),
  archiveProject: act({
    input: people.archiveProjectInput,
    rule: 'project:edit',
    records: ['project-archived', 'project-brought-back'],
  }),
  chooseProfiles: act({ input: templates.chooseProfilesInput, rule: 'project:edit', records: ['profiles-chosen'] }),
  setSignOffPolicy: act({
    input: signOff.setSignOffPolicyInput,
    rule: 'policy:edit',
    records: ['sign-off-policy-changed', 'sign-off-policy-moved', 'signature-voided'],
  }),
  grantCapacity: act({ input: signOff.grantCapacityInput, rule: 'capacity:grant', records: ['capacity-granted'] }),
  withdrawCapacity: act({
    input: signOff.withdrawCapacityInput,
    rule: 'capacity:grant',
    records: ['capacity-withdrawn'],
  }),
  createInvitation: act({
    input: people.invitationInput,
    rule: 'project:invite',
    records: ['person-invited', 'company-asked'],
  }),
  joinByInvitation: act({
    input: people.joinByInvitationInput,
    rule: 'own',
    records: ['person-joined', 'company-person-joined', 'company-entry-refused'],
  }),
  revokeInvitation: act({
    input: people.revokeInvitationInput,
    rule: ['project:invite', 'company:admit'],
    records: ['invitation-revoked'],
  }),
  setMembershipRole: act({
    input: people.membershipRoleInput,
    rule: 'project:remove-person',
    records: ['role-changed'],
  }),
  removeMember: act({ input: people.removeMemberInput, rule: 'project:remove-person', records: ['person-removed'] }),
  inviteToCompany: act({
    input: people.companyInvitationInput,
    rule: ['company:admit', 'company:take-part'],
    records: ['company-person-invited'],
  }),
  setCompanyRole: act({
    input: companies.companyRoleInput,
    rule: 'company:admit',
    records: ['company-role-changed'],
  }),
  removeCompanyPerson: act({
    input: companies.removeCompanyPersonInput,
    rule: 'company:admit',
    records: ['company-person-removed'],
  }),
  decideParticipation: act({
    input: companies.decideParticipationInput,
    rule: 'company:take-part',
    records: ['company-takes-part', 'company-declined', 'company-left'],
  }),
  setCompanySharing: act({
    input: companies.companySharingInput,
    rule: 'company:share',
    records: ['company-sharing-set'],
  }),
  bringToProject: act({
    input: companies.bringToProjectInput,
    rule: 'company:take-part',
    records: ['person-brought'],
  }),
  confirmCompany: act({
    input: companies.confirmCompanyInput,
    rule: 'company:confirm',
    records: ['company-confirmed', 'company-merged', 'company-asked'],
  }),
  saveSheet: act({ input: saveSheetInput, rule: 'sheet:edit', records: ['sheet-saved'] }),
  importSheetFile: act({ input: importSheetFileInput, rule: 'sheet:edit', records: ['sheet-saved'] }),
  restoreSheetVersion: act({ input: restoreSheetVersionInput, rule: 'sheet:edit', records: ['sheet-saved'] }),

  // Revisions: each may leave a signature on other content, which is then voided
  createRevision: act({
    input: revisions.newRevisionInput,
    rule: ['revision:create', 'revision:copy-elsewhere'],
    records: ['revision-created', 'answers-carried-over', 'needs-carried-over', 'design-copied-elsewhere'],
  }),
  saveDesign: act({ input: revisions.saveDesignInput, rule: 'revision:edit', records: ['design-saved'] }),
  importDesign: act({ input: revisions.importDesignInput, rule: 'revision:edit', records: ['design-imported'] }),
  evaluateAgain: act({ input: revisions.evaluateAgainInput, rule: 'revision:edit', records: ['results-recorded'] }),
  updateTemplate: act({ input: templates.updateTemplateInput, rule: 'revision:edit', records: ['catalogue-updated'] }),
  addArtwork: act({ input: review.addArtworkInput, rule: 'revision:edit', records: ['artwork-added'] }),
  removeArtwork: act({ input: review.removeFileInput, rule: 'revision:edit', records: ['artwork-removed'] }),
  readArtworkAgain: act({ input: review.artworkRevisionInput, rule: 'revision:edit', records: [] }),
  stopArtworkReading: act({ input: review.artworkRevisionInput, rule: 'revision:edit', records: [] }),
  setArtworkRole: act({ input: review.setArtworkRoleInput, rule: 'revision:edit', records: ['artwork-role-said'] }),
  shareRevision: act({ input: revisions.shareRevisionInput, rule: 'revision:share', records: ['revision-shared'] }),
  unshareRevision: act({ input: revisions.shareRevisionInput, rule: 'revision:share', records: ['revision-unshared'] }),

  // Review
  answerItem: act({ input: review.answerItemInput, rule: 'item:answer', records: ['item-answered'] }),
  answerItems: act({ input: review.answerItemsInput, rule: 'item:answer', records: ['item-answered'] }),
  attachFile: act({
    input: review.attachFileInput,
    rule: ['item:answer', 'comment:edit', 'review-action:report'],
    records: ['file-attached'],
  }),
  removeAttachment: act({
    input: review.removeFileInput,
    rule: ['item:answer', 'comment:edit', 'review-action:report'],
    records: ['file-removed'],
  }),
  proposeWaiver: act({ input: review.proposeWaiverInput, rule: 'waiver:propose', records: ['waiver-proposed'] }),
  decideWaiver: act({
    input: review.decideWaiverInput,
    rule: ['waiver:approve', 'waiver:decline'],
    records: ['waiver-approved', 'waiver-declined'],
  }),
  openThread: act({
    input: review.openThreadInput,
    rule: ['revision:comment', 'revision:raise-query'],
    records: ['thread-opened'],
  }),
  replyToThread: act({
    input: review.replyInput,
    rule: ['thread:reply', 'thread:answer'],
    records: ['thread-replied', 'thread-answered'],
  }),
  closeThread: act({ input: review.closeThreadInput, rule: 'thread:close', records: ['thread-closed'] }),
  reopenThread: act({ input: review.reopenThreadInput, rule: 'thread:close', records: ['thread-reopened'] }),
  assignThread: act({ input: review.assignThreadInput, rule: 'thread:assign', records: ['thread-assigned'] }),
  noteOnDrawing: act({
    input: review.noteOnDrawingInput,
    rule: 'revision:edit',
    records: ['design-saved', 'thread-noted', 'signature-voided'],
  }),
  editComment: act({ input: review.editCommentInput, rule: 'comment:edit', records: ['comment-edited'] }),
  proposeChange: act({
    input: proposals.proposeChangeInput,
    rule: 'proposal:make',
    records: ['proposal-made', 'thread-opened'],
  }),
  decideProposal: act({
    input: proposals.decideProposalInput,
    rule: 'proposal:decide',
    records: ['proposal-accepted', 'proposal-declined', 'design-saved'],
  }),
  withdrawProposal: act({
    input: proposals.withdrawProposalInput,
    rule: 'proposal:withdraw',
    records: ['proposal-withdrawn'],
  }),
  declareBuildable: act({
    input: declarations.declarationInput,
    rule: 'declaration:make',
    records: ['declared-buildable', 'declared-with-conditions', 'declared-not-buildable', 'signature-voided'],
  }),
  decideCondition: act({
    input: declarations.decideConditionInput,
    rule: 'condition:decide',
    records: [
      'condition-taken-over',
      'condition-declined',
      'condition-made-action',
      'action-taken-on',
      'signature-voided',
    ],
  }),
  takeOffRelease: act({
    input: declarations.takeOffReleaseInput,
    rule: 'release:choose-fabricators',
    records: ['taken-off-release', 'signature-voided'],
  }),
  putBackOnRelease: act({
    input: declarations.putBackOnReleaseInput,
    rule: 'release:choose-fabricators',
    records: ['put-back-on-release', 'signature-voided'],
  }),

  // Actions
  takeOnAction: act({
    input: reviewActions.takeOnActionInput,
    rule: 'review-action:take-on',
    records: ['action-taken-on'],
  }),
  changeAction: act({
    input: reviewActions.changeActionInput,
    rule: 'review-action:change',
    records: ['action-changed'],
  }),
  reportAction: act({
    input: reviewActions.reportActionInput,
    rule: 'review-action:report',
    records: ['action-reported'],
  }),
  closeAction: act({ input: reviewActions.closeActionInput, rule: 'review-action:close', records: ['action-closed'] }),
  dropAction: act({ input: reviewActions.dropActionInput, rule: 'review-action:drop', records: ['action-dropped'] }),
  reopenAction: act({
    input: reviewActions.reopenActionInput,
    rule: 'review-action:reopen',
    records: ['action-reopened'],
  }),

  // Meetings and needs
  recordMeeting: act({
    input: meetings.recordMeetingInput,
    rule: 'meeting:record',
    records: ['meeting-recorded', 'action-taken-on', 'signature-voided'],
  }),
  stateNeed: act({ input: meetings.stateNeedInput, rule: 'need:state', records: ['need-stated'] }),
  reportNeed: act({ input: meetings.reportNeedInput, rule: 'need:report', records: ['need-reported'] }),
  acceptNeed: act({ input: meetings.acceptNeedInput, rule: 'need:accept', records: ['need-accepted'] }),
  dropNeed: act({ input: meetings.dropNeedInput, rule: 'need:state', records: ['need-dropped'] }),

  // Sign-off
  followSignOffPolicy: act({
    input: signOff.followSignOffPolicyInput,
    rule: 'policy:follow',
    records: ['sign-off-policy-followed'],
  }),
  acknowledgeDifference: act({
    input: signOff.acknowledgeDifferenceInput,
    rule: 'difference:let-stand',
    records: ['difference-let-stand', 'signature-voided'],
  }),
  takeUpDifference: act({
    input: signOff.takeUpDifferenceInput,
    rule: 'difference:let-stand',
    records: ['difference-taken-up', 'signature-voided'],
  }),
  declareReviewed: act({
    input: signOff.declareReviewedInput,
    rule: 'review:declare',
    records: ['declared-reviewed'],
  }),
  withdrawReview: act({ input: signOff.withdrawReviewInput, rule: 'review:declare', records: ['review-withdrawn'] }),
  advanceRevision: act({ input: revisions.advanceInput, rule: 'stage:move', records: ['stage-moved'] }),
  sendBackRevision: act({
    input: revisions.sendBackInput,
    rule: 'stage:move',
    records: ['stage-moved', 'signature-voided'],
  }),
  withdrawRevision: act({
    input: revisions.withdrawInput,
    rule: 'revision:withdraw',
    records: ['stage-moved', 'signature-voided'],
  }),
  signRevision: act({ input: revisions.signInputSchema, rule: 'revision:sign', records: ['revision-signed'] }),
  withdrawSignature: act({
    input: revisions.withdrawSignatureInput,
    rule: 'signature:withdraw',
    records: ['signature-voided'],
  }),
  releaseRevision: act({
    input: revisions.releaseInput,
    rule: 'revision:release',
    records: ['revision-released', 'stage-moved', 'package-issued'],
  }),
} as const

export type ActName = keyof typeof ACTS
export type ActInput<K extends ActName> = z.infer<(typeof ACTS)[K]['input']>
