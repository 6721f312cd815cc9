'use client'

import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { grantCapacityInput } from '@/lib/inputs'
import { grantCapacity } from '../actions'

interface GrantFormProps {
  readonly projectId: string
  readonly people: readonly { readonly userId: string; readonly name: string }[]
  readonly ownUserId: string
}

export function GrantForm({ projectId, people, ownUserId }: GrantFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: grantCapacityInput,
    action: grantCapacity,
    defaultValues: { projectId, userId: '', capacity: '', statement: '' },
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Grant a capacity">
      <FormSelect
        control={form.control}
        name="userId"
        label="Person"
        options={people.map(({ userId, name }) => ({
          value: userId,
          label: userId === ownUserId ? `${name} (you: only where nobody else can grant it)` : name,
        }))}
      />
      <FormText
        control={form.control}
        name="capacity"
        label="Capacity"
        hint="As a signature names it, such as lead engineer."
      />
      <FormTextArea
        control={form.control}
        name="statement"
        label="What the person answers for in it"
        hint="It stands with each signature."
        rows={2}
      />
      <FormFoot refusal={refusal} isPending={isPending} weight="strong" label="Grant" pendingLabel="Saving…" />
    </form>
  )
}
