'use client'

import { type ReactNode, useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { LinkButton } from '@/app/_components/ui/button'
import { paths } from '@/lib/addresses'
import { confirmAddress } from '../actions'

interface ConfirmAddressProps {
  token: string
  /** Null where the link is used or over. */
  email: string | null
  /** What is said then. */
  children: ReactNode
}

export function ConfirmAddress({ token, email, children }: ConfirmAddressProps) {
  const [done, setDone] = useState<string | null>(null)
  if (done !== null) {
    return (
      <div className="stack">
        <p role="status">Your address is {done} now. Sign in with it from here on.</p>
        <LinkButton href={paths.account()}>Go to your account</LinkButton>
      </div>
    )
  }
  if (email === null) return children
  return (
    <div className="stack">
      <p>You sign in with {email} from then on, and messages go there.</p>
      <ActionButton
        action={confirmAddress}
        input={{ token }}
        weight="strong"
        pendingLabel="Confirming…"
        onDone={(value) => setDone(value.email)}
      >
        Confirm {email}
      </ActionButton>
    </div>
  )
}
