import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { isWorkspaceEmpty } from '@/lib/data'
import { getActor } from '@/lib/server'
import { SetupForm } from './_components/setup-form'

export const metadata: Metadata = { title: 'Set up' }

/** First visit to an empty installation. Once anybody has an account, this page leads elsewhere. */
export default async function SetupPage() {
  if (!(await isWorkspaceEmpty())) redirect((await getActor()) === null ? paths.signIn() : paths.home())
  return (
    <div className="page-narrow">
      <PageHead
        title="Set up this workspace"
        under="Nobody has an account here yet. You become its first administrator, and lead engineer of its first project."
      />
      <SetupForm />
    </div>
  )
}
