'use client'

import { CapacityFields } from '@/app/_components/people/capacity-fields'
import { FormNumber, FormRadio, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { setSignOffPolicyInput } from '@/lib/inputs'
import { SIGN_OFF_RULE_KEYS, SIGN_OFF_RULES, type SignOffPolicy } from '@/lib/review'
import { setSignOffPolicy } from '../actions'

interface PolicyFormProps {
  readonly projectId: string
  readonly version: number
  readonly rules: SignOffPolicy
}

/** A choice for each rule of the table, strictest first, and the reason. */
export function PolicyForm({ projectId, version, rules }: PolicyFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: setSignOffPolicyInput,
    action: setSignOffPolicy,
    defaultValues: {
      projectId,
      seenVersion: version,
      ...rules,
      requiredCapacities: rules.requiredCapacities.map((name) => ({ name })),
      reason: '',
    },
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Sign-off policy of the project">
      {SIGN_OFF_RULE_KEYS.map((key) => {
        const { label, choices, usual } = SIGN_OFF_RULES[key]
        return (
          <FormRadio
            key={key}
            control={form.control}
            name={key}
            label={label}
            options={choices.map(({ value, words }) => ({
              value,
              label: value === usual ? `${words} (usual)` : words,
            }))}
          />
        )
      })}
      <FormNumber control={form.control} name="requiredSignatures" label="Minimum number of people who must sign" />
      <CapacityFields control={form.control} name="requiredCapacities" />
      <FormTextArea
        control={form.control}
        name="reason"
        label="Reason"
        hint="It is recorded in the trail of the project and of each open revision."
        rows={2}
      />
      <FormFoot refusal={refusal} isPending={isPending} weight="strong" label="Save" pendingLabel="Saving…" />
    </form>
  )
}
