import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { QuestionsView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { QUESTION_FILTERS, type QuestionFilter, THREAD_KIND_WORDS } from '@/lib/review'
import { type Columns, DataRow, DataTable } from '../ui/data-table'
import { EmptyState } from '../ui/notices'
import { PageLinks } from '../ui/page-links'
import { PageSection } from '../ui/section'

const COLUMNS = {
  title: { head: 'Question', isRowHead: true },
  place: { head: 'On' },
  fabricator: { head: 'With' },
  owner: { head: 'Owner' },
  due: { head: 'Due' },
  age: { head: 'Age', isNumeric: true },
  rounds: { head: 'Rounds so far', isNumeric: true },
} satisfies Columns

const FILTER_LABELS: Readonly<Record<QuestionFilter, string>> = {
  all: 'All',
  overdue: 'Overdue',
  own: 'Mine to answer',
  'without-owner': 'No owner',
  answered: 'Answered, not closed',
}

interface AskedQuestionsProps {
  readonly counts: QuestionsView['counts']
  readonly asked: QuestionsView['asked']
  readonly show: QuestionFilter
  /** From 1 */
  readonly page: number
}

/** Questions that are not closed, a page of them; overdue ones first. */
export function AskedQuestions({ counts, asked: { rows, total }, show: chosen, page }: AskedQuestionsProps) {
  return (
    <PageSection title="Not closed">
      <nav aria-label="Which questions" className="choices no-print">
        {QUESTION_FILTERS.map((show) => (
          <Link
            key={show}
            className="choice"
            href={paths.questions(show)}
            aria-current={show === chosen ? 'page' : undefined}
          >
            {FILTER_LABELS[show]} <span className="count">{counts[show]}</span>
          </Link>
        ))}
      </nav>
      {rows.length === 0 ? (
        <EmptyState>{explainEmpty(counts.all, total)}</EmptyState>
      ) : (
        <DataTable label="Questions that are not closed" columns={COLUMNS}>
          {rows.map((question) => (
            <DataRow
              key={question.threadId}
              columns={COLUMNS}
              cells={{
                title: (
                  <>
                    <Link href={paths.thread(question.projectId, question.revisionId, question.threadId)}>
                      {question.title}
                    </Link>
                    <p className="small muted font-normal">
                      {THREAD_KIND_WORDS[question.kind].label}, {question.state}
                    </p>
                  </>
                ),
                place: (
                  <>
                    {question.projectName} {question.revisionLabel}
                    <p className="small muted">{question.anchorLabel}</p>
                  </>
                ),
                fabricator: question.fabricatorName === '' ? 'the team only' : question.fabricatorName,
                owner: question.ownerName === '' ? <span className="muted">nobody</span> : question.ownerName,
                due:
                  question.dueOn === null ? (
                    <span className="muted nowrap">no day</span>
                  ) : (
                    <>
                      <span className="nowrap">{question.dueOn}</span>
                      {question.isOverdue && <strong> overdue</strong>}
                    </>
                  ),
                age: countOf(question.openDays, 'day'),
                rounds: question.rounds,
              }}
            />
          ))}
        </DataTable>
      )}
      <PageLinks label="Pages of questions" page={page} total={total} hrefOf={(n) => paths.questions(chosen, n)} />
    </PageSection>
  )
}

function explainEmpty(all: number, kept: number): string {
  if (all === 0) return 'Every question is closed.'
  return kept === 0 ? 'No question matches this filter.' : 'There are fewer questions now than this page begins with.'
}
