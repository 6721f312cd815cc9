'use client'

import Link from 'next/link'
import { type Columns, DataRow, DataTable, RowGroup } from '@/app/_components/ui/data-table'
import { DecidingEndText, LimitText } from '@/app/_components/ui/limit-text'
import { EmptyState } from '@/app/_components/ui/notices'
import { QuantityText } from '@/app/_components/ui/quantity'
import { PageSection } from '@/app/_components/ui/section'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import {
  type ContentComparison,
  findVerdictDirection,
  type InputChange,
  type MovedVerdict,
  type VerdictDirection,
  type VerdictSide,
} from '@/lib/review'
import type { ComparisonPart } from './comparison-parts'
import { ANSWER_WORDS } from './words'

interface ComparisonReportProps {
  comparison: ContentComparison
  /** Questions of items by id. */
  questions: Readonly<Record<string, string>>
  /** Where the items of the later side are to be found. */
  projectId: string
  revisionId: string
  /** Null shows every part. */
  part?: ComparisonPart | null
  /** One area of the inputs; null shows all. */
  area?: InputChange['area'] | null
  /** What the columns are called. */
  before: string
  after: string
}

const AREA_WORDS: Record<InputChange['area'], string> = {
  name: 'name',
  brief: 'brief',
  materials: 'materials',
  construction: 'construction',
  bends: 'bends',
  features: 'features',
  plan: 'plan',
  artwork: 'artwork',
}

/** What got worse and better first; then differing inputs, moved numbers, and answers that no longer stand. */
export function ComparisonReport({ part = null, area = null, ...props }: ComparisonReportProps) {
  const { comparison } = props
  const isShown = (name: ComparisonPart) => part === null || part === name
  return (
    <>
      {isShown('verdicts') && <Verdicts {...props} />}
      {isShown('inputs') && <Inputs changes={comparison.changes} area={area} />}
      {isShown('numbers') && <Numbers {...props} />}
      {isShown('answers') && <Answers {...props} />}
    </>
  )
}

const INPUT_COLUMNS = {
  part: { head: 'Part', className: 'muted' },
  what: { head: 'What differs' },
} satisfies Columns

function Inputs({ changes, area }: { changes: readonly InputChange[]; area: InputChange['area'] | null }) {
  const shown = area === null ? changes : changes.filter((change) => change.area === area)
  return (
    <PageSection title="Differing inputs">
      {shown.length === 0 ? (
        <EmptyState>
          {changes.length === 0 ? 'Every input is the same.' : 'No input of this part of the design differs.'}
        </EmptyState>
      ) : (
        <DataTable label="Differing inputs" columns={INPUT_COLUMNS}>
          {shown.map((change, index) => (
            // Two changes may read alike where long texts are cut; their order is fixed.
            <DataRow
              // biome-ignore lint/suspicious/noArrayIndexKey: the list is never reordered on the page
              key={`${index} ${change.sentence}`}
              columns={INPUT_COLUMNS}
              cells={{
                part: AREA_WORDS[change.area],
                what: change.sentence,
              }}
            />
          ))}
        </DataTable>
      )}
    </PageSection>
  )
}

function Verdicts({ comparison, questions, projectId, revisionId, before, after }: ComparisonReportProps) {
  const moved = [...comparison.verdicts].sort((a, b) => rank(a) - rank(b))
  const columns = {
    item: { head: 'Item', isRowHead: true, className: 'font-normal' },
    before: { head: before },
    after: { head: after },
  } satisfies Columns
  return (
    <PageSection title="Verdicts that changed">
      {moved.length === 0 ? (
        <EmptyState>No verdict changed.</EmptyState>
      ) : (
        <DataTable label="Verdicts that changed" columns={columns} isGrouped>
          {DIRECTIONS.map(({ direction, title }) => {
            const own = moved.filter((move) => directionOf(move) === direction)
            return own.length === 0 ? null : (
              <RowGroup key={direction} columns={columns} head={`${title} (${own.length})`}>
                {own.map((move) => (
                  <DataRow
                    key={move.itemId}
                    columns={columns}
                    cells={{
                      item: (
                        <Link href={paths.item(projectId, revisionId, move.itemId)}>
                          {questions[move.itemId] ?? move.itemId}
                        </Link>
                      ),
                      before: <Side side={move.before} />,
                      after: <Side side={move.after} />,
                    }}
                  />
                ))}
              </RowGroup>
            )
          })}
        </DataTable>
      )}
    </PageSection>
  )
}

