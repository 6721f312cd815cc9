'use client'

import { signIn } from 'next-auth/react'
import { paths } from '@/lib/addresses'
import type { IdentityView } from '@/lib/data'
import { beginIdentityLink, removeIdentity } from '../actions'
import { WithPassword } from './with-password'

interface SingleSignOnProps {
  providerName: string
  identity: IdentityView | null
}

export function SingleSignOn({ providerName, identity }: SingleSignOnProps) {
  if (identity === null) {
    return (
      <WithPassword
        action={beginIdentityLink}
        label={`Link to ${providerName}`}
        hint="You go to the provider and return here."
        onDone={() => signIn('oidc', { callbackUrl: paths.account() })}
      />
    )
  }
  return (
    <div className="stack">
      <p>
        Linked to {identity.email === '' ? 'an identity' : identity.email} at {identity.issuer}.
      </p>
      <WithPassword action={removeIdentity} label={`Remove the link to ${providerName}`} />
    </div>
  )
}
