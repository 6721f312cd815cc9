import * as data from '@/lib/data'
import { type AccessRow, LEADS, READERS, REVIEWERS, UNSEEN } from './row'

/** Minutes, needs, and what differs and was let stand. */
export const MEETING_ROWS: readonly AccessRow[] = [
  {
    name: 'getMeetings',
    run: (a, s) => data.getMeetings(a, s.reviewId),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },
  { name: 'getNeeds', run: (a, s) => data.getNeeds(a, s.reviewId), reached: 'ok', may: READERS, seenBy: 'revision' },
  {
    name: 'recordMeeting',
    run: (a, s) =>
      data.recordMeeting(a, {
        revisionId: s.reviewId,
        title: 'Review',
        heldOn: '2999-01-01',
        agenda: '',
        people: [{ userId: s.team.lead.userId, attendance: 'present' }],
        decisions: [],
      }),
    reached: 'invalid',
    may: REVIEWERS,
    seenBy: 'revision',
  },
  {
    name: 'stateNeed',
    run: (a, s) =>
      data.stateNeed(a, {
        revisionId: s.reviewId,
        text: 'Text',
        itemIds: ['no-such-item'],
        method: 'test',
        plannedOn: '',
      }),
    reached: 'invalid',
    may: REVIEWERS,
    seenBy: 'revision',
  },
  {
    name: 'reportNeed',
    run: (a, s) => data.reportNeed(a, { needId: s.needId, seenVersion: UNSEEN, result: 'Text' }),
    reached: 'stale',
    may: REVIEWERS,
    seenBy: 'draft',
  },
  {
    name: 'acceptNeed',
    run: (a, s) => data.acceptNeed(a, { needId: s.needId, seenVersion: UNSEEN, reason: '' }),
    reached: 'stale',
    may: [...LEADS, 'quality'],
    seenBy: 'draft',
  },
  {
    name: 'dropNeed',
    run: (a, s) => data.dropNeed(a, { needId: s.needId, seenVersion: UNSEEN, reason: 'Text' }),
    reached: 'stale',
    may: REVIEWERS,
    seenBy: 'draft',
  },
  {
    name: 'acknowledgeDifference',
    run: (a, s) =>
      data.acknowledgeDifference(a, {
        revisionId: s.reviewId,
        seenVersion: UNSEEN,
        key: 'f'.repeat(64),
        reason: 'because',
      }),
    reached: 'stale',
    may: [...LEADS, 'quality'],
    seenBy: 'revision',
  },
  {
    name: 'takeUpDifference',
    run: (a, s) => data.takeUpDifference(a, { acknowledgementId: s.takenUpDifferenceId, reason: 'because' }),
    reached: 'clash',
    may: [...LEADS, 'quality'],
    seenBy: 'revision',
  },
]
