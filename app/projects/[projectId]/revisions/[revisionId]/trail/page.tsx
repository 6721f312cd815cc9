import { TrailTable } from '@/app/_components/review/trail-table'
import { readOrNotFound } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { listRevisionTrail } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

export default async function TrailPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor } = await loadRevision(projectId, revisionId)
  const entries = await readOrNotFound(() => listRevisionTrail(actor, revisionId))
  return (
    <PageSection title="Trail">
      <p className="muted">
        Who did what, newest first. Nothing here can be changed; each record’s hash covers the one before it.
      </p>
      {entries.length === 0 ? (
        <EmptyState>Nothing is recorded yet.</EmptyState>
      ) : (
        <div className="above">
          <TrailTable entries={entries} caption="Trail of this revision" />
        </div>
      )}
    </PageSection>
  )
}
