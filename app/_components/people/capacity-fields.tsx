'use client'

import { type Control, type FieldArrayPath, type FieldPath, type FieldValues, useFieldArray } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormText } from '@/app/_components/ui/form-fields'

/** As many as the schema takes. */
const MAX_CAPACITIES = 5

interface CapacityFieldsProps<TIn extends FieldValues, TOut> {
  readonly control: Control<TIn, unknown, TOut>
  readonly name: FieldArrayPath<TIn>
}

/** In which capacities a revision must be signed, each by a person of its own. */
export function CapacityFields<TIn extends FieldValues, TOut>({ control, name }: CapacityFieldsProps<TIn, TOut>) {
  const { fields, append, remove } = useFieldArray({ control, name })
  return (
    <fieldset className="stack">
      <legend className="label">Capacities in which a revision must be signed</legend>
      {fields.length === 0 && (
        <p className="muted small">None: each signer chooses among the capacities granted to them.</p>
      )}
      {fields.map((field, index) => (
        <div className="row row-end" key={field.id}>
          <FormText
            control={control}
            name={`${name}.${index}.name` as FieldPath<TIn>}
            label={`Capacity ${index + 1}`}
          />
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
              append({ name: fields.length === 0 ? 'lead engineer' : 'quality engineer' } as Parameters<
                typeof append
              >[0])
            }
          >
            Add a capacity
          </Button>
        </div>
      )}
    </fieldset>
  )
}
