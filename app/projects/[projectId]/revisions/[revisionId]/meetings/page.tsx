import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { getMeetings } from '@/lib/data'
import { loadMinutes } from '../load-minutes'
import { loadRevision, type RevisionParams } from '../load-revision'
import { MeetingForm } from './_components/meeting-form'
import { Minutes } from './_components/minutes'

export default async function MeetingsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const { meetings, people, items, today, mayRecord } = await loadMinutes(() => getMeetings(actor, revisionId))
  return (
    <>
      <PageSection title="Minutes">
        {meetings.length === 0 && <EmptyState>No meeting was recorded.</EmptyState>}
        {meetings.map((meeting) => (
          <Minutes key={meeting.id} projectId={projectId} revisionId={revisionId} meeting={meeting} />
        ))}
      </PageSection>
      {mayRecord && (
        <PageSection title="Record a meeting">
          <MeetingForm
            key={meetings.length}
            revisionId={revisionId}
            today={today}
            people={people}
            points={[
              ...revision.threads
                .filter(({ state }) => state !== 'closed')
                .map(({ id, title }) => ({ value: `thread ${id}`, label: `thread: ${title}` })),
              ...items.map(({ itemId, question }) => ({
                value: `item ${itemId}`,
                label: `item: ${question}`,
              })),
            ]}
          />
        </PageSection>
      )}
    </>
  )
}
