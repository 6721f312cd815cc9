import type { Metadata } from 'next'
import Link from 'next/link'
import { ROLE_WORDS, STAGE_WORDS } from '@/app/_components/review/words'
import { requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { listProjects, type ProjectSummary } from '@/lib/data'

export const metadata: Metadata = { title: 'Projects' }

const COLUMNS = {
  project: { head: 'Project', isRowHead: true },
  role: { head: 'Your role' },
  revisions: { head: 'Revisions', isNumeric: true },
  latest: { head: 'Latest' },
  stage: { head: 'Stage' },
} satisfies Columns

export default async function ProjectsPage() {
  const actor = await requireActor(paths.projects())
  const projects = await listProjects(actor)
  const archived = projects.filter(({ isArchived }) => isArchived)
  const isFabricatorOnly =
    actor.memberships.length > 0 && actor.memberships.every((membership) => membership.role === 'fabricator')
  return (
    <>
      <PageHead
        title="Projects"
        actions={isFabricatorOnly ? undefined : <LinkButton href={paths.newProject()}>New project</LinkButton>}
      />
      {archived.length === projects.length ? (
        <EmptyState>
          {projects.length === 0
            ? 'You are not in any project yet. A lead engineer can invite you.'
            : 'All of your projects are archived.'}
        </EmptyState>
      ) : (
        <ProjectTable label="Projects" projects={projects.filter(({ isArchived }) => !isArchived)} />
      )}
      {archived.length > 0 && (
        <PageSection title="Archived">
          <ProjectTable label="Archived projects" projects={archived} />
        </PageSection>
      )}
    </>
  )
}

function ProjectTable({ label, projects }: { label: string; projects: readonly ProjectSummary[] }) {
  return (
    <DataTable label={label} columns={COLUMNS}>
      {projects.map((project) => (
        <DataRow
          key={project.id}
          columns={COLUMNS}
          cells={{
            project: (
              <>
                <Link href={paths.project(project.id)}>{project.name}</Link>
                {project.description !== '' && <p className="small muted font-normal">{project.description}</p>}
              </>
            ),
            role: project.role === null ? 'administrator' : ROLE_WORDS[project.role],
            revisions: project.revisionCount,
            latest:
              project.latestRevision === null ? (
                <span className="muted">none</span>
              ) : (
                <Link href={paths.revision(project.id, project.latestRevision.id)}>{project.latestRevision.label}</Link>
              ),
            stage: project.latestRevision === null ? '' : STAGE_WORDS[project.latestRevision.stage],
          }}
        />
      ))}
    </DataTable>
  )
}
