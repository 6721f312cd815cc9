import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { TrailEntryView } from '@/lib/data'

const COLUMNS = {
  sequence: { head: 'No.', isNumeric: true },
  at: { head: 'When (UTC)', className: 'nowrap' },
  who: { head: 'Who' },
  what: { head: 'What' },
  hash: { head: 'Hash' },
} satisfies Columns

/** Records of the trail as they were written; the hash ties each to the one before. */
export function TrailTable({ entries, caption }: { entries: readonly TrailEntryView[]; caption: string }) {
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
            what: entry.sentence,
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
