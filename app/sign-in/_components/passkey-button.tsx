'use client'

import { startAuthentication } from '@simplewebauthn/browser'
import { Button, type ButtonWeight } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { paths } from '@/lib/addresses'
import { useSignIn } from './use-sign-in'

/** Signs in by a passkey: alone from the first page, or after the password. */
export function PasskeyButton({ next, weight = 'plain' }: { next: string; weight?: ButtonWeight }) {
  const { send, isPending, refusal, refuse } = useSignIn(next, 'This passkey is not known here.')
  const begin = async () => {
    try {
      const response = await fetch(paths.passkeyChallenge(), { method: 'POST' })
      if (!response.ok) throw new Error('no challenge')
      const answer = await startAuthentication({ optionsJSON: await response.json() })
      send('passkey', { answer: JSON.stringify(answer) })
    } catch {
      refuse('No passkey was used. Try again, or sign in another way.')
    }
  }
  return (
    <>
      <Button weight={weight} isPending={isPending} pendingLabel="Signing in…" onPress={begin}>
        Sign in with a passkey
      </Button>
      <FormError refusal={refusal} />
    </>
  )
}
