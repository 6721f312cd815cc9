import Link from 'next/link'
import { paths, type RevisionTab } from '@/lib/addresses'
import type { LeadCountView } from '@/lib/data'
import { STAGE_WORDS } from '../review/words'
import { type Columns, DataRow, DataTable } from '../ui/data-table'
import { PageSection } from '../ui/section'
import { Timestamp } from '../ui/timestamp'

const COLUMNS = {
  revision: { head: 'Revision', isRowHead: true },
  stage: { head: 'Stage' },
  unanswered: { head: 'Unanswered', isNumeric: true },
  concerns: { head: 'Concerns', isNumeric: true },
  queries: { head: 'Queries', isNumeric: true },
  mustChange: { head: 'Must change', isNumeric: true },
  waivers: { head: 'Waivers to decide', isNumeric: true },
  blocks: { head: 'Blocks', isNumeric: true },
} satisfies Columns

/** Every open revision that the person leads, in numbers; each number leads to what it counts. */
export function LeadCounts({ rows }: { rows: readonly LeadCountView[] }) {
  if (rows.length === 0) return null
  return (
    <PageSection title="Revisions you lead">
      <DataTable label="Revisions you lead" columns={COLUMNS}>
        {rows.map((row) => (
          <DataRow
            key={row.revisionId}
            columns={COLUMNS}
            cells={{
              revision: (
                <Link href={paths.revision(row.projectId, row.revisionId)}>
                  {row.projectName} {row.revisionLabel}
                </Link>
              ),
              stage: (
                <>
                  {STAGE_WORDS[row.stage]}{' '}
                  <span className="small muted">
                    since <Timestamp at={row.stageSince} dateOnly />
                  </span>
                </>
              ),
              unanswered: <Count row={row} label="unanswered" value={row.openItems} tab="checklist" />,
              concerns: (
                <Count row={row} label="concerns" value={row.concerns} tab="checklist" remark={describeBases(row)} />
              ),
              queries: <Count row={row} label="queries" value={row.openQueries} tab="threads" />,
              mustChange: <Count row={row} label="must change" value={row.openMustChanges} tab="threads" />,
              waivers: <Count row={row} label="waivers to decide" value={row.proposedWaivers} tab="checklist" />,
              blocks: <Count row={row} label="blocks" value={row.blockers} tab="sign-off" />,
            }}
          />
        ))}
      </DataTable>
    </PageSection>
  )
}

interface CountProps {
  row: LeadCountView
  label: string
  value: number
  tab: RevisionTab
  remark?: string
}

/** Concerns that nobody calculated are said beside the count. */
function describeBases({ statedConcerns, judgedConcerns }: LeadCountView): string {
  return [statedConcerns > 0 ? `${statedConcerns} stated` : '', judgedConcerns > 0 ? `${judgedConcerns} judged` : '']
    .filter((part) => part !== '')
    .join(', ')
}

function Count({ row, label, value, tab, remark = '' }: CountProps) {
  return (
    <>
      {value === 0 ? (
        <span className="muted">0</span>
      ) : (
        <Link
          href={paths.revision(row.projectId, row.revisionId, tab)}
          aria-label={`${value} ${label}, ${row.projectName} ${row.revisionLabel}`}
        >
          {value}
        </Link>
      )}
      {remark !== '' && <span className="small muted"> {remark}</span>}
    </>
  )
}
