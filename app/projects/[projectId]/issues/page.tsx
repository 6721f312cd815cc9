import type { Metadata } from 'next'
import Link from 'next/link'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getProject, type IssueView, listIssues } from '@/lib/data'
import { describeChange, describeTerms } from '@/lib/review'

export const metadata: Metadata = { title: 'Issue register' }

const COLUMNS = {
  revision: { head: 'Revision', isRowHead: true },
  status: { head: 'Status' },
  released: { head: 'Released' },
  terms: { head: 'For what, within which limits' },
  why: { head: 'Change, reason, effectivity' },
  replaces: { head: 'Replaces' },
  receivers: { head: 'Receivers and receipts' },
} satisfies Columns

export default async function IssuesPage({ params }: { params: Promise<{ projectId: string }> }) {
  const { projectId } = await params
  const actor = await requireActor(paths.issues(projectId))
  const [project, issues] = await readOrNotFound(() =>
    Promise.all([getProject(actor, projectId), listIssues(actor, projectId)]),
  )
  const partNumbers = [...new Set(issues.map(({ partNumber }) => partNumber))]
  return (
    <>
      <PageHead
        title="Issue register"
        over={<Link href={paths.project(projectId)}>{project.name}</Link>}
        under={
          <p>
            Every revision that was issued, in force or not, with who fetched it. The signed status list lets anybody
            who holds a package check offline whether it is still in force.
          </p>
        }
        actions={
          <LinkButton href={paths.statusList()} download>
            Download the status list
          </LinkButton>
        }
      />
      {issues.length === 0 && <EmptyState>Nothing has been released in this project yet.</EmptyState>}
      {partNumbers.map((partNumber) => (
        <PageSection key={partNumber} title={partNumber === '' ? 'Part number not stated' : partNumber}>
          <DataTable label={`Issues of ${partNumber === '' ? 'the part' : partNumber}`} columns={COLUMNS}>
            {issues
              .filter((issue) => issue.partNumber === partNumber)
              .map((issue) => (
                <IssueRow key={issue.revisionId} projectId={projectId} issue={issue} />
              ))}
          </DataTable>
        </PageSection>
      ))}
    </>
  )
}

function IssueRow({ projectId, issue }: { projectId: string; issue: IssueView }) {
  const { terms } = issue
  const why = terms === null ? '' : describeChange(terms)
  return (
    <DataRow
      columns={COLUMNS}
      cells={{
        revision: <Link href={paths.revision(projectId, issue.revisionId, 'sign-off')}>{issue.revision}</Link>,
        status: (
          <>
            <span className={issue.status === 'released' && !issue.isExpired ? undefined : 'voided'}>
              {describeStatus(issue)}
            </span>
            {issue.because !== '' && <span className="muted">: {issue.because}</span>}
            {issue.openActionCount > 0 && (
              <>
                {' '}
                <Link href={paths.revision(projectId, issue.revisionId, 'actions')}>
                  {issue.openActionCount} open {issue.openActionCount === 1 ? 'action' : 'actions'}
                </Link>
              </>
            )}
          </>
        ),
        released: (
          <>
            <Timestamp at={issue.releasedAt} />, {issue.releasedByName}
          </>
        ),
        terms:
          terms === null
            ? 'not recorded'
            : `${terms.isConditional ? 'conditionally, ' : ''}${describeTerms(terms)}${terms.conditions === '' ? '' : `; ${terms.conditions}`}`,
        why: why === '' ? 'not stated' : why,
        replaces: issue.replaces ?? 'nothing',
        receivers: <Receivers issue={issue} />,
      }}
    />
  )
}

function describeStatus(issue: IssueView): string {
  if (issue.status === 'withdrawn') return `withdrawn ${issue.since.slice(0, 10)}`
  if (issue.status === 'superseded') {
    return `superseded${issue.supersededBy === null ? '' : ` by ${issue.supersededBy}`} ${issue.since.slice(0, 10)}`
  }
  return issue.isExpired ? 'expired' : 'in force'
}

function Receivers({ issue }: { issue: IssueView }) {
  return (
    <ul className="plain-list small">
      {issue.editions.map((edition) => (
        <li key={edition.sha256}>
          {edition.name}{' '}
          <span className="hash muted" title={edition.sha256}>
            {edition.sha256.slice(0, 16)}
          </span>
          {edition.receipts.length === 0 && <span className="muted">: nobody has fetched it</span>}
          {edition.receipts.map((receipt) => (
            <span key={`${receipt.at} ${receipt.name}`} className="muted">
              ; {receipt.name}, {receipt.companyName}, <Timestamp at={receipt.at} />
              {receipt.stage === 'released' ? '' : `, marked ${receipt.stage}`}
            </span>
          ))}
        </li>
      ))}
    </ul>
  )
}
