import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getProject } from '@/lib/data'
import { InviteForm } from './_components/invite-form'

export const metadata: Metadata = { title: 'Invite somebody' }

export default async function InvitePage({ params }: { params: Promise<{ projectId: string }> }) {
  const { projectId } = await params
  const actor = await requireActor(paths.invite(projectId))
  const project = await readOrNotFound(() => getProject(actor, projectId))
  if (!project.may.invite) notFound()
  return (
    <div className="page-narrow">
      <PageHead
        title="Invite somebody"
        over={<Link href={paths.project(project.id)}>{project.name}</Link>}
        under="The link lets one person join this project for one company. It works once, is shown only once, and expires."
      />
      <InviteForm projectId={project.id} fabricatorNames={project.fabricators.map((company) => company.name)} />
    </div>
  )
}
