import Link from 'next/link'
import { notFound } from 'next/navigation'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getMeetings, type ReviewActionView } from '@/lib/data'
import { ACTION_STATE_WORDS, describeDue } from '@/lib/review'
import { loadMinutes } from '../../load-minutes'
import { loadRevision } from '../../load-revision'
import { Minutes } from '../_components/minutes'

const COLUMNS = {
  action: { head: 'Action', isRowHead: true },
  owner: { head: 'Owner' },
  due: { head: 'Due' },
  state: { head: 'State today' },
} satisfies Columns

interface MeetingParams {
  readonly params: Promise<{ projectId: string; revisionId: string; meetingId: string }>
}

/** Minutes of one meeting, with what became of the actions that it decided: to be read and printed as they are. */
export default async function MeetingPage({ params }: MeetingParams) {
  const { projectId, revisionId, meetingId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const { meetings } = await loadMinutes(() => getMeetings(actor, revisionId))
  const meeting = meetings.find(({ id }) => id === meetingId)
  if (meeting === undefined) notFound()
  const decided = meeting.decisions.flatMap(({ points }) =>
    points.kind === 'action' ? revision.actions.filter(({ id }) => id === points.id) : [],
  )
  return (
    <>
      <PageSection title={`Minutes of meeting ${meeting.number}`}>
        <p className="no-print">
          <Link href={paths.revision(projectId, revisionId, 'meetings')}>All meetings of this revision</Link>
        </p>
        <Minutes projectId={projectId} revisionId={revisionId} meeting={meeting} />
      </PageSection>
      {decided.length > 0 && (
        <PageSection title="Actions from this meeting">
          <DataTable label="Actions from this meeting" columns={COLUMNS}>
            {decided.map((action) => (
              <DataRow key={action.id} columns={COLUMNS} cells={toCells(projectId, revisionId, action)} />
            ))}
          </DataTable>
        </PageSection>
      )}
    </>
  )
}

function toCells(projectId: string, revisionId: string, action: ReviewActionView) {
  const { id, number, text, owner, state } = action
  return {
    action: (
      <Link href={paths.target(projectId, revisionId, { tab: 'actions', id })}>
        {number}: {text}
      </Link>
    ),
    owner: owner.name,
    due: describeDue(action),
    state: ACTION_STATE_WORDS[state],
  }
}
