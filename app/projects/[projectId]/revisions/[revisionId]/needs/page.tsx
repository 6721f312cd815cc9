import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { getNeeds, MAX_FILE_BYTES } from '@/lib/data'
import { loadMinutes } from '../load-minutes'
import { loadRevision, type RevisionParams } from '../load-revision'
import { NeedForm } from './_components/need-form'
import { NeedMatrix } from './_components/need-matrix'

export default async function NeedsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor } = await loadRevision(projectId, revisionId)
  const { needs, items, mayState } = await loadMinutes(() => getNeeds(actor, revisionId))
  return (
    <>
      <PageSection title="Needs">
        <p className="muted">
          What the part must do, which items speak of it, how and when it is shown, and who accepted the result. Results
          come back to a released revision too, and nothing that was signed changes.
        </p>
        {needs.length === 0 ? (
          <EmptyState>No need is stated.</EmptyState>
        ) : (
          <NeedMatrix
            projectId={projectId}
            revisionId={revisionId}
            needs={needs}
            items={items}
            maxFileBytes={MAX_FILE_BYTES}
          />
        )}
      </PageSection>
      {mayState && (
        <PageSection title="State a need">
          <NeedForm key={needs.length} revisionId={revisionId} items={items} />
        </PageSection>
      )}
    </>
  )
}
