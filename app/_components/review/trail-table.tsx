import Link from 'next/link'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { TrailEntryView } from '@/lib/data'

const COLUMNS = {
  sequence: { head: 'No.', isNumeric: true },
  at: { head: 'When (UTC)', className: 'nowrap' },
  who: { head: 'Who' },
  what: { head: 'What' },
  about: { head: 'About' },
  hash: { head: 'Hash' },
} satisfies Columns

interface TrailTableProps {
  readonly entries: readonly TrailEntryView[]
  readonly projectId: string
  readonly revisionId: string
  readonly caption: string
}

/** Records of the trail as they were written; the hash ties each to the one before. */
export function TrailTable({ entries, projectId, revisionId, caption }: TrailTableProps) {
  return (
    <DataTable label={caption} columns={COLUMNS}>
      {entries.map((entry) => (
        <DataRow
          key={entry.sequence}
          columns={COLUMNS}
          cells={{
            sequence: entry.sequence,
            at: <Timestamp at={entry.at} />,
            who: entry.actorName,
            what: <What entry={entry} />,
            about:
              entry.target === null ? (
                <span className="muted">{entry.thing}</span>
              ) : (
                <Link href={paths.target(projectId, revisionId, entry.target)}>{entry.thing}</Link>
              ),
            hash: (
              <span className="hash muted nowrap" title={entry.hash}>
                {entry.hash.slice(0, 12)}
              </span>
            ),
          }}
        />
      ))}
    </DataTable>
  )
}

function What({ entry: { sentence, details } }: { entry: TrailEntryView }) {
  if (details.length === 0) return <>{sentence}</>
  return (
    <details>
      <summary>{sentence}</summary>
      <ul className="changes small">
        {details.map(({ label, text }, index) => (
          // Two lines may read the same; their order never changes.
          // biome-ignore lint/suspicious/noArrayIndexKey: a record is never changed
          <li key={index}>
            {label}: {text}
          </li>
        ))}
      </ul>
    </details>
  )
}
