import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import type { RevisionView } from '@/lib/data'
import { isPending } from '@/lib/review'
import { ActionCard } from './action-card'
import { TakeOnForm } from './action-form'

/** Where an action may come from: the revision, its threads that are not closed, and its waivers. */
function listOrigins(revision: RevisionView) {
  return [
    { kind: 'revision' as const, id: '', label: 'the revision' },
    ...revision.threads
      .filter(({ state }) => state !== 'closed')
      .map(({ id, title }) => ({ kind: 'thread' as const, id, label: `thread: ${title}` })),
    ...revision.items.flatMap(({ waivers, result }) =>
      waivers
        .filter(({ state }) => state !== 'declined')
        .map(({ id }) => ({ kind: 'waiver' as const, id, label: `waiver: ${result.headline}` })),
    ),
  ]
}

/** What is still to be done on a revision, before and after its release, and what was done. */
export function ActionList({
  projectId,
  revision,
  maxFileBytes,
}: {
  projectId: string
  revision: RevisionView
  maxFileBytes: number
}) {
  const pending = revision.actions.filter(isPending)
  const settled = revision.actions.filter((action) => !isPending(action))
  return (
    <>
      <PageSection title="Open actions">
        <p className="muted">
          An action that is due before release blocks it. The others live on after the release: their results come back
          here, and nothing that was signed changes. Each is closed by somebody other than its owner.
        </p>
        {pending.length === 0 && (
          <EmptyState>{revision.actions.length === 0 ? 'No actions yet.' : 'No action is open.'}</EmptyState>
        )}
        {pending.map((action) => (
          <ActionCard key={action.id} projectId={projectId} action={action} maxFileBytes={maxFileBytes} />
        ))}
      </PageSection>
      {settled.length > 0 && (
        <PageSection title="Closed and dropped actions">
          {settled.map((action) => (
            <ActionCard key={action.id} projectId={projectId} action={action} maxFileBytes={maxFileBytes} />
          ))}
        </PageSection>
      )}
      {revision.may.takeOnAction && (
        <PageSection title="Take on an action">
          <TakeOnForm revisionId={revision.id} origins={listOrigins(revision)} fabricators={revision.sharedWith} />
        </PageSection>
      )}
    </>
  )
}
