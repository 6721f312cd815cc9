import * as data from '@/lib/data'
import { type AccessRow, BRACKENFOLD, LEADS, REVIEWERS, UNSEEN } from './row'

/** Actions. The team's own is the lead's to do; Brackenfold's is its administrator's. */
export const REVIEW_ACTION_ROWS: readonly AccessRow[] = [
  {
    name: 'takeOnAction',
    run: (a, s) =>
      data.takeOnAction(a, {
        revisionId: s.reviewId,
        origin: { kind: 'thread', id: 'no-such-thread' },
        text: 'Text',
        ownerId: s.team.lead.userId,
        due: 'before-series',
        dueOn: '',
      }),
    reached: 'invalid',
    may: REVIEWERS,
    seenBy: 'revision',
  },
  {
    name: 'changeAction',
    of: "the lead's own",
    run: (a, s) =>
      data.changeAction(a, {
        actionId: s.teamActionId,
        seenVersion: UNSEEN,
        ownerId: s.team.member.userId,
        due: 'before-series',
        dueOn: '',
        reason: 'Text',
      }),
    reached: 'stale',
    may: ['secondLead', 'member', 'quality'],
    seenBy: 'draft',
  },
  {
    name: 'reportAction',
    of: "the team's own",
    run: (a, s) => data.reportAction(a, { actionId: s.teamActionId, seenVersion: UNSEEN, evidence: 'Text' }),
    reached: 'stale',
    may: REVIEWERS,
    seenBy: 'draft',
  },
  {
    name: 'reportAction',
    of: "a fabricator's",
    run: (a, s) => data.reportAction(a, { actionId: s.brackenfoldActionId, seenVersion: UNSEEN, evidence: 'Text' }),
    reached: 'stale',
    may: [...REVIEWERS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'closeAction',
    of: "the lead's own",
    run: (a, s) => data.closeAction(a, { actionId: s.teamActionId, seenVersion: UNSEEN, reason: '' }),
    reached: 'stale',
    may: ['secondLead', 'member', 'quality'],
    seenBy: 'draft',
  },
  {
    name: 'closeAction',
    of: "a fabricator's",
    run: (a, s) => data.closeAction(a, { actionId: s.brackenfoldActionId, seenVersion: UNSEEN, reason: '' }),
    reached: 'stale',
    may: REVIEWERS,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'dropAction',
    of: "a fabricator's",
    run: (a, s) => data.dropAction(a, { actionId: s.brackenfoldActionId, seenVersion: UNSEEN, reason: 'Text' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'reopenAction',
    of: "a fabricator's",
    run: (a, s) => data.reopenAction(a, { actionId: s.brackenfoldActionId, seenVersion: UNSEEN, reason: 'Text' }),
    reached: 'stale',
    may: [...REVIEWERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
]
