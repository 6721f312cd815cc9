import type { Actor } from '@/lib/data'
import * as data from '@/lib/data'
import type { AccessScene } from '../scene'
import { type AccessRow, BRACKENFOLD, FABRICATORS, PROJECT, READERS, TEAM, UNSEEN } from './row'

/** Proposals and comparison. */
export const PROPOSAL_ROWS: readonly AccessRow[] = [
  {
    name: 'proposeChange',
    run: (a, s) =>
      data.proposeChange(a, {
        revisionId: s.reviewId,
        seenVersion: UNSEEN,
        design: s.design,
        title: 'Title',
        why: 'Text',
        kind: 'note',
      }),
    reached: 'stale',
    may: [...TEAM, ...FABRICATORS],
    seenBy: 'revision',
  },
  {
    name: 'proposeChange',
    of: 'on a revision that is not shared',
    run: (a, s) =>
      data.proposeChange(a, {
        revisionId: s.draftId,
        seenVersion: UNSEEN,
        design: s.design,
        title: 'Title',
        why: 'Text',
        kind: 'note',
      }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getProposal',
    of: "a fabricator's",
    run: (a, s) => data.getProposal(a, s.withdrawnProposalId),
    reached: 'ok',
    may: [...READERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'decideProposal',
    of: "a fabricator's, withdrawn",
    run: (a, s) =>
      data.decideProposal(a, {
        proposalId: s.withdrawnProposalId,
        seenVersion: UNSEEN,
        decision: 'accept',
        reason: 'because',
      }),
    reached: 'clash',
    may: TEAM,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'withdrawProposal',
    of: 'already withdrawn',
    run: (a, s) => data.withdrawProposal(a, { proposalId: s.withdrawnProposalId, reason: '' }),
    reached: 'clash',
    may: ['fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'listComparable',
    run: (a, s) => data.listComparable(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'compareInProject',
    of: 'shared revisions',
    run: (a, s) => compare(a, s, { kind: 'revision', id: s.releasedId }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'compareInProject',
    of: 'with one that is not shared',
    run: (a, s) => compare(a, s, { kind: 'revision', id: s.draftId }),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'compareInProject',
    of: "with a fabricator's proposal",
    run: (a, s) => compare(a, s, { kind: 'proposal', id: s.withdrawnProposalId }),
    reached: 'ok',
    may: [...READERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
]

function compare(actor: Actor, scene: AccessScene, to: data.ComparisonRequest['to']) {
  const from = { kind: 'revision' as const, id: scene.reviewId }
  return data.compareInProject(actor, { projectId: scene.team.projectId, from, to })
}
