import type { Metadata } from 'next'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { BlockerList } from '@/app/_components/review/blocker-list'
import { LiveArrival } from '@/app/_components/review/live-arrival'
import { MarkLegend } from '@/app/_components/review/mark-legend'
import { MentionPeople } from '@/app/_components/review/mention-people'
import { MovePanel } from '@/app/_components/review/move-panel'
import { StagePath } from '@/app/_components/review/stage-path'
import { ROLE_WORDS } from '@/app/_components/review/words'
import { GroupedNav } from '@/app/_components/shell/grouped-nav'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getLiveStart, getSecondFactor, listThreadReaders, type RevisionView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { isPending } from '@/lib/review'
import { loadRevision, type RevisionParams } from './load-revision'

export async function generateMetadata({ params }: RevisionParams): Promise<Metadata> {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  return { title: `${revision.project.name} ${revision.label}` }
}

export default async function RevisionLayout({ params, children }: RevisionParams & { children: ReactNode }) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const [start, readers] = await Promise.all([getLiveStart(actor, revisionId), listThreadReaders(actor, revisionId)])
  const { blockers } = revision
  return (
    <>
      <header className="revision-head">
        <p className="label">
          <Link href={paths.project(projectId)}>{revision.project.name}</Link>
          {revision.role !== null && ` · your role: ${ROLE_WORDS[revision.role]}`}
        </p>
        <h1>
          Revision {revision.label} <span className="muted">{revision.design.name}</span>
        </h1>
        <div className="row row-baseline">
          <StagePath stage={revision.stage} />
          <span className="muted small">
            since <Timestamp at={revision.stageSince} dateOnly />
          </span>
        </div>
        {revision.stage === 'withdrawn' && revision.release !== null && (
          <p className="voided">Withdrawn after its release: do not build from it.</p>
        )}
        {revision.supersededBy !== null && (
          <p className="voided">
            Obsolete: superseded by{' '}
            <Link href={paths.revision(projectId, revision.supersededBy.id)}>
              revision {revision.supersededBy.label}
            </Link>
            .
          </p>
        )}
        {blockers.length > 0 && (
          <details className="blocker-fold no-print">
            <summary>
              {countOf(blockers.length, 'item')} {blockers.length === 1 ? 'blocks' : 'block'} the next stage
            </summary>
            <BlockerList projectId={projectId} revisionId={revisionId} blockers={blockers} />
          </details>
        )}
        <MovePanel
          revisionId={revisionId}
          version={revision.version}
          stage={revision.stage}
          may={revision.may}
          blockerCount={blockers.length}
          factor={await getSecondFactor(actor)}
        />
        <GroupedNav label="Parts of the revision" groups={listTabs(revision)} />
      </header>
      <LiveArrival projectId={projectId} revisionId={revisionId} ownUserId={actor.userId} start={start} />
      <MentionPeople people={readers}>{children}</MentionPeople>
      <MarkLegend />
    </>
  )
}

function listTabs(revision: RevisionView) {
  const link = (tab: Parameters<typeof paths.revision>[2], label: string, count?: number) => ({
    href: paths.revision(revision.project.id, revision.id, tab),
    label,
    isExact: tab === 'overview',
    ...(count === undefined ? {} : { count }),
  })
  return [
    { label: 'State', links: [link('overview', 'Results'), link('way-out', 'A way out')] },
    {
      label: 'Design',
      links: [
        link('brief', 'Brief'),
        link('construction', 'Construction'),
        link('bends', 'Bends'),
        link('features', 'Features'),
        link('lines', 'Lines'),
        link('plan', 'Plan'),
        link('drawing', 'Drawing'),
      ],
    },
    {
      label: 'Manufacture',
      links: [link('fabrication', 'Fabrication'), link('artwork', 'Artwork', revision.artwork.length)],
    },
    {
      label: 'Review',
      links: [
        link('checklist', 'Checklist', revision.items.filter((item) => item.state === 'open').length),
        link('proposals', 'Proposals', revision.proposals.filter(({ state }) => state === 'proposed').length),
        link('threads', 'Threads', revision.threads.filter((thread) => thread.state !== 'closed').length),
        link('actions', 'Actions', revision.actions.filter(isPending).length),
        ...(revision.may.viewMinutes ? [link('meetings', 'Meetings'), link('needs', 'Needs')] : []),
      ],
    },
    {
      label: 'Release',
      links: [link('sign-off', 'Sign-off'), ...(revision.may.viewTrail ? [link('trail', 'Trail')] : [])],
    },
  ]
}
