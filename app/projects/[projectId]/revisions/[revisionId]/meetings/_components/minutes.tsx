import Link from 'next/link'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { describePoint, type Meeting } from '@/lib/review'

interface MinutesProps {
  readonly projectId: string
  readonly revisionId: string
  readonly meeting: Meeting
}

const TABS = { action: 'actions', item: 'checklist', thread: 'threads' } as const

/** Minutes of one meeting: who was there, what it was about, what it decided and what carries that out. */
export function Minutes({ projectId, revisionId, meeting }: MinutesProps) {
  const { id, number, title, heldOn, agenda, present, excused, decisions, recordedByName, recordedAt } = meeting
  return (
    <article className="thread" id={id} aria-labelledby={`meeting-${id}`}>
      <header>
        <p className="thread-kind" data-kind="note">
          meeting {number} <span className="muted">· {heldOn}</span>
        </p>
        <h3 id={`meeting-${id}`}>
          <Link href={paths.meeting(projectId, revisionId, id)}>{title}</Link>
        </h3>
      </header>
      <dl className="terms">
        <dt>present</dt>
        <dd>{present.join(', ')}</dd>
        <dt>excused</dt>
        <dd>{excused.length === 0 ? 'nobody' : excused.join(', ')}</dd>
        <dt>agenda</dt>
        <dd className="said">{agenda === '' ? 'not stated' : agenda}</dd>
      </dl>
      {decisions.length === 0 ? (
        <p>Nothing was decided.</p>
      ) : (
        <ol>
          {decisions.map(({ ordinal, text, points }) => (
            <li key={ordinal}>
              {text}
              {points.kind !== 'none' && (
                <>
                  {' '}
                  <Link href={paths.target(projectId, revisionId, { tab: TABS[points.kind], id: points.id })}>
                    {describePoint(points)}
                  </Link>
                </>
              )}
            </li>
          ))}
        </ol>
      )}
      <p className="muted small">
        Minutes by {recordedByName}, <Timestamp at={recordedAt} />
      </p>
    </article>
  )
}
