'use client'

import { zodResolver } from '@hookform/resolvers/zod'
import Link from 'next/link'
import { signIn } from 'next-auth/react'
import { useState } from 'react'
import { useForm } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { signInInput } from '@/lib/inputs'
import { CodeForm } from './code-form'
import { PasskeyButton } from './passkey-button'
import { useSignIn } from './use-sign-in'

interface SignInFormProps {
  next: string
  /** People of the demonstration; empty in a real workspace, and wherever other machines reach the server. */
  demoAccounts: readonly { readonly name: string; readonly email: string; readonly sentence: string }[]
  arePasskeysPossible: boolean
  /** Of the sign-in provider; null without one. */
  providerName: string | null
  /** The first step was done elsewhere, at the provider. */
  startsAtCode: boolean
}

export function SignInForm({ next, demoAccounts, arePasskeysPossible, providerName, startsAtCode }: SignInFormProps) {
  const [isAtCode, setIsAtCode] = useState(startsAtCode)
  const form = useForm({ resolver: zodResolver(signInInput), defaultValues: { email: '', password: '' } })
  const { send, isPending, refusal } = useSignIn(next, 'No account has this address with this password.', () =>
    setIsAtCode(true),
  )
  if (isAtCode) return <CodeForm next={next} arePasskeysPossible={arePasskeysPossible} />
  return (
    <>
      <form className="form" onSubmit={form.handleSubmit((values) => send('credentials', values))}>
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
          <Link href={paths.forgotPassword()}>Forgot your password?</Link>
        </div>
      </form>
      {(arePasskeysPossible || providerName !== null) && (
        <div className="row above-wide">
          {arePasskeysPossible && <PasskeyButton next={next} />}
          {providerName !== null && (
            <Button onPress={() => signIn('oidc', { callbackUrl: next })}>Sign in with {providerName}</Button>
          )}
        </div>
      )}
      {demoAccounts.length > 0 && (
        <PageSection title="Demonstration">
          <p className="muted">
            This installation holds invented demonstration data and can be reached from this machine only. Choose a
            person to fill in the address; the password is printed where the application was started.
          </p>
          <ul className="plain-list above">
            {demoAccounts.map((account) => (
              <li key={account.email} className="row">
                <Button
                  weight="quiet"
                  onPress={() => {
                    form.setValue('email', account.email)
                    form.setFocus('password')
                  }}
                >
                  {account.name}
                </Button>
                <span className="muted small">{account.sentence}</span>
              </li>
            ))}
          </ul>
        </PageSection>
      )}
    </>
  )
}
