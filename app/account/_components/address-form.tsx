'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { changeAddressInput } from '@/lib/inputs'
import { askForAddressChange } from '../actions'

export function AddressForm() {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: changeAddressInput,
    action: askForAddressChange,
    defaultValues: { email: '', password: '' },
    isResetOnDone: true,
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Change your address">
      <FormText control={form.control} name="email" label="New e-mail address" type="email" autoComplete="email" />
      <FormText
        control={form.control}
        name="password"
        label="Your password"
        type="password"
        autoComplete="current-password"
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending} pendingLabel="Sending…">
          Change the address
        </Button>
        <span role="status" className="muted">
          {isDone && 'A link was sent to the new address. The change takes effect once it is opened and confirmed.'}
        </span>
      </div>
    </form>
  )
}
