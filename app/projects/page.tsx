import type { Metadata } from 'next'
import Link from 'next/link'
import { ROLE_WORDS, STAGE_WORDS } from '@/app/_components/review/words'
import { paths } from '@/app/_components/shell/paths'
import { requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { listProjects } from '@/lib/data'

export const metadata: Metadata = { title: 'Projects' }

export default async function ProjectsPage() {
  const actor = await requireActor(paths.projects())
  const projects = await listProjects(actor)
  const isFabricatorOnly =
    actor.memberships.length > 0 && actor.memberships.every((membership) => membership.role === 'fabricator')
  return (
    <>
      <PageHead
        title="Projects"
        actions={isFabricatorOnly ? undefined : <LinkButton href={paths.newProject()}>New project</LinkButton>}
      />
      {projects.length === 0 ? (
        <EmptyState>You are not in any project yet. A lead engineer can invite you.</EmptyState>
      ) : (
        <TableFrame label="Projects">
          <table className="ledger" data-stack>
            <thead>
              <tr>
                <th scope="col">Project</th>
                <th scope="col">Your role</th>
                <th scope="col" className="num">
                  Revisions
                </th>
                <th scope="col">Latest</th>
                <th scope="col">Stage</th>
              </tr>
            </thead>
            <tbody>
              {projects.map((project) => (
                <tr key={project.id}>
                  <th scope="row">
                    <Link href={paths.project(project.id)}>{project.name}</Link>
                    {project.description !== '' && <p className="small muted font-normal">{project.description}</p>}
                  </th>
                  <td>{project.role === null ? 'administrator' : ROLE_WORDS[project.role]}</td>
                  <td className="num" data-label="revisions">
                    {project.revisionCount}
                  </td>
                  <td data-label="latest">
                    {project.latestRevision === null ? (
                      <span className="muted">none</span>
                    ) : (
                      <Link href={paths.revision(project.id, project.latestRevision.id)}>
                        {project.latestRevision.label}
                      </Link>
                    )}
                  </td>
                  <td>{project.latestRevision === null ? '' : STAGE_WORDS[project.latestRevision.stage]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
    </>
  )
}
