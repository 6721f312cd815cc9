import type { Metadata } from 'next'
import Link from 'next/link'
import { requireActor } from '@/app/_components/shell/require-actor'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageLinks } from '@/app/_components/ui/page-links'
import { readPageNumber } from '@/app/_components/ui/page-number'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { listQuestions } from '@/lib/data'
import { COMPARED_DAYS, QUESTION_FILTERS } from '@/lib/review'
import { AskedQuestions } from '../_components/questions/asked-questions'
import { QUESTION_COLUMNS, writeFigures } from '../_components/questions/figures'

export const metadata: Metadata = { title: 'Questions' }

interface QuestionsPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

const COLUMNS = {
  project: { head: 'Project', isRowHead: true },
  fabricator: { head: 'With' },
  ...QUESTION_COLUMNS,
} satisfies Columns

/** Questions of all projects: what is open and how old, and how many rounds the agreed ones took. */
export default async function QuestionsPage({ searchParams }: QuestionsPageProps) {
  const actor = await requireActor(paths.questions())
  const { show, page: asksFor, groups: asksForGroups } = await searchParams
  const filter = QUESTION_FILTERS.find((known) => known === show) ?? 'all'
  const page = readPageNumber(asksFor)
  const groupPage = readPageNumber(asksForGroups)
  const { all, groups, counts, asked } = await listQuestions(actor, filter, page, groupPage)
  return (
    <>
      <PageHead
        title="Questions"
        under="Engineering queries, wanted changes, and notes with an owner or a due day. A round is one answer by the other side."
      />
      {groups.total === 0 ? (
        <EmptyState>
          Nothing has been asked yet. Questions are opened on the <strong>Threads</strong> page of a revision in{' '}
          <Link href={paths.projects()}>your projects</Link>.
        </EmptyState>
      ) : (
        <>
          <PageSection title="By project and fabricator">
            <DataTable label="Questions by project and fabricator" columns={COLUMNS}>
              {groups.rows.map((group) => (
                <DataRow
                  key={`${group.projectId} ${group.fabricatorName}`}
                  columns={COLUMNS}
                  cells={{
                    project: <Link href={paths.project(group.projectId)}>{group.projectName}</Link>,
                    fabricator: group.fabricatorName === '' ? 'the team only' : group.fabricatorName,
                    ...writeFigures(group.figures),
                  }}
                />
              ))}
              {groups.total > 1 && (
                <DataRow columns={COLUMNS} cells={{ project: 'All', fabricator: '', ...writeFigures(all) }} />
              )}
            </DataTable>
            <PageLinks
              label="Pages of projects and fabricators"
              page={groupPage}
              total={groups.total}
              hrefOf={(n) => paths.questions(filter, page, n)}
            />
            <p className="small muted">
              Trend: mean rounds of the questions agreed in the last {COMPARED_DAYS} days, against the {COMPARED_DAYS}{' '}
              days before. Open, overdue and answered questions are those of revisions on which people can still
              comment.
            </p>
          </PageSection>
          <AskedQuestions counts={counts} asked={asked} show={filter} page={page} />
        </>
      )}
    </>
  )
}
