import { isOpenStage } from '../stages'
import type { Rules } from './actions'
import {
  areActionsLive,
  canChangeContent,
  canComment,
  canSeeThread,
  isFabricatorOf,
  isLead,
  isLeadOrQuality,
  isOpenedByFabricator,
  isOwnCompanyIn,
  isSecondPerson,
  isTeam,
  isTeamOrQuality,
  mayActOn,
  readsProject,
} from './who'

/** Rules for remarks on a revision and acts on it. */
export const REVIEW_RULES = {
  'revision:comment': { subject: 'revision', mayNot: 'comment on this revision', rule: canComment },
  'revision:raise-query': {
    subject: 'revision',
    mayNot: 'raise an engineering query on this revision',
    rule: (rights, subject) => isOpenStage(subject.stage) && isFabricatorOf(rights, subject),
  },
  'proposal:make': {
    subject: 'revision',
    mayNot: 'propose a change of this revision',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && (isTeam(rights, subject) || isFabricatorOf(rights, subject)),
  },
  'proposal:decide': { subject: 'revision', mayNot: 'decide on a proposal for this revision', rule: canChangeContent },
  'proposal:view': { subject: 'proposal', mayNot: null, rule: canSeeThread },
  'proposal:withdraw': {
    subject: 'proposal',
    mayNot: 'withdraw this proposal',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && canSeeThread(rights, subject) && subject.proposedBy === rights.userId,
  },
  'item:answer': {
    subject: 'item',
    mayNot: 'answer this item',
    rule: (rights, subject) =>
      (subject.answeredBy.some((role) => role === 'lead' || role === 'member') && canChangeContent(rights, subject)) ||
      (subject.answeredBy.includes('fabricator') &&
        isOpenStage(subject.stage) &&
        !subject.hasLiveSignature &&
        isFabricatorOf(rights, subject)),
  },
  'waiver:propose': { subject: 'revision', mayNot: 'propose a waiver on this revision', rule: canChangeContent },
  'waiver:approve': {
    subject: 'waiver',
    mayNot: 'approve this waiver',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLeadOrQuality(rights, subject) && subject.isIndependent,
  },
  'waiver:decline': {
    subject: 'waiver',
    mayNot: 'decline this waiver',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLeadOrQuality(rights, subject),
  },
  'thread:view': { subject: 'thread', mayNot: null, rule: canSeeThread },
  'thread:reply': {
    subject: 'thread',
    mayNot: 'reply in this thread',
    rule: (rights, subject) => canComment(rights, subject) && canSeeThread(rights, subject),
  },
  // The other side answers: the team what a fabricator asked, and anybody who can comment what the team asked.
  'thread:answer': {
    subject: 'thread',
    mayNot: 'answer this thread',
    rule: (rights, subject) =>
      canComment(rights, subject) &&
      canSeeThread(rights, subject) &&
      (isTeamOrQuality(rights, subject) || !isOpenedByFabricator(subject)),
  },
  'thread:assign': {
    subject: 'thread',
    mayNot: 'say who answers this thread and by when',
    rule: (rights, subject) => canComment(rights, subject) && canSeeThread(rights, subject),
  },
  'thread:close': {
    subject: 'thread',
    mayNot: 'close this thread',
    rule: (rights, subject) =>
      canComment(rights, subject) &&
      canSeeThread(rights, subject) &&
      (isLead(rights, subject) ||
        subject.openedBy === rights.userId ||
        (isOpenedByFabricator(subject) && isOwnCompanyIn(rights, subject.projectId, subject.openedByCompanyId))),
  },
  'comment:edit': {
    subject: 'comment',
    mayNot: 'change this comment',
    rule: (rights, subject) =>
      canComment(rights, subject) && canSeeThread(rights, subject) && subject.authorId === rights.userId,
  },
  // Minutes and needs are the team's own: they name every fabricator.
  'minutes:view': { subject: 'revision', mayNot: 'read minutes and needs of this revision', rule: readsProject },
  'meeting:record': {
    subject: 'revision',
    mayNot: 'record a meeting of this revision',
    rule: (rights, subject) => areActionsLive(subject) && isTeamOrQuality(rights, subject),
  },
  'need:state': {
    subject: 'revision',
    mayNot: 'state or drop needs of this revision',
    rule: (rights, subject) => isOpenStage(subject.stage) && isTeamOrQuality(rights, subject),
  },
  // Results come back to a released revision: they change nothing that was signed.
  'need:report': {
    subject: 'revision',
    mayNot: 'report on needs of this revision',
    rule: (rights, subject) => areActionsLive(subject) && isTeamOrQuality(rights, subject),
  },
  'need:accept': {
    subject: 'revision',
    mayNot: 'accept the result of a need',
    rule: (rights, subject) => areActionsLive(subject) && isLeadOrQuality(rights, subject),
  },
  'review-action:take-on': {
    subject: 'revision',
    mayNot: 'take on an action on this revision',
    rule: (rights, subject) => areActionsLive(subject) && isTeamOrQuality(rights, subject),
  },
  'review-action:view': { subject: 'review-action', mayNot: null, rule: canSeeThread },
  // Who is to do it does not set its day: a move past the release would lift what blocks it.
  'review-action:change': {
    subject: 'review-action',
    mayNot: 'change owner or due date of this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && isTeamOrQuality(rights, subject) && rights.userId !== subject.ownerId,
  },
  'review-action:report': {
    subject: 'review-action',
    mayNot: 'report this action done',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && (rights.userId === subject.ownerId || isTeamOrQuality(rights, subject)),
  },
  'review-action:close': {
    subject: 'review-action',
    mayNot: 'close this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) &&
      isSecondPerson(rights, subject) &&
      // A fabricator does not accept the work of its own people.
      (isTeamOrQuality(rights, subject) || subject.ownerCompanyId !== subject.audienceCompanyId),
  },
  'review-action:drop': {
    subject: 'review-action',
    mayNot: 'drop this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && isLead(rights, subject) && rights.userId !== subject.ownerId,
  },
  'review-action:reopen': {
    subject: 'review-action',
    mayNot: 'reopen this action',
    rule: mayActOn,
  },
} satisfies Partial<Rules>
