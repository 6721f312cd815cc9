import { type AccessKind, type AccessLogView, MAX_ROWS_ON_PAGE } from '@/lib/data'
import { type Columns, DataRow, DataTable } from '../ui/data-table'
import { EmptyState } from '../ui/notices'
import { PageLinks } from '../ui/page-links'
import { Timestamp } from '../ui/timestamp'

const COLUMNS = {
  at: { head: 'When', isRowHead: true },
  who: { head: 'Who' },
  company: { head: 'Company' },
  act: { head: 'Act' },
  what: { head: 'What' },
  source: { head: 'From' },
} satisfies Columns

const WORDS: Readonly<Record<AccessKind, string>> = {
  'signed-in': 'signed in',
  'sign-in-refused': 'sign-in refused',
  'revision-opened': 'opened',
  'file-fetched': 'fetched a file',
  refused: 'refused',
}

interface AccessLogProps {
  readonly view: AccessLogView
  readonly page: number
  readonly hrefOf: (page: number) => string
  readonly fileHref: string
}

/** Who opened what, newest first, a page at a time. */
export function AccessLog({ view, page, hrefOf, fileHref }: AccessLogProps) {
  if (view.total === 0) return <EmptyState>Nothing is listed yet.</EmptyState>
  return (
    <>
      <p>
        <a href={fileHref} download>
          All {view.total} as CSV
        </a>
      </p>
      <DataTable label="Who opened what" columns={COLUMNS}>
        {view.rows.map((row) => (
          <DataRow
            key={row.id}
            columns={COLUMNS}
            cells={{
              at: <Timestamp at={row.at} />,
              who: row.userName,
              company: row.companyName,
              act: WORDS[row.kind],
              what: row.what,
              source: (
                <>
                  {row.device} <span className="small muted">{row.source}</span>
                </>
              ),
            }}
          />
        ))}
      </DataTable>
      <PageLinks label="Pages of the list" page={page} total={view.total} hrefOf={hrefOf} />
      {view.total > MAX_ROWS_ON_PAGE && <p className="muted small">Newest first.</p>}
    </>
  )
}

/** What stands over either list. */
export function AboutAccess({ keptDays }: { keptDays: number }) {
  return (
    <p>
      Sign-ins, refusals, revisions that were opened and files that were fetched. A revision that somebody opens again
      from the same place within the hour stands once. The word after the device is the same for the same network
      address, which itself is not kept. Entries are deleted after {keptDays} days.
    </p>
  )
}
