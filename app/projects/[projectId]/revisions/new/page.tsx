import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getProject, getRevisionStarts } from '@/lib/data'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { NewRevisionForm } from './_components/new-revision-form'

export const metadata: Metadata = { title: 'New revision' }

export default async function NewRevisionPage({ params }: { params: Promise<{ projectId: string }> }) {
  const { projectId } = await params
  const actor = await requireActor(paths.newRevision(projectId))
  const project = await readOrNotFound(() => getProject(actor, projectId))
  if (!project.may.createRevision) notFound()
  const head = <PageHead title="New revision" over={<Link href={paths.project(project.id)}>{project.name}</Link>} />
  if (project.archivedAt !== null) {
    return (
      <>
        {head}
        <EmptyState>This project is archived. A lead engineer can bring it back on the project’s page.</EmptyState>
      </>
    )
  }
  const { constructions, elsewhere, isElsewhereCut } = await getRevisionStarts(actor, project.id)
  return (
    <>
      {head}
      <NewRevisionForm
        projectId={project.id}
        constructions={listStartingConstructions().map(({ id, name, purpose, conductorLayerCount }) => ({
          id,
          name,
          purpose,
          conductorLayerCount,
        }))}
        kept={constructions}
        elsewhere={elsewhere}
        isElsewhereCut={isElsewhereCut}
        revisions={project.revisions.map(({ id, label, designName }) => ({ id, label, designName }))}
      />
    </>
  )
}
