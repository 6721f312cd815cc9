import { TableFrame } from '@/app/_components/ui/table-frame'
import { ADMIN_READS } from '@/lib/review'

/** What an admin can read outside of projects, so that nobody has to guess. */
export function AdminReads() {
  return (
    <>
      <p className="muted">
        Designs, checklists, threads, artwork, packages and a fabricator’s sheets are for those who have a role in the
        project or the company. Anything else that opens the content of a design is recorded in the trail each time.
      </p>
      <TableFrame label="What an admin can read">
        <table className="ledger">
          <thead>
            <tr>
              <th scope="col">An admin can read</th>
              <th scope="col">Recorded in the trail</th>
            </tr>
          </thead>
          <tbody>
            {ADMIN_READS.map(({ what, recordedAs }) => (
              <tr key={what}>
                <td>{what}</td>
                <td>{recordedAs === null ? 'no' : 'each time'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </>
  )
}
