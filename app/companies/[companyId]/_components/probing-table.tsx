import { EmptyState } from '@/app/_components/ui/notices'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { ProbingView } from '@/lib/data'

export function ProbingTable({ probing }: { probing: readonly ProbingView[] }) {
  if (probing.length === 0) return <EmptyState>None so far.</EmptyState>
  const flips = probing.reduce((sum, day) => sum + day.flips, 0)
  return (
    <>
      <p>{flips === 1 ? '1 verdict changed.' : `${flips} verdicts changed.`}</p>
      <TableFrame label="Verdicts changed by teams">
        <table className="ledger" data-stack>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Project</th>
              <th scope="col">Revision</th>
              <th scope="col" className="num">
                Saves
              </th>
              <th scope="col" className="num">
                Verdicts changed
              </th>
            </tr>
          </thead>
          <tbody>
            {probing.map((row) => (
              <tr key={`${row.day} ${row.projectName} ${row.revisionLabel}`}>
                <th scope="row">{row.day}</th>
                <td data-label="project">{row.projectName}</td>
                <td data-label="revision">{row.revisionLabel}</td>
                <td className="num" data-label="saves">
                  {row.saves}
                </td>
                <td className="num" data-label="verdicts moved">
                  {row.flips}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </>
  )
}
