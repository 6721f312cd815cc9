'use client'

import { FormFoot } from '@/app/_components/ui/form-foot'
import { NewPassword, OwnPassword } from '@/app/_components/ui/password-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { changePasswordForm } from '@/lib/inputs'
import { changePassword } from '../actions'

export function PasswordForm() {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: changePasswordForm,
    action: async (input) => {
      const { currentPassword, newPassword } = changePasswordForm.loose().parse(input)
      return changePassword({ currentPassword, newPassword })
    },
    defaultValues: { currentPassword: '', newPassword: '', repeated: '' },
    isResetOnDone: true,
  })
  return (
    <form className="form" onSubmit={submit}>
      <OwnPassword control={form.control} name="currentPassword" label="Current password" />
      <NewPassword control={form.control} what="Your other devices are signed out." />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        label="Change the password"
        pendingLabel="Changing…"
        done={isDone && 'Changed. Your other devices have been signed out.'}
      />
    </form>
  )
}
