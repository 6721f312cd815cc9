'use client'

import { useState } from 'react'
import { LinkButton } from '@/app/_components/ui/button'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { NewPassword } from '@/app/_components/ui/password-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { setPasswordForm } from '@/lib/inputs'
import { setPassword } from '../actions'

export function ResetForm({ token }: { token: string }) {
  const [isSet, setIsSet] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: setPasswordForm,
    action: async (input) => {
      const { newPassword } = setPasswordForm.loose().parse(input)
      const result = await setPassword({ token, newPassword })
      // The page itself says after this that the link was used; this form shows what was done.
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
      <NewPassword control={form.control} what="Every device is signed out." />
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
