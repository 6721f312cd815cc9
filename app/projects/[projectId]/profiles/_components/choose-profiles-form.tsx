'use client'

import { Controller } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { chooseProfilesInput } from '@/lib/inputs'
import { chooseProfiles } from '../actions'

interface ChooseProfilesFormProps {
  readonly projectId: string
  readonly version: number
  readonly followedIds: readonly string[]
  readonly choices: readonly { readonly id: string; readonly name: string; readonly purpose: string }[]
}

/** One tick for each profile that there is, and the reason of the choice. */
export function ChooseProfilesForm({ projectId, version, followedIds, choices }: ChooseProfilesFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: chooseProfilesInput,
    action: chooseProfiles,
    defaultValues: { projectId, seenVersion: version, profileIds: [...followedIds], reason: '' },
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Profiles of the project">
      <Controller
        control={form.control}
        name="profileIds"
        render={({ field }) => (
          <fieldset className="field">
            <legend className="field-label">Profiles to follow</legend>
            {choices.map(({ id, name, purpose }) => (
              <CheckboxField
                key={id}
                isSelected={field.value.includes(id)}
                onChange={(isSelected) =>
                  field.onChange(isSelected ? [...field.value, id] : field.value.filter((other) => other !== id))
                }
              >
                {name} <span className="field-hint">{purpose}</span>
              </CheckboxField>
            ))}
          </fieldset>
        )}
      />
      <FormText control={form.control} name="reason" label="Why these" />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Saving…">
          Save the choice
        </Button>
      </div>
    </form>
  )
}
