'use client'

import { useRouter } from 'next/navigation'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Button, LinkButton } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { acceptInvitationInput } from '@/lib/inputs'
import { acceptInvitation, joinByInvitation } from '../actions'

/** For somebody without an account: makes one. */
export function AcceptForm({ token, email, landing }: { token: string; email: string | null; landing: string }) {
  const router = useRouter()
  const { form, submit, isPending, refusal } = useActionForm({
    schema: acceptInvitationInput,
    action: acceptInvitation,
    defaultValues: { token, name: '', email: email ?? '', password: '' },
    onDone: () => router.push(landing),
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormText control={form.control} name="name" label="Your name" autoComplete="name" />
      <FormText
        control={form.control}
        name="email"
        label="Your e-mail address"
        type="email"
        autoComplete="email"
        isReadOnly={email !== null}
      />
      <FormText
        control={form.control}
        name="password"
        label="Choose a password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters; length matters more than symbols."
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Joining…">
          Join
        </Button>
        <LinkButton href={paths.signIn(paths.invitation(token))} weight="quiet">
          I have an account here already
        </LinkButton>
      </div>
    </form>
  )
}

/** For somebody who is signed in: joins with the account that they have. */
export function JoinForm({ token, name, landing }: { token: string; name: string; landing: string }) {
  const router = useRouter()
  return (
    <div className="stack">
      <p>You are signed in as {name} and join with this account.</p>
      <ActionButton
        action={joinByInvitation}
        input={{ token }}
        weight="strong"
        pendingLabel="Joining…"
        onDone={() => router.push(landing)}
      >
        Join
      </ActionButton>
    </div>
  )
}