const DIRECTIONS: readonly { readonly direction: VerdictDirection; readonly title: string }[] = [
  { direction: 'worse', title: 'Got worse' },
  { direction: 'better', title: 'Got better' },
  { direction: 'otherwise', title: 'Changed otherwise' },
]

const directionOf = ({ before, after }: MovedVerdict): VerdictDirection =>
  findVerdictDirection(before?.verdict ?? null, after?.verdict ?? null)

/** What fails now comes first, then what failed before. */
function rank({ before, after }: MovedVerdict): number {
  if (after?.verdict === 'fails') return 0
  if (before?.verdict === 'fails') return 1
  return after?.verdict === 'thin-margin' || before?.verdict === 'thin-margin' ? 2 : 3
}

function Side({ side }: { side: VerdictSide | null }) {
  if (side === null) return <span className="muted">not in the checklist</span>
  return (
    <>
      <VerdictMark verdict={side.verdict} />
      {side.value !== null && (
        <p className="small">
          <QuantityText quantity={side.value} />
          {side.limit !== null && (
            <span className="muted">
              , limit <LimitText limit={side.limit} />
            </span>
          )}
          {side.place !== '' && <span className="muted">, {side.place}</span>}
          {side.limit !== null && side.decidingEnd !== null && (
            <DecidingEndText limit={side.limit} decidingEnd={side.decidingEnd} />
          )}
        </p>
      )}
      {side.value === null && <p className="small muted">{side.headline}</p>}
    </>
  )
}

function Numbers({ comparison, before, after }: ComparisonReportProps) {
  const columns = {
    where: { head: 'Where', isRowHead: true },
    quantity: { head: 'Quantity' },
    before: { head: before, isNumeric: true },
    after: { head: after, isNumeric: true },
  } satisfies Columns
  return (
    <PageSection title="Numbers that changed">
      {comparison.numbers.length === 0 ? (
        <EmptyState>Thickness, copper strain and life are the same.</EmptyState>
      ) : (
        <DataTable label="Numbers that changed" columns={columns}>
          {comparison.numbers.map((move) => (
            <DataRow
              key={`${move.subject} ${move.quantity}`}
              columns={columns}
              cells={{
                where: move.subject,
                quantity: move.quantity,
                before: move.before,
                after: move.after,
              }}
            />
          ))}
        </DataTable>
      )}
    </PageSection>
  )
}

const ANSWER_COLUMNS = {
  item: { head: 'Item', isRowHead: true, className: 'font-normal' },
  answer: { head: 'Answer' },
  whyItIs: { head: 'Why it is no longer valid' },
  now: { head: 'Now' },
} satisfies Columns

function Answers({ comparison, questions, projectId, revisionId }: ComparisonReportProps) {
  const { answers } = comparison
  return (
    <PageSection title="Answers that are no longer valid">
      {answers.length === 0 ? (
        <EmptyState>The inputs of every answer are unchanged.</EmptyState>
      ) : (
        <DataTable label="Answers that are no longer valid" columns={ANSWER_COLUMNS}>
          {answers.map((answer) => (
            <DataRow
              key={answer.itemId}
              columns={ANSWER_COLUMNS}
              cells={{
                item: (
                  <Link href={paths.item(projectId, revisionId, answer.itemId)}>
                    {questions[answer.itemId] ?? answer.question}
                  </Link>
                ),
                answer: (
                  <>
                    {ANSWER_WORDS[answer.state]}
                    {answer.byName !== '' && <span className="muted">, {answer.byName}</span>}
                    {answer.reason !== '' && <p className="small muted">{answer.reason}</p>}
                  </>
                ),
                whyItIs: <Reasons reasons={answer.because} />,
                now:
                  answer.now === null ? <span className="muted">to be answered again</span> : ANSWER_WORDS[answer.now],
              }}
            />
          ))}
        </DataTable>
      )}
    </PageSection>
  )
}

/** Reasons shown before the rest is folded away. */
const REASONS_SHOWN = 3

export function Reasons({ reasons }: { reasons: readonly string[] }) {
  // Two layers of one name may have changed alike: said once.
  const different = [...new Set(reasons)]
  const rest = different.slice(REASONS_SHOWN)
  return (
    <>
      <ul className="plain-list small">
        {different.slice(0, REASONS_SHOWN).map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      {rest.length > 0 && (
        <details className="small">
          <summary>and {rest.length} more</summary>
          <ul className="plain-list">
            {rest.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}
