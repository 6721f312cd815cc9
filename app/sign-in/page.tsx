import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { Notice } from '@/app/_components/ui/notices'
import { ProductMark } from '@/app/_components/ui/product-mark'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import { arePasskeysPossible, isWorkspaceEmpty } from '@/lib/data'
import { makeOwnPath } from '@/lib/inputs'
import { getActor, listDemoSignIns, readStep } from '@/lib/server'
import { SignInForm } from './_components/sign-in-form'

export const metadata: Metadata = { title: 'Sign in' }

type Query = Readonly<Record<'next' | 'step' | 'problem' | 'error', string | string[] | undefined>>

const NOT_JOINED =
  'No account here is linked to that identity. Sign in with your password and link it on your account page, or ask an administrator.'

/** Words of ours alone: a sentence in the address could be anybody's. */
function explain({ problem, error }: Query): string | null {
  if (problem === 'not-joined') return NOT_JOINED
  return problem === undefined && error === undefined ? null : 'Signing in with the provider failed. Try again.'
}

export default async function SignInPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  // Only an address inside this application is followed after signing in.
  const next = makeOwnPath(query.next) ?? paths.home()
  if ((await getActor()) !== null) redirect(next)
  if (await isWorkspaceEmpty()) redirect(paths.setup())
  const demoAccounts = await listDemoSignIns()
  const problem = explain(query)
  return (
    <div className="page-narrow">
      <ProductMark sizePx={48} />
      <PageHead
        title="Sign in"
        under="Design review and sign-off of flexible and rigid-flex circuits. New people join through an invitation from their project."
      />
      {problem !== null && (
        <Notice tone="refused">
          <p>{problem}</p>
        </Notice>
      )}
      <SignInForm
        next={next}
        demoAccounts={demoAccounts}
        arePasskeysPossible={arePasskeysPossible()}
        providerName={getSettings().oidc?.name ?? null}
        startsAtCode={query.step === 'code' && (await readStep('second-step')) !== null}
      />
    </div>
  )
}
