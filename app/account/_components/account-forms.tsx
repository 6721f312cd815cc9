'use client'

import { useState } from 'react'
import { z } from 'zod'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { changePasswordInput } from '@/lib/inputs'
import { changePassword, endOtherSessions } from '../actions'

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
  const [isDone, setIsDone] = useState(false)
  return (
    <div className="row">
      <ActionButton
        action={endOtherSessions}
        input={{}}
        confirm={{
          title: 'End your other sessions?',
          text: 'Every other browser where you are signed in is signed out at once. This one goes on.',
          label: 'End them',
        }}
        onDone={() => setIsDone(true)}
      >
        End other sessions
      </ActionButton>
      <span role="status" className="muted">
        {isDone && 'Your other sessions have ended.'}
      </span>
    </div>
  )
}
