import Link from 'next/link'
import type { ReactNode } from 'react'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import { BASIS_WORDS, ITEM_BASES } from '@/lib/engine/results'
import { countOf } from '@/lib/engine/units'
import { SIGNING_GROUPS, type SigningGroup, type SigningSummary } from '@/lib/review'
import { AnswerMark } from './answer-mark'

interface SigningSummaryViewProps {
  readonly summary: SigningSummary
  readonly projectId: string
  readonly revisionId: string
}

/** A verdict or an answer, whichever put the item into its group. */
const MARKS: Record<SigningGroup, ReactNode> = {
  failed: <VerdictMark verdict="fails" />,
  'cannot-tell': <VerdictMark verdict="cannot-tell" />,
  waived: <AnswerMark state="waived" />,
  concern: <AnswerMark state="concern" />,
  'thin-margin': <VerdictMark verdict="thin-margin" />,
  'not-decided': <AnswerMark state="open" />,
  'ruled-out': <AnswerMark state="not-applicable" />,
  follows: <VerdictMark verdict="follows" />,
}

/** Changes shown before the rest is folded away. */
const SHOWN_CHANGES = 12

/** What a signature covers, beside the statement: everything that is not simply met, and what changed since the last one. */
export function SigningSummaryView({ summary, projectId, revisionId }: SigningSummaryViewProps) {
  const { entries, quietCount, metBy, sinceLast } = summary
  return (
    <section className="stack" aria-label="What you sign">
      <p>
        You sign {countOf(entries.length + quietCount, 'item')}: {quietCount} met or not applicable (
        {describeMet(metBy)})
        {entries.length === 0 ? ', and nothing else.' : `, and the ${countOf(entries.length, 'other')} below.`}
      </p>
      <ul className="plain-list">
        {SIGNING_GROUPS.flatMap((group) => entries.filter((entry) => entry.group === group)).map((entry) => (
          <li key={entry.itemId}>
            {MARKS[entry.group]} <Link href={paths.item(projectId, revisionId, entry.itemId)}>{entry.question}</Link>{' '}
            <span className="small muted">{entry.text}</span>
          </li>
        ))}
      </ul>
      {sinceLast === null ? (
        <p className="small muted">This revision has not been signed before.</p>
      ) : (
        <div className="small">
          <p>
            {sinceLast.changes.length === 0 ? 'Nothing has changed' : 'Changed'} since {sinceLast.name} signed,{' '}
            <Timestamp at={sinceLast.signedAt} />
            {sinceLast.changes.length === 0 ? '.' : ':'}
          </p>
          <Changes changes={sinceLast.changes.slice(0, SHOWN_CHANGES)} />
          {sinceLast.changes.length > SHOWN_CHANGES && (
            <details>
              <summary>{countOf(sinceLast.changes.length - SHOWN_CHANGES, 'more change')}</summary>
              <Changes changes={sinceLast.changes.slice(SHOWN_CHANGES)} />
            </details>
          )}
        </div>
      )}
    </section>
  )
}

function Changes({ changes }: { changes: readonly string[] }) {
  return (
    <ul className="changes">
      {changes.map((change, index) => (
        // Two changes may read alike where long texts are cut; their order is fixed.
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is never reordered on the page
        <li key={`${index} ${change}`}>{change}</li>
      ))}
    </ul>
  )
}

/** `met: 27 calculated, 18 typed and compared, 9 stated, 8 judged`: what each count rests on. */
function describeMet(metBy: SigningSummary['metBy']): string {
  return `met: ${ITEM_BASES.map((basis) => `${metBy[basis]} ${BASIS_WORDS[basis]}`).join(', ')}`
}
