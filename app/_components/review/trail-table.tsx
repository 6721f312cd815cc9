import { Timestamp } from '@/app/_components/ui/timestamp'
import type { TrailEntryView } from '@/lib/data'

/** Records of the trail as they were written; the hash ties each to the one before. */
export function TrailTable({ entries, caption }: { entries: readonly TrailEntryView[]; caption: string }) {
  return (
    <table className="ledger" data-stack>
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col" className="num">
            No.
          </th>
          <th scope="col">When (UTC)</th>
          <th scope="col">Who</th>
          <th scope="col">What</th>
          <th scope="col">Hash</th>
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.sequence}>
            <td className="num" data-label="no.">
              {entry.sequence}
            </td>
            <td>
              <Timestamp at={entry.at} />
            </td>
            <td>{entry.actorName}</td>
            <td>{entry.sentence}</td>
            <td>
              <span className="hash muted nowrap" title={entry.hash}>
                {entry.hash.slice(0, 12)}
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
