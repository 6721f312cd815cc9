import { isOpenStage } from '../stages'
import type { Rules } from './actions'
import { canChangeContent, isFabricatorOf, isLead, isLeadOrQuality, isTeam, isTeamOrQuality, readsProject } from './who'

/** Rules of a revision on its way to release. */
export const REVISIONS_RULES = {
  'revision:view': {
    subject: 'revision',
    mayNot: null,
    rule: (rights, subject) => readsProject(rights, subject) || isFabricatorOf(rights, subject),
  },
  'revision:view-trail': {
    subject: 'revision',
    mayNot: 'read the trail of this revision',
    rule: readsProject,
  },
  'revision:edit': { subject: 'revision', mayNot: 'change this revision', rule: canChangeContent },
  // The design goes to people who may have no part in its project: anyone on its team may do it, at any stage.
  'revision:copy-elsewhere': {
    subject: 'revision',
    mayNot: 'copy the design of this revision into another project',
    rule: isTeam,
  },
  // Every team of the workspace sees it then, and may build on it.
  'construction:keep': {
    subject: 'revision',
    mayNot: 'keep the construction of this revision for other projects',
    rule: isLead,
  },
  'revision:share': {
    subject: 'revision',
    mayNot: 'share this revision',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'revision:sign': {
    subject: 'revision',
    mayNot: 'sign this revision',
    rule: (rights, subject) =>
      subject.stage === 'awaiting-signature' && subject.hasCapacity === true && isTeamOrQuality(rights, subject),
  },
  // A signature is its signer's: nobody else takes it back, they send the revision back instead.
  'signature:withdraw': {
    subject: 'signature',
    mayNot: 'withdraw this signature',
    rule: (rights, subject) =>
      subject.stage === 'awaiting-signature' && subject.signerId === rights.userId && isTeamOrQuality(rights, subject),
  },
  'revision:release': {
    subject: 'revision',
    mayNot: 'release this revision',
    rule: (rights, subject) => subject.stage === 'awaiting-signature' && isLead(rights, subject),
  },
  'revision:withdraw': {
    subject: 'revision',
    mayNot: 'withdraw this revision',
    rule: (rights, subject) => (isOpenStage(subject.stage) || subject.stage === 'released') && isLead(rights, subject),
  },
  'stage:move': {
    subject: 'revision',
    mayNot: 'move this revision between stages',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'policy:follow': {
    subject: 'revision',
    mayNot: 'put this revision under another sign-off policy',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  // Whether the person is an author of the content is asked beside this: it is the content's question, not the role's.
  'review:declare': {
    subject: 'revision',
    mayNot: 'declare this revision reviewed',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && subject.stage !== 'preparing' && isTeamOrQuality(rights, subject),
  },
  // Also while signature is awaited: a late edit leaves the declaration on other content, and it must be made again.
  'declaration:make': {
    subject: 'revision',
    mayNot: 'declare on this revision',
    rule: (rights, subject) =>
      (subject.stage === 'fabricator-review' || subject.stage === 'awaiting-signature') &&
      isFabricatorOf(rights, subject),
  },
  'condition:decide': {
    subject: 'revision',
    mayNot: "decide on a fabricator's condition",
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'difference:let-stand': {
    subject: 'revision',
    mayNot: 'let a difference between words and numbers stand',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLeadOrQuality(rights, subject),
  },
  'release:choose-fabricators': {
    subject: 'revision',
    mayNot: 'choose the fabricators of this release',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'package:download': {
    subject: 'revision',
    mayNot: 'download the package of this revision',
    rule: (rights, subject) =>
      (readsProject(rights, subject) && ['released', 'superseded', 'withdrawn'].includes(subject.stage)) ||
      (isFabricatorOf(rights, subject) && ['released', 'superseded'].includes(subject.stage)),
  },
} satisfies Partial<Rules>
