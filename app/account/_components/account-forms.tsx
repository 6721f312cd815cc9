'use client'

import { signOut } from 'next-auth/react'
import { z } from 'zod'
import { paths } from '@/app/_components/shell/paths'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { changePasswordInput } from '@/lib/inputs'
import { changePassword, signOutEverywhere } from '../actions'

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
        label="Present password"
        type="password"
        autoComplete="current-password"
      />
      <FormText
        control={form.control}
        name="newPassword"
        label="New password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters. Your other sessions end."
      />
      <FormText
        control={form.control}
        name="repeated"
        label="New password again"
        type="password"
        autoComplete="new-password"
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending} pendingLabel="Changing…">
          Change the password
        </Button>
        <span role="status" className="muted">
          {isDone && 'Changed. Your other sessions have ended.'}
        </span>
      </div>
    </form>
  )
}

export function EndSessions() {
  return (
    <ActionButton
      action={signOutEverywhere}
      input={{}}
      confirm={{
        title: 'End all sessions?',
        text: 'You are signed out here and everywhere else, and sign in again.',
        label: 'End all sessions',
      }}
      onDone={() => signOut({ callbackUrl: paths.signIn() })}
    >
      End all sessions
    </ActionButton>
  )
}
