'use client'

import { startAuthentication } from '@simplewebauthn/browser'
import { useState } from 'react'
import type { FieldPath, FieldValues, PathValue, UseFormReturn } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { OwnPassword } from '@/app/_components/ui/password-fields'
import { useAction } from '@/app/_components/ui/use-action'
import type { SecondFactorView } from '@/lib/data'
import type { Confirmation } from '@/lib/inputs'
import { beginPasskeyConfirmation } from './actions'

/** Values of an act that nobody has confirmed yet. */
export const UNCONFIRMED = { password: '', code: '', passkey: undefined } as const

type Confirming = FieldValues & { password?: string | undefined; code?: string | undefined }

interface ConfirmFieldsProps<TIn extends Confirming, TOut> {
  form: UseFormReturn<TIn, unknown, TOut>
  factor: SecondFactorView
}

/** Asks for the person again: the password, and the second factor of anyone who has one. */
export function ConfirmFields<TIn extends Confirming, TOut>({ form, factor }: ConfirmFieldsProps<TIn, TOut>) {
  const hasPasskeys = factor.passkeys.length > 0
  return (
    <>
      <OwnPassword control={form.control} name={nameOf<TIn>('password')} />
      {(factor.hasCodes || hasPasskeys) && (
        <FormText
          control={form.control}
          name={nameOf<TIn>('code')}
          label={factor.hasCodes ? 'One-time code' : 'Recovery code'}
          autoComplete="one-time-code"
          hint={
            factor.hasCodes
              ? `From your authenticator, or a recovery code.${hasPasskeys ? ' Not needed with a passkey.' : ''}`
              : 'Not needed with a passkey.'
          }
        />
      )}
      {hasPasskeys && <PasskeyCheck form={form} />}
    </>
  )
}

function PasskeyCheck<TIn extends Confirming, TOut>({ form }: { form: UseFormReturn<TIn, unknown, TOut> }) {
  const { send, isPending, refusal } = useAction(beginPasskeyConfirmation)
  const [problem, setProblem] = useState<string | null>(null)
  const isChecked = form.watch(nameOf<TIn>('passkey')) !== undefined
  const check = () => {
    setProblem(null)
    send({}, async ({ token, options }) => {
      try {
        const response = await startAuthentication({ optionsJSON: options })
        const passkey = { token, response: { ...response } } as unknown as Confirmation['passkey']
        form.setValue(nameOf<TIn>('passkey'), passkey as PathValue<TIn, FieldPath<TIn>>)
      } catch {
        setProblem('No passkey was used. Try again, or enter a code.')
      }
    })
  }
  return (
    <div className="stack">
      <div className="row">
        <Button isPending={isPending} onPress={check}>
          Use a passkey
        </Button>
        {isChecked && <span role="status">Passkey used. It is checked when you submit.</span>}
      </div>
      <FormError refusal={problem === null ? refusal : { kind: 'unsent', message: problem, issues: [] }} />
    </div>
  )
}

/** What confirmed one act must not stand ready for another. */
export function forgetConfirmation<TIn extends Confirming, TOut>(form: UseFormReturn<TIn, unknown, TOut>): void {
  for (const [name, value] of Object.entries(UNCONFIRMED)) {
    form.setValue(nameOf<TIn>(name), value as PathValue<TIn, FieldPath<TIn>>)
  }
}

/** The form's own type knows these fields; the library's paths over a type parameter do not. */
const nameOf = <TIn extends Confirming>(name: string) => name as FieldPath<TIn>
