import type { Metadata } from 'next'
import { requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { NewProjectForm } from './_components/new-project-form'

export const metadata: Metadata = { title: 'New project' }

export default async function NewProjectPage() {
  await requireActor(paths.newProject())
  return (
    <div className="page-narrow">
      <PageHead title="New project" under="You become its lead engineer and can invite others." />
      <NewProjectForm />
    </div>
  )
}
