'use client'

import { ConfirmFields, UNCONFIRMED } from '@/app/_components/review/confirm-fields'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { reportKeyCompromisedInput, rotateSigningKeyInput } from '@/lib/inputs'
import { reportKeyCompromised, rotateSigningKey } from '../actions'

export function RotateForm({ factor }: { factor: SecondFactorView }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: rotateSigningKeyInput,
    action: rotateSigningKey,
    defaultValues: { reason: '', compromisedOn: '', ...UNCONFIRMED },
    onDone: () => form.reset(),
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Put another key in use">
      <FormTextArea control={form.control} name="reason" label="Reason" rows={2} />
      <FormText
        control={form.control}
        name="compromisedOn"
        type="date"
        isOptional
        label="Compromised since"
        hint="The first day on which somebody else may have had the key in use; leave empty where nobody has."
      />
      <ConfirmFields form={form} factor={factor} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="grave"
        label="Change the key"
        pendingLabel="Changing…"
      />
    </form>
  )
}

interface CompromisedFormProps {
  factor: SecondFactorView
  keys: readonly { readonly fingerprint: string; readonly since: string }[]
}

export function CompromisedForm({ factor, keys }: CompromisedFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: reportKeyCompromisedInput,
    action: reportKeyCompromised,
    defaultValues: { fingerprint: keys.at(-1)?.fingerprint ?? '', compromisedOn: '', reason: '', ...UNCONFIRMED },
    onDone: () => form.reset(),
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Report an earlier key compromised">
      <FormSelect
        control={form.control}
        name="fingerprint"
        label="Key"
        options={keys.map(({ fingerprint, since }) => ({
          value: fingerprint,
          label: `${fingerprint.slice(0, 16)}…, since ${since}`,
        }))}
      />
      <FormText control={form.control} name="compromisedOn" label="Compromised since" type="date" />
      <FormTextArea control={form.control} name="reason" label="What is known" rows={2} />
      <ConfirmFields form={form} factor={factor} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="grave"
        label="Report compromised"
        pendingLabel="Reporting…"
      />
    </form>
  )
}
