import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { AskedQuestion } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { THREAD_KIND_WORDS } from '@/lib/review'
import { type Columns, DataRow, DataTable } from '../ui/data-table'
import { EmptyState } from '../ui/notices'
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

const FILTERS: readonly { show: string; label: string; keeps: (question: AskedQuestion) => boolean }[] = [
  { show: '', label: 'All', keeps: () => true },
  { show: 'overdue', label: 'Overdue', keeps: ({ isOverdue }) => isOverdue },
  { show: 'own', label: 'Mine to answer', keeps: ({ isOwn, state }) => isOwn && state === 'open' },
  { show: 'without-owner', label: 'No owner', keeps: ({ ownerName, state }) => ownerName === '' && state === 'open' },
  { show: 'answered', label: 'Answered, not closed', keeps: ({ state }) => state === 'answered' },
]

interface AskedQuestionsProps {
  readonly asked: readonly AskedQuestion[]
  readonly show: string
}

/** Every question that is not closed; overdue ones first. */
export function AskedQuestions({ asked, show: asksFor }: AskedQuestionsProps) {
  const chosen = FILTERS.find(({ show }) => show === asksFor) ?? FILTERS[0]
  const shown = asked.filter((question) => chosen?.keeps(question))
  return (
    <PageSection title="Not closed">
      <nav aria-label="Which questions" className="choices no-print">
        {FILTERS.map(({ show, label, keeps }) => (
          <Link
            key={show}
            className="choice"
            href={paths.questions(show)}
            aria-current={show === chosen?.show ? 'page' : undefined}
          >
            {label} <span className="count">{asked.filter(keeps).length}</span>
          </Link>
        ))}
      </nav>
      {shown.length === 0 ? (
        <EmptyState>{asked.length === 0 ? 'Every question is closed.' : 'No question matches this filter.'}</EmptyState>
      ) : (
        <DataTable label="Questions that are not closed" columns={COLUMNS}>
          {shown.map((question) => (
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
                    <span className="muted">no day</span>
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
    </PageSection>
  )
}
