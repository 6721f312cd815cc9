'use client'

import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { askForResetInput } from '@/lib/inputs'
import { askForReset } from '../actions'

export function ForgotForm() {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: askForResetInput,
    action: askForReset,
    defaultValues: { email: '' },
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormText control={form.control} name="email" label="E-mail address" type="email" autoComplete="username" />
      <FormFoot refusal={refusal} isPending={isPending} weight="strong" label="Send a link" pendingLabel="Sending…" />
      <p role="status">
        {isDone && 'If this address has an account, a link has been sent to it. It works once, for an hour.'}
      </p>
    </form>
  )
}
