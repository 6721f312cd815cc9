'use client'

import { useState } from 'react'
import { z } from 'zod'
import { LinkButton } from '@/app/_components/ui/button'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { setPasswordInput } from '@/lib/inputs'
import { setPassword } from '../actions'

/** The new password twice: a typing slip in a hidden field would lock its owner out. */
const schema = setPasswordInput
  .extend({ repeated: z.string() })
  .refine((values) => values.newPassword === values.repeated, { path: ['repeated'], message: 'is not the same' })

export function ResetForm({ token }: { token: string }) {
  const [isSet, setIsSet] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema,
    action: async (input) => {
      const { newPassword } = schema.loose().parse(input)
      const result = await setPassword({ token, newPassword })
      // The page itself says after this that the link was used; what was done is said here.
      if (result.ok) setIsSet(true)
      return result
    },
    defaultValues: { token, newPassword: '', repeated: '' },
    isResetOnDone: true,
  })
  if (isSet) {
    return (
      <div className="stack">
        <p role="status">Your password was set, and every device was signed out.</p>
        <LinkButton href={paths.signIn()}>Sign in</LinkButton>
      </div>
    )
  }
  return (
    <form className="form" onSubmit={submit}>
      <FormText
        control={form.control}
        name="newPassword"
        label="New password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters, not a common password, not your name. Every device is signed out."
      />
      <FormText
        control={form.control}
        name="repeated"
        label="New password again"
        type="password"
        autoComplete="new-password"
      />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Set the password"
        pendingLabel="Setting…"
      />
    </form>
  )
}
