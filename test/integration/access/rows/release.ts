import * as data from '@/lib/data'
import { PASSWORD } from '@/test/factories/people'
import { type AccessRow, EVERYBODY, FABRICATORS, LEADS, PROJECT, REVIEWERS, UNSEEN } from './row'

/** Declaration, moves, signature, release. */
export const RELEASE_ROWS: readonly AccessRow[] = [
  {
    name: 'declareBuildable',
    run: (a, s) =>
      data.declareBuildable(a, {
        revisionId: s.reviewId,
        seenVersion: UNSEEN,
        verdict: 'buildable',
        note: '',
        conditions: [],
        password: PASSWORD,
      }),
    reached: 'stale',
    may: FABRICATORS,
    seenBy: 'revision',
  },
  {
    name: 'decideCondition',
    run: (a, s) =>
      data.decideCondition(a, {
        conditionId: s.conditionId,
        seenVersion: UNSEEN,
        decision: 'decline',
        reason: 'because',
      }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'takeOffRelease',
    run: (a, s) =>
      data.takeOffRelease(a, {
        revisionId: s.reviewId,
        companyId: s.team.companies.ostrel,
        seenVersion: UNSEEN,
        reason: 'because',
      }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'putBackOnRelease',
    run: (a, s) => data.putBackOnRelease(a, { revisionId: s.reviewId, companyId: s.team.companies.ostrel }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'declareReviewed',
    run: (a, s) =>
      data.declareReviewed(a, { revisionId: s.signingId, seenVersion: UNSEEN, note: '', password: PASSWORD }),
    reached: 'stale',
    may: REVIEWERS,
    seenBy: 'revision',
  },
  {
    name: 'withdrawReview',
    run: (a, s) =>
      data.withdrawReview(a, { reviewId: s.withdrawnReviewId, reason: 'second thoughts', password: PASSWORD }),
    reached: 'clash',
    may: ['quality'],
    seenBy: 'revision',
  },
  {
    name: 'followSignOffPolicy',
    run: (a, s) =>
      data.followSignOffPolicy(a, { revisionId: s.reviewId, seenVersion: UNSEEN, toVersion: 0, reason: 'because' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'advanceRevision',
    run: (a, s) => data.advanceRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN }),
    reached: 'blocked',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'sendBackRevision',
    run: (a, s) => data.sendBackRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN, reason: 'because' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'withdrawRevision',
    run: (a, s) =>
      data.withdrawRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN, reason: 'because', password: PASSWORD }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    // Of those who sign, the leads alone were granted this capacity.
    name: 'signRevision',
    run: (a, s) => data.signRevision(a, { ...s.signInput, seenVersion: UNSEEN }),
    reached: 'stale',
    may: LEADS,
    otherwise: { member: 'clash', quality: 'clash' },
    seenBy: 'revision',
  },
  {
    name: 'releaseRevision',
    run: (a, s) =>
      data.releaseRevision(a, {
        revisionId: s.signingId,
        seenVersion: UNSEEN,
        purpose: 'prototypes',
        password: PASSWORD,
      }),
    reached: 'blocked',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'listIssues',
    run: (a, s) => data.listIssues(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'getStatusListFile',
    run: (a) => data.getStatusListFile(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'getPackageStatus',
    run: (a, s) => data.getPackageStatus(a, s.releasedId),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'getPackageFile',
    run: (a, s) => data.getPackageFile(a, s.releasedId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getPackageFile',
    of: 'before release',
    run: (a, s) => data.getPackageFile(a, s.signingId),
    reached: 'ok',
    may: [],
    seenBy: 'nothing',
  },
]
