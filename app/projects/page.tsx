import type { Metadata } from 'next'
import Link from 'next/link'
import { ROLE_WORDS, STAGE_WORDS } from '@/app/_components/review/words'
import { requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageLinks } from '@/app/_components/ui/page-links'
import { readPageNumber } from '@/app/_components/ui/page-number'
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

interface ProjectsPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

export default async function ProjectsPage({ searchParams }: ProjectsPageProps) {
  const actor = await requireActor(paths.projects())
  const asked = await searchParams
  const pages = { open: readPageNumber(asked.page), archived: readPageNumber(asked.archived) }
  const { open, archived } = await listProjects(actor, pages)
  const isFabricatorOnly =
    actor.memberships.length > 0 && actor.memberships.every((membership) => membership.role === 'fabricator')
  return (
    <>
      <PageHead
        title="Projects"
        actions={isFabricatorOnly ? undefined : <LinkButton href={paths.newProject()}>New project</LinkButton>}
      />
      {open.total === 0 ? (
        <EmptyState>
          {archived.total === 0
            ? 'You are not in any project yet. A lead engineer can invite you.'
            : 'All of your projects are archived.'}
        </EmptyState>
      ) : (
        <ProjectTable label="Projects" projects={open.rows} />
      )}
      <PageLinks
        label="Pages of projects"
        page={pages.open}
        total={open.total}
        hrefOf={(n) => paths.projects({ page: String(n), archived: String(pages.archived) })}
      />
      {archived.total > 0 && (
        <PageSection title="Archived">
          <ProjectTable label="Archived projects" projects={archived.rows} />
          <PageLinks
            label="Pages of archived projects"
            page={pages.archived}
            total={archived.total}
            hrefOf={(n) => paths.projects({ page: String(pages.open), archived: String(n) })}
          />
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
