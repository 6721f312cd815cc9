'use client'

import { zodResolver } from '@hookform/resolvers/zod'
import { useForm } from 'react-hook-form'
import { z } from 'zod'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { PasskeyButton } from './passkey-button'
import { useSignIn } from './use-sign-in'

const schema = z.object({ code: z.string().trim().min(1, 'is empty').max(20, 'is too long for a code') })

/** The second step: after a right password. */
export function CodeForm({ next, arePasskeysPossible }: { next: string; arePasskeysPossible: boolean }) {
  const form = useForm({ resolver: zodResolver(schema), defaultValues: { code: '' } })
  const { send, isPending, refusal } = useSignIn(next, 'This is neither the current code nor an unused recovery code.')
  return (
    <div className="stack">
      <form className="form" onSubmit={form.handleSubmit((values) => send('second-step', values))}>
        <FormText
          control={form.control}
          name="code"
          label="One-time code"
          autoComplete="one-time-code"
          autoFocus
          hint="From your authenticator. Without it, enter one of your recovery codes."
        />
        <FormFoot refusal={refusal} isPending={isPending} weight="strong" label="Continue" pendingLabel="Signing in…" />
      </form>
      {arePasskeysPossible && (
        <div className="row">
          <PasskeyButton next={next} />
        </div>
      )}
    </div>
  )
}
