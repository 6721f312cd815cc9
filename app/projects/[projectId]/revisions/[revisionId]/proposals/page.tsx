import Link from 'next/link'
import { PROPOSAL_WORDS } from '@/app/_components/review/words'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { loadRevision, type RevisionParams } from '../load-revision'

const COLUMNS = {
  proposal: { head: 'Proposal', isRowHead: true },
  state: { head: 'State' },
  proposedBy: { head: 'Proposed by' },
  on: { head: 'On' },
  version: { head: 'Version', isNumeric: true },
  decision: { head: 'Decision' },
} satisfies Columns

/** Changes that somebody proposed: those that wait first. */
export default async function ProposalsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  const { proposals } = revision
  const waiting = proposals.filter(({ state }) => state === 'proposed')
  const settled = proposals.filter(({ state }) => state !== 'proposed').reverse()
  return (
    <PageSection title="Proposed changes">
      {revision.may.propose && (
        <p>
          A change is proposed as an edit: change it under{' '}
          <Link href={paths.revision(projectId, revisionId, 'construction')}>construction</Link>,{' '}
          <Link href={paths.revision(projectId, revisionId, 'bends')}>bends</Link> or{' '}
          <Link href={paths.revision(projectId, revisionId, 'features')}>features</Link>, and propose it there instead
          of saving.
        </p>
      )}
      {proposals.length === 0 ? (
        <EmptyState>No changes have been proposed for this revision.</EmptyState>
      ) : (
        <DataTable label="Proposed changes" columns={COLUMNS}>
          {[...waiting, ...settled].map((proposal) => (
            <DataRow
              key={proposal.id}
              columns={COLUMNS}
              cells={{
                proposal: <Link href={paths.proposal(projectId, revisionId, proposal.id)}>{proposal.title}</Link>,
                state: PROPOSAL_WORDS[proposal.state],
                proposedBy: (
                  <>
                    {proposal.proposedBy.name}, <span className="muted">{proposal.proposedByCompany}</span>
                  </>
                ),
                on: <Timestamp at={proposal.proposedAt} dateOnly />,
                version: proposal.baseVersion,
                decision: proposal.decidedBy !== null && (
                  <>
                    {proposal.decidedBy.name}
                    {proposal.decisionNote !== '' && <span className="muted">: {proposal.decisionNote}</span>}
                  </>
                ),
              }}
            />
          ))}
        </DataTable>
      )}
    </PageSection>
  )
}
