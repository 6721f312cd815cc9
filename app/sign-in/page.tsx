import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { paths } from '@/app/_components/shell/paths'
import { PageHead } from '@/app/_components/ui/section'
import { isWorkspaceEmpty } from '@/lib/data'
import { makeOwnPath } from '@/lib/inputs'
import { getActor, listDemoSignIns } from '@/lib/server'
import { SignInForm } from './_components/sign-in-form'

export const metadata: Metadata = { title: 'Sign in' }

interface SignInPageProps {
  searchParams: Promise<{ next?: string | string[] }>
}

export default async function SignInPage({ searchParams }: SignInPageProps) {
  // Only an address inside this application is followed after signing in.
  const next = makeOwnPath((await searchParams).next) ?? paths.home()
  if ((await getActor()) !== null) redirect(next)
  if (await isWorkspaceEmpty()) redirect(paths.setup())
  const demoAccounts = await listDemoSignIns()
  return (
    <div className="page-narrow">
      <PageHead
        title="Sign in"
        under="Design review and sign-off of flexible and rigid-flex circuits. New people join through an invitation from their project."
      />
      <SignInForm next={next} demoAccounts={demoAccounts} />
    </div>
  )
}
