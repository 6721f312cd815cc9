'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
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
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Sending…">
          Send a link
        </Button>
      </div>
      <p role="status">
        {isDone && 'If this address has an account, a link has been sent to it. It works once, for an hour.'}
      </p>
    </form>
  )
}
