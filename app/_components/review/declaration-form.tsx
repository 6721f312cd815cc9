'use client'

import { type Control, useFieldArray, useWatch } from 'react-hook-form'
import type { z } from 'zod'
import { Button } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { FormRadio, FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { declarationInput } from '@/lib/inputs'
import { type ConditionField, DECLARATION_VERDICTS, type DeclarationVerdict } from '@/lib/review'
import { declareBuildable } from './actions'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'

const OPTIONS: Readonly<Record<DeclarationVerdict, string>> = {
  buildable: 'buildable as it stands',
  'with-conditions': 'buildable with conditions',
  'not-buildable': 'not buildable as it stands',
}

type Fields = z.input<typeof declarationInput>
type FieldControl = Control<Fields, unknown, z.output<typeof declarationInput>>

interface DeclarationFormProps {
  revisionId: string
  version: number
  factor: SecondFactorView
  /** Fields of the design that a condition can name. */
  fields: readonly ConditionField[]
}

/** The fabricator's word on the content as it stands. A later edit leaves the word readable, and makes it count no longer. */
export function DeclarationForm({ revisionId, version, factor, fields }: DeclarationFormProps) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: declarationInput,
    action: declareBuildable,
    // Nothing is chosen beforehand: the word is the fabricator's.
    defaultValues: {
      revisionId,
      seenVersion: version,
      verdict: undefined,
      note: '',
      conditions: [],
      ...UNCONFIRMED,
    },
    onDone: () => forgetConfirmation(form),
  })
  const verdict = useWatch({ control: form.control, name: 'verdict' })
  return (
    <form className="form" onSubmit={submit}>
      <FormRadio
        control={form.control}
        name="verdict"
        label="With our process, this revision is"
        options={DECLARATION_VERDICTS.map((value) => ({ value, label: OPTIONS[value] }))}
      />
      {verdict === 'with-conditions' && <Conditions control={form.control} fields={fields} />}
      {verdict === 'not-buildable' && (
        <FormTextArea control={form.control} name="note" label="What cannot be built, and why" rows={3} />
      )}
      <Meaning of="declare" />
      <ConfirmFields form={form} factor={factor} />
      <Cautions />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Declare"
        pendingLabel="Declaring…"
        done={isDone && 'Declared.'}
      />
    </form>
  )
}

const MAX_CONDITIONS = 30

/** Each condition is a line of its own: the lead decides on each. */
function Conditions({ control, fields: known }: { control: FieldControl; fields: readonly ConditionField[] }) {
  const { fields, append, remove } = useFieldArray({ control, name: 'conditions' })
  const options = [{ value: '', label: 'none' }, ...known.map(({ path, label }) => ({ value: path, label }))]
  return (
    <fieldset className="stack">
      <legend className="label">Conditions</legend>
      {fields.length === 0 && <p className="muted small">State each condition on a line of its own.</p>}
      {fields.map((field, index) => (
        <div className="stack" key={field.id}>
          <FormTextArea control={control} name={`conditions.${index}.text`} label={`Condition ${index + 1}`} rows={2} />
          <div className="row row-end">
            <FormSelect
              control={control}
              name={`conditions.${index}.field`}
              label="Field"
              isOptional
              placeholder="none"
              options={options}
            />
            <FormText control={control} name={`conditions.${index}.value`} label="Value" isOptional />
            <Button weight="quiet" aria-label={`Remove condition ${index + 1}`} onPress={() => remove(index)}>
              Remove
            </Button>
          </div>
        </div>
      ))}
      {fields.length < MAX_CONDITIONS && (
        <div>
          <Button weight="quiet" onPress={() => append({ text: '', field: '', value: '' })}>
            Add a condition
          </Button>
        </div>
      )}
    </fieldset>
  )
}
