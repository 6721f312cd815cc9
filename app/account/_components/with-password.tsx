'use client'

import type { ReactNode } from 'react'
import type { Action } from '@/app/_components/ui/action-result'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { OwnPassword } from '@/app/_components/ui/password-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { ownPasswordInput } from '@/lib/inputs'

interface WithPasswordProps<T> {
  action: Action<T>
  /** Sent beside the password. */
  also?: Record<string, unknown>
  label: string
  hint?: ReactNode
  onDone?: (value: T) => void
}

/** One act that changes how somebody signs in, with the password that confirms it. */
export function WithPassword<T>({ action, also = {}, label, hint, onDone }: WithPasswordProps<T>) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: ownPasswordInput,
    action: (input) => action({ ...(input as object), ...also }),
    defaultValues: { password: '' },
    isResetOnDone: true,
    ...(onDone === undefined ? {} : { onDone }),
  })
  return (
    <form className="form" onSubmit={submit} aria-label={label}>
      <OwnPassword control={form.control} name="password" hint={hint} />
      <FormFoot refusal={refusal} isPending={isPending} label={label} pendingLabel="Checking…" />
    </form>
  )
}
