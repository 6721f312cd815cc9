'use client'

import { useController } from 'react-hook-form'
import { Cautions } from '@/app/_components/ui/cautions'
import { RadioField } from '@/app/_components/ui/choice-fields'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { declarationInput } from '@/lib/inputs'
import { declareBuildable } from './actions'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'

interface DeclarationFormProps {
  readonly revisionId: string
  readonly version: number
  readonly factor: SecondFactorView
}

/** The fabricator's word on the content as it stands. A later edit leaves the word readable, and makes it count no longer. */
export function DeclarationForm({ revisionId, version, factor }: DeclarationFormProps) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: declarationInput,
    action: declareBuildable,
    // Nothing is chosen beforehand: the word is the fabricator's.
    defaultValues: { revisionId, seenVersion: version, isBuildable: undefined, note: '', ...UNCONFIRMED },
    onDone: () => forgetConfirmation(form),
  })
  const { field, fieldState } = useController({ control: form.control, name: 'isBuildable' })
  return (
    <form className="form" onSubmit={submit}>
      <RadioField
        label="With our process, this revision is"
        name={field.name}
        value={field.value === undefined ? null : field.value ? 'yes' : 'no'}
        onChange={(value) => field.onChange(value === 'yes')}
        error={fieldState.error?.message}
        options={[
          { value: 'yes', label: 'buildable as it stands' },
          { value: 'no', label: 'not buildable as it stands' },
        ]}
      />
      <FormTextArea
        control={form.control}
        name="note"
        label="Conditions or reasons"
        hint="Required if it cannot be built: state the reason."
        rows={3}
      />
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
