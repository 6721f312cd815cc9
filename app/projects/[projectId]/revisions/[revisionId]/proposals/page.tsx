import Link from 'next/link'
import { PROPOSAL_WORDS } from '@/app/_components/review/words'
import { paths } from '@/app/_components/shell/paths'
import { EmptyState } from '@/app/_components/ui/notices'
import { Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { loadRevision, type RevisionParams } from '../load-revision'

/** Changes that somebody proposed: those that wait first. */
export default async function ProposalsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  const { proposals } = revision
  const waiting = proposals.filter(({ state }) => state === 'proposed')
  const settled = proposals.filter(({ state }) => state !== 'proposed').reverse()
  return (
    <Section title="Proposed changes">
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
        <TableFrame label="Proposed changes">
          <table className="ledger" data-stack>
            <thead>
              <tr>
                <th scope="col">Proposal</th>
                <th scope="col">State</th>
                <th scope="col">Proposed by</th>
                <th scope="col">On</th>
                <th scope="col" className="num">
                  Version
                </th>
                <th scope="col">Decision</th>
              </tr>
            </thead>
            <tbody>
              {[...waiting, ...settled].map((proposal) => (
                <tr key={proposal.id}>
                  <th scope="row">
                    <Link href={paths.proposal(projectId, revisionId, proposal.id)}>{proposal.title}</Link>
                  </th>
                  <td data-label="state">{PROPOSAL_WORDS[proposal.state]}</td>
                  <td data-label="proposed by">
                    {proposal.proposedBy.name}, <span className="muted">{proposal.proposedByCompany}</span>
                  </td>
                  <td data-label="on">
                    <Timestamp at={proposal.proposedAt} dateOnly />
                  </td>
                  <td className="num" data-label="version">
                    {proposal.baseVersion}
                  </td>
                  <td data-label="decision">
                    {proposal.decidedBy !== null && (
                      <>
                        {proposal.decidedBy.name}
                        {proposal.decisionNote !== '' && <span className="muted">: {proposal.decisionNote}</span>}
                      </>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
    </Section>
  )
}
