'use client'

import { type ReactNode, useState } from 'react'
import type { Control, DefaultValues, FieldPath, FieldValues } from 'react-hook-form'
import type { z } from 'zod'
import type { Action } from '@/app/_components/ui/action-result'
import { Button } from '@/app/_components/ui/button'
import { FormRadio, FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import type { Option } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'

interface InvitationFormProps<TIn extends FieldValues, TOut, TValue> {
  readonly schema: z.ZodType<TOut, TIn>
  readonly action: Action<TValue>
  readonly defaultValues: DefaultValues<TIn>
  readonly roles: readonly (Option<string> & { readonly note: string })[]
  /** Fields of this invitation alone, by the role that is chosen. */
  readonly renderMore: (control: Control<TIn, unknown, TOut>, role: string) => ReactNode
  /** What came of it: the link, or who was asked. */
  readonly renderDone: (created: TValue) => ReactNode
  /** Round the form, while nothing was created yet. */
  readonly renderFrame?: (form: ReactNode) => ReactNode
}

/** Invites one person, to a project or to a company: the role, what it needs, and an address where one is known. */
export function InvitationForm<TIn extends FieldValues, TOut, TValue>({
  schema,
  action,
  defaultValues,
  roles,
  renderMore,
  renderDone,
  renderFrame = (form) => form,
}: InvitationFormProps<TIn, TOut, TValue>) {
  const [created, setCreated] = useState<TValue | null>(null)
  const { form, submit, isPending, refusal } = useActionForm({ schema, action, defaultValues, onDone: setCreated })
  // Both schemas have these two; a type parameter cannot say so.
  const role = 'role' as FieldPath<TIn>
  const email = 'email' as FieldPath<TIn>
  if (created !== null) {
    return (
      <div className="stack">
        {renderDone(created)}
        <div className="row">
          <Button
            onPress={() => {
              form.reset()
              setCreated(null)
            }}
          >
            Invite another
          </Button>
        </div>
      </div>
    )
  }
  return renderFrame(
    <form className="form" onSubmit={submit}>
      <FormRadio control={form.control} name={role} label="Joins as" options={roles} />
      {renderMore(form.control, form.watch(role))}
      <FormText
        control={form.control}
        name={email}
        label="E-mail address"
        type="email"
        isOptional
        hint="When given, only an account with this address can use the link."
      />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Create link"
        pendingLabel="Creating the link…"
      />
    </form>,
  )
}
