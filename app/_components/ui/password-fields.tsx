'use client'

import type { ReactNode } from 'react'
import type { Control, FieldPath, FieldValues } from 'react-hook-form'
import { FormText } from './form-fields'

interface OwnPasswordProps<TIn extends FieldValues, TOut> {
  readonly control: Control<TIn, unknown, TOut>
  readonly name: FieldPath<TIn>
  readonly label?: string
  readonly hint?: ReactNode
}

/** The password that the person has. */
export function OwnPassword<TIn extends FieldValues, TOut>({
  label = 'Your password',
  hint,
  ...field
}: OwnPasswordProps<TIn, TOut>) {
  return <FormText {...field} label={label} type="password" autoComplete="current-password" hint={hint} />
}

interface NewPasswordProps<TIn extends FieldValues, TOut> {
  readonly control: Control<TIn, unknown, TOut>
  /** What happens to the person's devices. */
  readonly what: string
}

/** Of a form whose schema asks for it twice. */
export function NewPassword<TIn extends FieldValues, TOut>({ control, what }: NewPasswordProps<TIn, TOut>) {
  const each = { control, type: 'password', autoComplete: 'new-password' } as const
  return (
    <>
      <FormText
        {...each}
        name={'newPassword' as FieldPath<TIn>}
        label="New password"
        hint={`At least 12 characters, not a common password, not your name. ${what}`}
      />
      <FormText {...each} name={'repeated' as FieldPath<TIn>} label="New password again" />
    </>
  )
}
