'use client'

import { zodResolver } from '@hookform/resolvers/zod'
import { signIn } from 'next-auth/react'
import { useState, useTransition } from 'react'
import { useForm } from 'react-hook-form'
import type { Refusal } from '@/app/_components/ui/action-result'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { Section } from '@/app/_components/ui/section'
import { signInInput } from '@/lib/inputs'

interface SignInFormProps {
  next: string
  /** People of the demonstration; empty in a real workspace, and wherever other machines reach the server. */
  demoAccounts: readonly { readonly name: string; readonly email: string; readonly sentence: string }[]
}

/** Signing in goes through the session library's own route, so it is the one form without an action of ours. */
export function SignInForm({ next, demoAccounts }: SignInFormProps) {
  const form = useForm({ resolver: zodResolver(signInInput), defaultValues: { email: '', password: '' } })
  const [isPending, startTransition] = useTransition()
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const submit = form.handleSubmit((values) => {
    setRefusal(null)
    startTransition(async () => {
      try {
        const answer = await signIn('credentials', { ...values, redirect: false })
        if (answer?.ok === true) {
          // A full load: nothing that was rendered for a visitor stays in the page.
          window.location.assign(next)
          return
        }
        setRefusal({ kind: 'unsent', message: explain(answer?.error), issues: [] })
      } catch {
        setRefusal({ kind: 'unsent', message: 'The server did not answer. Try again.', issues: [] })
      }
    })
  })
  return (
    <>
      <form className="form" onSubmit={submit}>
        <FormText
          control={form.control}
          name="email"
          label="E-mail address"
          type="email"
          autoComplete="username"
          autoFocus
        />
        <FormText
          control={form.control}
          name="password"
          label="Password"
          type="password"
          autoComplete="current-password"
        />
        <FormError refusal={refusal} />
        <div className="row">
          <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Signing in…">
            Sign in
          </Button>
        </div>
      </form>
      {demoAccounts.length > 0 && (
        <Section title="Demonstration">
          <p className="muted">
            This installation holds invented demonstration data and answers on this machine only. Choose a person to
            fill in the address; the password is printed where the application was started.
          </p>
          <ul className="plain-list mt-2">
            {demoAccounts.map((account) => (
              <li key={account.email}>
                <Button
                  weight="quiet"
                  onPress={() => {
                    form.setValue('email', account.email)
                    form.setFocus('password')
                  }}
                >
                  {account.name}
                </Button>{' '}
                <span className="muted small">{account.sentence}</span>
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  )
}

/** The session library names its own refusal with one word; anything else is a sentence of ours. */
function explain(error: string | null | undefined): string {
  if (error === null || error === undefined || error === 'CredentialsSignin') {
    return 'No account has this address with this password.'
  }
  return error
}
