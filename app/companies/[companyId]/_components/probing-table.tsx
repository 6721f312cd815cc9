import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import type { ProbingView } from '@/lib/data'

const COLUMNS = {
  day: { head: 'Day', isRowHead: true },
  project: { head: 'Project' },
  revision: { head: 'Revision' },
  saves: { head: 'Saves', isNumeric: true },
  verdictsChanged: { head: 'Verdicts changed', isNumeric: true },
} satisfies Columns

export function ProbingTable({ probing }: { probing: readonly ProbingView[] }) {
  if (probing.length === 0) return <EmptyState>None so far.</EmptyState>
  const flips = probing.reduce((sum, day) => sum + day.flips, 0)
  return (
    <>
      <p>{flips === 1 ? '1 verdict changed.' : `${flips} verdicts changed.`}</p>
      <DataTable label="Verdicts changed by teams" columns={COLUMNS}>
        {probing.map((row) => (
          <DataRow
            key={`${row.day} ${row.projectName} ${row.revisionLabel}`}
            columns={COLUMNS}
            cells={{
              day: row.day,
              project: row.projectName,
              revision: row.revisionLabel,
              saves: row.saves,
              verdictsChanged: row.flips,
            }}
          />
        ))}
      </DataTable>
    </>
  )
}
