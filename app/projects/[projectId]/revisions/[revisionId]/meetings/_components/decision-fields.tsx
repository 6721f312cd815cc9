'use client'

import { type UseFormReturn, useFieldArray } from 'react-hook-form'
import type { z } from 'zod'
import { Button } from '@/app/_components/ui/button'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import type { recordMeetingInput } from '@/lib/inputs'
import { ACTION_DUE_WORDS, ACTION_DUES } from '@/lib/review'

type Input = z.input<typeof recordMeetingInput>
type Output = z.output<typeof recordMeetingInput>

interface DecisionFieldsProps {
  readonly form: UseFormReturn<Input, unknown, Output>
  readonly points: readonly { readonly value: string; readonly label: string }[]
  readonly owners: readonly { readonly value: string; readonly label: string }[]
}

const DUES = ACTION_DUES.map((value) => ({ value, label: ACTION_DUE_WORDS[value] }))

/** Decisions of a meeting. One becomes an action, or points at the item or thread that it settles. */
export function DecisionFields({ form, points, owners }: DecisionFieldsProps) {
  const { control } = form
  const { fields, append, remove } = useFieldArray({ control, name: 'decisions' })
  return (
    <fieldset className="stack">
      <legend className="label">Decisions</legend>
      {fields.map((field, index) => (
        <div className="stack" key={field.id}>
          <FormTextArea control={control} name={`decisions.${index}.text`} label={`Decision ${index + 1}`} rows={2} />
          <FormSelect
            control={control}
            name={`decisions.${index}.points`}
            label="Carried out by"
            options={[
              { value: 'none', label: 'nothing further' },
              { value: 'action', label: 'an action that it makes' },
              ...points,
            ]}
          />
          {form.watch(`decisions.${index}.points`) === 'action' && (
            <>
              <FormSelect control={control} name={`decisions.${index}.action.ownerId`} label="Owner" options={owners} />
              <FormSelect control={control} name={`decisions.${index}.action.due`} label="Due" options={DUES} />
              <FormText
                control={control}
                name={`decisions.${index}.action.dueOn`}
                label="Date"
                type="date"
                isOptional
                hint="Blank where no day is known; needed for “by a date”."
              />
            </>
          )}
          <div>
            <Button weight="quiet" aria-label={`Remove decision ${index + 1}`} onPress={() => remove(index)}>
              Remove
            </Button>
          </div>
        </div>
      ))}
      <div>
        <Button weight="quiet" onPress={() => append({ text: '', points: 'none' })}>
          Add a decision
        </Button>
      </div>
    </fieldset>
  )
}
