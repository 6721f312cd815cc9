import Link from 'next/link'
import type { LeadCountView } from '@/lib/data'
import { STAGE_WORDS } from '../review/words'
import { paths, type RevisionTab } from '../shell/paths'
import { Section } from '../ui/section'
import { TableFrame } from '../ui/table-frame'
import { Timestamp } from '../ui/timestamp'

/** Every open revision that the person leads, in numbers; each number leads to what it counts. */
export function LeadCounts({ rows }: { rows: readonly LeadCountView[] }) {
  if (rows.length === 0) return null
  return (
    <Section title="Revisions you lead">
      <TableFrame label="Revisions you lead">
        <table className="ledger" data-stack>
          <thead>
            <tr>
              <th scope="col">Revision</th>
              <th scope="col">Stage</th>
              <th scope="col" className="num">
                Unanswered
              </th>
              <th scope="col" className="num">
                Concerns
              </th>
              <th scope="col" className="num">
                Queries
              </th>
              <th scope="col" className="num">
                Must change
              </th>
              <th scope="col" className="num">
                Waivers to decide
              </th>
              <th scope="col" className="num">
                Blocks
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.revisionId}>
                <th scope="row">
                  <Link href={paths.revision(row.projectId, row.revisionId)}>
                    {row.projectName} {row.revisionLabel}
                  </Link>
                </th>
                <td>
                  {STAGE_WORDS[row.stage]}{' '}
                  <span className="small muted">
                    since <Timestamp at={row.stageSince} dateOnly />
                  </span>
                </td>
                <Count row={row} label="unanswered" value={row.openItems} tab="checklist" />
                <Count row={row} label="concerns" value={row.concerns} tab="checklist" remark={describeBases(row)} />
                <Count row={row} label="queries" value={row.openQueries} tab="threads" />
                <Count row={row} label="must change" value={row.openMustChanges} tab="threads" />
                <Count row={row} label="waivers to decide" value={row.proposedWaivers} tab="checklist" />
                <Count row={row} label="blocks" value={row.blockers} tab="sign-off" />
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </Section>
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
    <td className="num" data-label={label}>
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
    </td>
  )
}
