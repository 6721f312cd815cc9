'use client'

import { signIn } from 'next-auth/react'
import { useState, useTransition } from 'react'
import type { ShownRefusal } from '@/app/_components/ui/action-result'

/** The word by which the server says that a code or passkey is still to come. */
const SECOND_STEP = 'second-step'

interface SigningIn {
  readonly send: (way: string, values: Record<string, string>) => void
  readonly isPending: boolean
  readonly refusal: ShownRefusal | null
  readonly refuse: (message: string) => void
}

/**
 * Sends one sign-in. It goes through the session library's own route, so its forms are the ones without an action of ours.
 * @param wrong  what is shown where the library refuses with a code of its own
 */
export function useSignIn(next: string, wrong: string, onSecondStep?: () => void): SigningIn {
  const [isPending, startTransition] = useTransition()
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const refuse = (message: string) => setRefusal({ kind: 'unsent', message, issues: [] })
  const send: SigningIn['send'] = (way, values) => {
    setRefusal(null)
    startTransition(async () => {
      try {
        const answer = await signIn(way, { ...values, redirect: false })
        if (answer?.ok === true) {
          // A full load: nothing that was rendered for a visitor stays in the page.
          window.location.assign(next)
          return
        }
        if (answer?.error === SECOND_STEP) onSecondStep?.()
        else refuse(answer?.error == null || answer.error === 'CredentialsSignin' ? wrong : answer.error)
      } catch {
        refuse('The server did not answer. Try again.')
      }
    })
  }
  return { send, isPending, refusal, refuse }
}
