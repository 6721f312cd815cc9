'use client'

import { useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { CopyText } from '@/app/_components/ui/copy-text'
import type { AccountView, ResetLink } from '@/lib/data'
import { allowIdentity, makeResetLink, removeSecondFactor } from '../actions'

/** What an admin does for somebody who cannot sign in. Each act is in the trail, and the person is told by mail. */
export function AccountRecovery({ account, providerName }: { account: AccountView; providerName: string | null }) {
  const [made, setMade] = useState<ResetLink | null>(null)
  const [said, setSaid] = useState('')
  if (account.isDisabled) return null
  const input = { userId: account.id }
  return (
    <>
      <ActionButton
        action={makeResetLink}
        input={input}
        weight="quiet"
        confirm={{
          title: `Make a link for ${account.name}?`,
          text: 'It sets a new password once, within a day. Pass it on yourself: nobody else sees it, and earlier links stop working.',
          label: 'Create link',
        }}
        onDone={setMade}
      >
        Reset the password
      </ActionButton>
      {account.hasSecondFactor && (
        <ActionButton
          action={removeSecondFactor}
          input={input}
          weight="quiet"
          confirm={{
            title: `Remove ${account.name}’s second factor?`,
            text: 'One-time codes, passkeys and recovery codes are removed: the password alone then signs in. Make sure of who is asking.',
            label: 'Remove it',
          }}
          onDone={() => setSaid('The second factor was removed.')}
        >
          Remove second factor
        </ActionButton>
      )}
      {providerName !== null && (
        <ActionButton
          action={allowIdentity}
          input={input}
          weight="quiet"
          confirm={{
            title: `Let ${account.name} sign in with ${providerName}?`,
            text: `The next sign-in there with the address ${account.email}, confirmed by the provider, is linked to this account. The permission lasts a week.`,
            label: 'Allow it',
          }}
          onDone={() =>
            setSaid(`Allowed: the next sign-in with ${providerName} and this address is linked to the account.`)
          }
        >
          Allow {providerName}
        </ActionButton>
      )}
      {made !== null && <CopyText label={`Link for ${account.name}`} text={made.link} />}
      <span role="status" className="muted small">
        {said}
      </span>
    </>
  )
}
