import type { Metadata } from 'next'
import { cookies } from 'next/headers'
import Link from 'next/link'
import { FileRoom } from '@/app/_components/review/file-room'
import { InvitationList } from '@/app/_components/review/invitation-list'
import { MarkLegend } from '@/app/_components/review/mark-legend'
import { VerdictCounts } from '@/app/_components/review/verdict-counts'
import { ROLE_WORDS, STAGE_WORDS } from '@/app/_components/review/words'
import { computeOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState, Notice } from '@/app/_components/ui/notices'
import { HIDDEN, nameStartCookie } from '@/app/_components/ui/preferences'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import {
  type Actor,
  getFabricatorStart,
  getFileRoom,
  getProject,
  getProjectProfiles,
  listWaits,
  type ProjectView,
} from '@/lib/data'
import { revokeInvitation } from '../actions'
import { FabricatorList } from './_components/fabricator-list'
import { FabricatorStart } from './_components/fabricator-start'
import { ProjectPeople } from './_components/project-people'
import { ProjectSettings } from './_components/project-settings'

interface ProjectPageProps {
  params: Promise<{ projectId: string }>
}

export const metadata: Metadata = { title: 'Project' }

export default async function ProjectPage({ params }: ProjectPageProps) {
  const { projectId } = await params
  const actor = await requireActor(paths.project(projectId))
  const project = await computeOrNotFound(actor, () => getProject(actor, projectId))
  const room = await getFileRoom(actor, projectId)
  const profiles = await getProjectProfiles(actor, projectId)
  return (
    <>
      <PageHead
        title={project.name}
        over={
          <>
            <Link href={paths.projects()}>Projects</Link>
            {project.role !== null && ` · your role: ${ROLE_WORDS[project.role]}`}
          </>
        }
        under={project.description === '' ? undefined : <p>{project.description}</p>}
        actions={
          <>
            <LinkButton href={paths.issues(project.id)}>Issue register</LinkButton>
            {project.may.invite && <LinkButton href={paths.invite(project.id)}>Invite somebody</LinkButton>}
            {project.may.createRevision && project.archivedAt === null && (
              <LinkButton href={paths.newRevision(project.id)} weight="strong">
                New revision
              </LinkButton>
            )}
          </>
        }
      />
      {project.archivedAt !== null && (
        <Notice>
          <p>
            Archived on <Timestamp at={project.archivedAt} dateOnly />. No revision can begin here until a lead engineer
            brings the project back.
          </p>
        </Notice>
      )}
      {project.role === 'fabricator' && <Start actor={actor} projectId={project.id} />}
      <Revisions project={project} />
      <PageSection title="People">
        <ProjectPeople
          projectId={project.id}
          people={project.people}
          mayManage={project.may.managePeople}
          ownUserId={actor.userId}
        />
      </PageSection>
      <PageSection
        title="Profiles"
        actions={<Link href={paths.projectProfiles(project.id)}>{profiles.mayChoose ? 'Choose' : 'Details'}</Link>}
      >
        <p>{profiles.followed.length === 0 ? 'None.' : profiles.followed.map(({ name }) => name).join(', ')}</p>
      </PageSection>
      <PageSection title="Sign-off">
        <p>
          <Link href={paths.signOffPolicy(project.id)}>Sign-off policy</Link>: who must review, approve waivers, sign
          and release.
        </p>
        {project.may.seeTrail && (
          <p>
            <Link href={paths.capacities(project.id)}>Capacities</Link>: in what capacity people sign.
          </p>
        )}
        {project.may.seeAccess && (
          <p>
            <Link href={paths.projectAccess(project.id)}>Who opened what</Link>: sign-ins, refusals, revisions that were
            opened and files that were fetched.
          </p>
        )}
      </PageSection>
      <PageSection title="Fabricators">
        {project.fabricators.length === 0 ? (
          <EmptyState>No fabricator is invited yet. Ask early: layout is cheap to change before it freezes.</EmptyState>
        ) : (
          <FabricatorList fabricators={project.fabricators} />
        )}
      </PageSection>
      {project.invitations.length > 0 && (
        <PageSection title="Invitations">
          <InvitationList
            invitations={project.invitations}
            mayRevoke={project.may.invite}
            revokeAction={revokeInvitation}
          />
        </PageSection>
      )}
      <PageSection title="Files">
        <FileRoom room={room} />
      </PageSection>
      {project.may.edit && (
        <PageSection title="Name and archive">
          <ProjectSettings
            projectId={project.id}
            name={project.name}
            description={project.description}
            isArchived={project.archivedAt !== null}
          />
        </PageSection>
      )}
      <Timeline project={project} />
    </>
  )
}

