'use client'

import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { OwnPassword } from '@/app/_components/ui/password-fields'
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
      <OwnPassword control={form.control} name="password" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        label="Change the address"
        pendingLabel="Sending…"
        done={isDone && 'A link was sent to the new address. The change takes effect once it is opened and confirmed.'}
      />
    </form>
  )
}
