import { notFound } from 'next/navigation'
import { ComparisonReport } from '@/app/_components/review/comparison-report'
import { ProposalActs } from '@/app/_components/review/proposal-acts'
import { ThreadCard } from '@/app/_components/review/thread-card'
import { PROPOSAL_WORDS } from '@/app/_components/review/words'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getProposal, MAX_FILE_BYTES, type ProposalView } from '@/lib/data'
import { loadRevision } from '../../load-revision'

interface ProposalPageProps {
  params: Promise<{ projectId: string; revisionId: string; proposalId: string }>
}

/** One proposed change: what it would come to, whether it still applies, its thread, and the decision. */
export default async function ProposalPage({ params }: ProposalPageProps) {
  const { projectId, revisionId, proposalId } = await params
  const { actor } = await loadRevision(projectId, revisionId)
  const proposal = await computeOrNotFound(actor, () => getProposal(actor, proposalId))
  if (proposal.revisionId !== revisionId) notFound()
  const sides = { from: `base:${proposal.id}`, to: `proposal:${proposal.id}` }
  const isOnPresent = proposal.comparedWith === 'present'
  return (
    <>
      <PageSection
        title={proposal.title}
        actions={
          <LinkButton href={paths.compare(projectId, sides)} weight="quiet">
            Compare as proposed
          </LinkButton>
        }
      >
        <div className="stack">
          <Facts proposal={proposal} />
          {proposal.obstacles.length > 0 && (
            <Notice tone="caution" role="status">
              <p>
                <strong>This proposal no longer applies.</strong> The design has moved on to version{' '}
                {proposal.designVersion}:
              </p>
              <ul className="changes">
                {proposal.obstacles.map((obstacle) => (
                  <li key={obstacle}>{obstacle}</li>
                ))}
              </ul>
            </Notice>
          )}
          <ProposalActs proposal={proposal} />
          <p className="muted small">
            {isOnPresent
              ? `Compared with the current design, version ${proposal.designVersion}: this is what accepting would change.`
              : `Compared with version ${proposal.baseVersion}, on which it is based.`}
          </p>
        </div>
      </PageSection>
      <ComparisonReport
        comparison={proposal.comparison}
        questions={proposal.questions}
        projectId={projectId}
        revisionId={revisionId}
        before={isOnPresent ? 'Current' : `Version ${proposal.baseVersion}`}
        after="As proposed"
      />
      {proposal.thread !== null && (
        <PageSection title="Thread">
          <ThreadCard projectId={projectId} thread={proposal.thread} maxFileBytes={MAX_FILE_BYTES} />
        </PageSection>
      )}
      <PageSection title="The patch">
        <details>
          <summary>
            {proposal.patch.length} operations, as kept (JSON Patch, RFC 6902); tests guard what follows them
          </summary>
          <ol className="small">
            {proposal.patch.map((operation, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: an operation's place in the patch is what it is known by
              <li key={index}>
                {proposal.operations[index]} <code>{JSON.stringify(operation)}</code>
              </li>
            ))}
          </ol>
        </details>
      </PageSection>
    </>
  )
}

function Facts({ proposal }: { proposal: ProposalView }) {
  return (
    <dl className="terms">
      <dt>state</dt>
      <dd>{PROPOSAL_WORDS[proposal.state]}</dd>
      <dt>proposed by</dt>
      <dd>
        {proposal.proposedBy.name}, {proposal.proposedByCompany}, <Timestamp at={proposal.proposedAt} />
      </dd>
      <dt>based on</dt>
      <dd>version {proposal.baseVersion} of the design</dd>
      <dt>seen by</dt>
      <dd>{proposal.company === null ? 'the team only' : `the team and ${proposal.company.name}`}</dd>
      {proposal.decidedBy !== null && proposal.decidedAt !== null && (
        <>
          <dt>{PROPOSAL_WORDS[proposal.state]} by</dt>
          <dd>
            {proposal.decidedBy.name}, <Timestamp at={proposal.decidedAt} />
            {proposal.madeVersion !== null && `; made version ${proposal.madeVersion}`}
            {proposal.decisionNote !== '' && <p className="said">{proposal.decisionNote}</p>}
          </dd>
        </>
      )}
    </dl>
  )
}