/** Until all first sheets are stated, or the person put it away. */
async function Start({ actor, projectId }: { actor: Actor; projectId: string }) {
  if ((await cookies()).get(nameStartCookie(projectId))?.value === HIDDEN) return null
  const start = await computeOrNotFound(actor, () => getFabricatorStart(actor, projectId))
  if (start === null || start.sheets.every(({ state }) => state === 'stated')) return null
  const waits = await computeOrNotFound(actor, () => listWaits(actor))
  return (
    <FabricatorStart projectId={projectId} start={start} waits={waits.filter((wait) => wait.projectId === projectId)} />
  )
}

function Revisions({ project }: { project: ProjectView }) {
  // Counts recorded for the team rest on limits that are not a fabricator's own; theirs stand on the revision's page.
  const isFabricator = project.role === 'fabricator'
  const columns = {
    revision: { head: 'Revision', isRowHead: true },
    design: { head: 'Design' },
    stage: { head: 'Stage' },
    since: { head: 'Since' },
    ...(!isFabricator ? { items: { head: 'Items' } } : {}),
    startedBy: { head: 'Started by' },
  } satisfies Columns
  return (
    <PageSection
      title="Revisions"
      actions={project.revisions.length > 0 && <Link href={paths.compare(project.id)}>Compare</Link>}
    >
      {project.revisions.length === 0 ? (
        <EmptyState>
          {project.may.createRevision && project.archivedAt !== null
            ? 'No revision was begun.'
            : project.may.createRevision
              ? 'No revision yet. Start one from a starting construction, a design file, or blank.'
              : 'No revision is shared with you yet.'}
        </EmptyState>
      ) : (
        <DataTable label="Revisions" columns={columns}>
          {project.revisions.map((revision) => (
            <DataRow
              key={revision.id}
              columns={columns}
              cells={{
                revision: <Link href={paths.revision(project.id, revision.id)}>{revision.label}</Link>,
                design: revision.designName,
                stage: (
                  <>
                    {STAGE_WORDS[revision.stage]}
                    {revision.supersededByLabel !== null && (
                      <span className="muted"> by {revision.supersededByLabel}</span>
                    )}
                  </>
                ),
                since: <Timestamp at={revision.stageSince} dateOnly />,
                items: <VerdictCounts counts={revision.verdictCounts} />,
                startedBy: revision.createdBy.name,
              }}
            />
          ))}
        </DataTable>
      )}
      {!isFabricator && project.revisions.length > 0 && <MarkLegend />}
    </PageSection>
  )
}

function Timeline({ project }: { project: ProjectView }) {
  return (
    <PageSection title="Timeline">
      {project.timeline.length === 0 ? (
        <EmptyState>Nothing has happened yet.</EmptyState>
      ) : (
        <ol className="timeline">
          {project.timeline.map((entry) => (
            <li key={`${entry.at} ${entry.sentence}`}>
              <Timestamp at={entry.at} />
              <span>
                {entry.revisionId === null ? (
                  entry.sentence
                ) : (
                  <Link href={paths.revision(project.id, entry.revisionId)}>{entry.sentence}</Link>
                )}{' '}
                <span className="muted">{entry.actorName}</span>
              </span>
            </li>
          ))}
        </ol>
      )}
    </PageSection>
  )
}
