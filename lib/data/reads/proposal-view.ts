import 'server-only'
import type { RevisionSubject } from '@/lib/review'
import { maySeeProposal, type PersonRights } from '../records/authorization'
import { toCompanyView, toPersonView } from '../records/part-views'
import { getCompanyName, type RevisionRecord } from '../records/revision-record'
import { readWord } from '../records/stored-words'
import type { ProposalSummary } from '../views'

export const PROPOSAL_STATES = ['proposed', 'accepted', 'declined', 'withdrawn'] as const

type ProposalRow = RevisionRecord['proposals'][number]

/** Proposals of a revision that the person may see, oldest first. */
export function listProposalSummaries(
  record: RevisionRecord,
  rights: PersonRights,
  subject: RevisionSubject,
): ProposalSummary[] {
  return record.proposals
    .filter((proposal) => maySeeProposal(rights, subject, proposal))
    .map((proposal) => toProposalSummary(record, proposal))
}

export function toProposalSummary(record: RevisionRecord, row: ProposalRow): ProposalSummary {
  return {
    id: row.id,
    revisionId: row.revisionId,
    title: row.title,
    state: readWord(row.state, PROPOSAL_STATES, 'state of a proposal'),
    company: row.audienceCompany === null ? null : toCompanyView(row.audienceCompany),
    proposedBy: toPersonView(record, row.proposedById),
    proposedByCompany: getCompanyName(record, row.proposedByCompanyId),
    proposedAt: row.proposedAt.toISOString(),
    decidedBy: row.decidedById === null ? null : toPersonView(record, row.decidedById),
    decidedAt: row.decidedAt?.toISOString() ?? null,
    decisionNote: row.decisionNote,
    baseVersion: row.baseVersion,
    madeVersion: row.madeVersion,
    threadId: row.threadId,
  }
}
