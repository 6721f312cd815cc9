'use client'

import { type Control, useFieldArray } from 'react-hook-form'
import type { z } from 'zod'
import { Button } from '@/app/_components/ui/button'
import { FormSelect, FormText } from '@/app/_components/ui/form-fields'
import type { settingsInput } from '@/lib/inputs'

type SettingsFields = z.input<typeof settingsInput>

const SIGNERS = [
  { value: 'lead', label: 'a lead engineer' },
  { value: 'member', label: 'a member or lead engineer' },
] as const

/** As many as the schema takes. */
const MAX_CAPACITIES = 5

/** In which capacities a revision must be signed, each by a person of its own. */
export function CapacityFields({
  control,
}: {
  control: Control<SettingsFields, unknown, z.output<typeof settingsInput>>
}) {
  const { fields, append, remove } = useFieldArray({ control, name: 'signingCapacities' })
  return (
    <fieldset className="stack">
      <legend className="label">Capacities in which a revision must be signed</legend>
      {fields.length === 0 && (
        <p className="muted small">None: a lead engineer states their own capacity when signing.</p>
      )}
      {fields.map((field, index) => (
        <div className="row row-end" key={field.id}>
          <FormText control={control} name={`signingCapacities.${index}.name`} label={`Capacity ${index + 1}`} />
          <FormSelect control={control} name={`signingCapacities.${index}.role`} label="Signed by" options={SIGNERS} />
          <Button weight="quiet" aria-label={`Remove capacity ${index + 1}`} onPress={() => remove(index)}>
            Remove
          </Button>
        </div>
      ))}
      {fields.length < MAX_CAPACITIES && (
        <div>
          <Button
            weight="quiet"
            onPress={() =>
              append(
                fields.length === 0
                  ? { name: 'lead engineer', role: 'lead' }
                  : { name: 'quality engineer', role: 'member' },
              )
            }
          >
            Add a capacity
          </Button>
        </div>
      )}
    </fieldset>
  )
}
