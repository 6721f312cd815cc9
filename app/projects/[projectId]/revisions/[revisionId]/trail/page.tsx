import { TrailFilterForm } from '@/app/_components/review/trail-filter'
import { TrailTable } from '@/app/_components/review/trail-table'
import { readOrNotFound } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { listRevisionTrail } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

interface TrailPageProps extends RevisionParams {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

export default async function TrailPage({ params, searchParams }: TrailPageProps) {
  const { projectId, revisionId } = await params
  const asked = await searchParams
  const one = (name: string) => (typeof asked[name] === 'string' ? asked[name] : '')
  const filter = { person: one('person'), act: one('act'), thing: one('thing') }
  const { actor } = await loadRevision(projectId, revisionId)
  const { entries, count, choices } = await readOrNotFound(() => listRevisionTrail(actor, revisionId, filter))
  return (
    <PageSection
      title="Trail"
      actions={
        <>
          <LinkButton href={paths.trailFile(revisionId, 'csv')} weight="quiet" download>
            CSV
          </LinkButton>
          <LinkButton href={paths.trailFile(revisionId, 'pdf')} weight="quiet" download>
            PDF
          </LinkButton>
        </>
      }
    >
      <p className="muted">
        Who did what, newest first. Nothing here can be changed; each record’s hash covers the one before it. Files hold
        every record, whatever is filtered.
      </p>
      <TrailFilterForm filter={filter} choices={choices} />
      <p className="muted small" role="status">
        {entries.length === count ? `${count} records` : `${entries.length} of ${count} records`}
      </p>
      {entries.length === 0 ? (
        <EmptyState>{count === 0 ? 'Nothing is recorded yet.' : 'No record fits the filter.'}</EmptyState>
      ) : (
        <div className="above">
          <TrailTable
            entries={entries}
            projectId={projectId}
            revisionId={revisionId}
            caption="Trail of this revision"
          />
        </div>
      )}
    </PageSection>
  )
}
