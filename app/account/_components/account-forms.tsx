'use client'

import { z } from 'zod'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { changePasswordInput } from '@/lib/inputs'
import { changePassword } from '../actions'

/** The new password twice: a typing slip in a hidden field would lock its owner out. */
const passwordForm = changePasswordInput
  .extend({ repeated: z.string() })
  .refine((values) => values.newPassword === values.repeated, { path: ['repeated'], message: 'is not the same' })

export function PasswordForm() {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: passwordForm,
    action: async (input) => {
      const { currentPassword, newPassword } = passwordForm.loose().parse(input)
      return changePassword({ currentPassword, newPassword })
    },
    defaultValues: { currentPassword: '', newPassword: '', repeated: '' },
    isResetOnDone: true,
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormText
        control={form.control}
        name="currentPassword"
        label="Current password"
        type="password"
        autoComplete="current-password"
      />
      <FormText
        control={form.control}
        name="newPassword"
        label="New password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters, not a common password, not your name. Your other devices are signed out."
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
        label="Change the password"
        pendingLabel="Changing…"
        done={isDone && 'Changed. Your other devices have been signed out.'}
      />
    </form>
  )
}
