'use client'

import { CapacityFields } from '@/app/_components/people/capacity-fields'
import { FormCheckbox, FormNumber, FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SettingsView } from '@/lib/data'
import { settingsInput } from '@/lib/inputs'
import { changeSettings } from '../actions'

export function SettingsForm({ settings }: { settings: SettingsView }) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: settingsInput,
    action: changeSettings,
    defaultValues: {
      seenVersion: settings.version,
      workspaceName: settings.workspaceName,
      artworkRequired: settings.artworkRequired,
      requiredSignatures: settings.requiredSignatures,
      signingCapacities: [...settings.signingCapacities],
      invitationDays: settings.invitationDays,
    },
  })
  const { control } = form
  return (
    <form className="form" onSubmit={submit}>
      <FormText control={control} name="workspaceName" label="Name of the workspace" />
      <FormCheckbox control={control} name="artworkRequired">
        A release needs at least one artwork file
      </FormCheckbox>
      <FormNumber
        control={control}
        name="requiredSignatures"
        label="Minimum number of people who must sign"
        hint="Holds for new revisions of projects that have no sign-off policy of their own, as do the capacities."
      />
      <CapacityFields control={control} name="signingCapacities" />
      <FormNumber control={control} name="invitationDays" label="Invitations are valid for" unit="days" />
      <FormFoot refusal={refusal} isPending={isPending} label="Save" pendingLabel="Saving…" done={isDone && 'Saved.'} />
    </form>
  )
}
