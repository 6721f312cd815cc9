import Link from 'next/link'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import type { SheetVersionView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { RowChanges } from './row-changes'

/** What differs between a version and another one, and a choice of the other one. */
export function VersionChanges({ view }: { view: SheetVersionView }) {
  const { company, sheet, version, others, comparison } = view
  if (comparison === null) return null
  const { from, to, rows, buildTimeDays } = comparison
  const against = from === version.version ? to : from
  const isSame = rows.added.length + rows.changed.length + rows.removed.length === 0 && buildTimeDays === null
  const days = (count: number | null) => (count === null ? 'not stated' : countOf(count, 'day'))
  return (
    <PageSection title={`From version ${from} to version ${to}`}>
      {others.length > 1 && (
        <nav aria-label="Compare with" className="choices no-print">
          {others.map((other) => (
            <Link
              key={other.version}
              className="choice"
              href={paths.sheetVersion(company.id, sheet.kind, version.version, other.version)}
              aria-current={other.version === against ? 'page' : undefined}
            >
              Version {other.version} of {other.issuedOn}
            </Link>
          ))}
        </nav>
      )}
      <p>
        {isSame
          ? `Both hold the same ${countOf(rows.unchangedCount, 'row')}.`
          : `${rows.added.length} added, ${rows.changed.length} changed, ${rows.removed.length} removed, ${rows.unchangedCount} the same.`}
      </p>
      {buildTimeDays !== null && (
        <p className="small">
          Build time: {days(buildTimeDays.before)} to {days(buildTimeDays.after)}.
        </p>
      )}
      <RowChanges changes={rows} />
    </PageSection>
  )
}
