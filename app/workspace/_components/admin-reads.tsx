import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { ADMIN_READS } from '@/lib/review'

const COLUMNS = {
  what: { head: 'An admin can read' },
  recorded: { head: 'Recorded in the trail' },
} satisfies Columns

/** What an admin can read outside of projects, so that nobody has to guess. */
export function AdminReads() {
  return (
    <>
      <p className="muted">
        Designs, checklists, threads, artwork, packages and a fabricator’s sheets are for those who have a role in the
        project or the company. Anything else that opens the content of a design is recorded in the trail each time.
      </p>
      <DataTable label="What an admin can read" columns={COLUMNS} isStacked={false}>
        {ADMIN_READS.map(({ what, recordedAs }) => (
          <DataRow
            key={what}
            columns={COLUMNS}
            cells={{
              what: what,
              recorded: recordedAs === null ? 'no' : 'each time',
            }}
          />
        ))}
      </DataTable>
    </>
  )
}
