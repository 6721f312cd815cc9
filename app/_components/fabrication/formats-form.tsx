'use client'

import { type Control, useController, useFieldArray } from 'react-hook-form'
import type { z } from 'zod'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { FormError } from '@/app/_components/ui/form-error'
import { FormNumber, FormText } from '@/app/_components/ui/form-fields'
import { Notice } from '@/app/_components/ui/notices'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { type PanelFormatsContent, panelFormatsContentSchema } from '@/lib/fabrication/panel'
import { saveSheetInput } from '@/lib/inputs'
import { saveSheet } from './actions'
import { FOIL_WORDS } from './format-words'

const formSchema = saveSheetInput.extend({ content: panelFormatsContentSchema })
type FormInput = z.input<typeof formSchema>
type FormOutput = z.output<typeof formSchema>
type FormControl = Control<FormInput, unknown, FormOutput>

const TURNS = [0, 90, 180, 270] as const
const NOT_STATED = 'not-stated'

interface FormatsFormProps {
  readonly companyId: string
  readonly seenVersion: number
  readonly content: PanelFormatsContent
  /** The day that the new version bears unless the person says otherwise. */
  readonly today: string
}

/** A fabricator's panel formats: one block of fields each, saved together as a new version of the sheet. */
export function FormatsForm({ companyId, seenVersion, content, today }: FormatsFormProps) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: formSchema,
    action: saveSheet,
    defaultValues: { companyId, kind: 'panel-formats', seenVersion, issuedOn: today, note: '', content },
  })
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'content.formats' })
  const add = () => {
    const taken = new Set(form.getValues('content.formats').map(({ id }) => id))
    let number = fields.length + 1
    while (taken.has(`format-${number}`)) number += 1
    append({
      id: `format-${number}`,
      name: `Format ${number}`,
      widthMm: 457.2,
      heightMm: 609.6,
      marginLeftMm: 20,
      marginRightMm: 20,
      marginTopMm: 20,
      marginBottomMm: 20,
      spacingMm: 2.5,
      allowedRotationsDeg: [0, 90, 180, 270],
      foilRollingDirection: null,
      note: '',
    })
  }
  return (
    <form className="stack" onSubmit={submit}>
      {fields.length === 0 && <p className="empty">No panel format yet: parts cannot be placed on panels.</p>}
      {fields.map((field, index) => (
        <FormatFields key={field.id} control={form.control} index={index} onRemove={() => remove(index)} />
      ))}
      <div className="row">
        <Button onPress={add} isDisabled={fields.length >= 12}>
          Add a panel format
        </Button>
      </div>
      <div className="form-grid">
        <FormText control={form.control} name="issuedOn" label="Date of issue" type="date" />
        <FormText control={form.control} name="note" label="Note on this version" isOptional />
      </div>
      <FormError refusal={refusal} />
      {isDone && (
        <Notice tone="done" role="status">
          Saved as a new version.
        </Notice>
      )}
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending}>
          Save as a new version
        </Button>
      </div>
    </form>
  )
}

function FormatFields({ control, index, onRemove }: { control: FormControl; index: number; onRemove: () => void }) {
  const { field: name } = useController({ control, name: `content.formats.${index}.name` })
  const at = <K extends string>(key: K) => `content.formats.${index}.${key}` as const
  return (
    <fieldset className="sheet-block">
      <legend>{name.value === '' ? `Format ${index + 1}` : name.value}</legend>
      <div className="form-grid">
        <FormText control={control} name={at('name')} label="Name" />
        <FormNumber control={control} name={at('widthMm')} label="Width" unit="mm" />
        <FormNumber control={control} name={at('heightMm')} label="Height" unit="mm" />
        <FormNumber control={control} name={at('spacingMm')} label="Spacing between parts" unit="mm" />
        <FormNumber control={control} name={at('marginLeftMm')} label="Margin left" unit="mm" />
        <FormNumber control={control} name={at('marginRightMm')} label="Margin right" unit="mm" />
        <FormNumber control={control} name={at('marginTopMm')} label="Margin top" unit="mm" />
        <FormNumber control={control} name={at('marginBottomMm')} label="Margin bottom" unit="mm" />
        <TurnsField control={control} index={index} />
        <FoilField control={control} index={index} />
        <FormText control={control} name={at('note')} label="Note" isOptional />
      </div>
      <div className="row">
        <Button weight="quiet" onPress={onRemove} aria-label={`Remove ${name.value || `format ${index + 1}`}`}>
          Remove
        </Button>
      </div>
    </fieldset>
  )
}

function TurnsField({ control, index }: { control: FormControl; index: number }) {
  const { field, fieldState } = useController({ control, name: `content.formats.${index}.allowedRotationsDeg` })
  return (
    <fieldset className="field turns">
      <legend className="field-label">Allowed rotations of the part</legend>
      <div className="row">
        {TURNS.map((turn) => (
          <CheckboxField
            key={turn}
            isSelected={field.value.includes(turn)}
            onChange={(isAllowed) =>
              field.onChange(TURNS.filter((each) => (each === turn ? isAllowed : field.value.includes(each))))
            }
          >
            {turn}°
          </CheckboxField>
        ))}
      </div>
      {fieldState.error !== undefined && (
        <span className="field-error" role="alert">
          {fieldState.error.message}
        </span>
      )}
    </fieldset>
  )
}

function FoilField({ control, index }: { control: FormControl; index: number }) {
  const { field, fieldState } = useController({ control, name: `content.formats.${index}.foilRollingDirection` })
  return (
    <SelectField
      label="Foil direction"
      value={field.value ?? NOT_STATED}
      onChange={(value) => field.onChange(value === NOT_STATED ? null : value)}
      options={[
        { value: NOT_STATED, label: 'not stated' },
        { value: 'along-width', label: FOIL_WORDS['along-width'] },
        { value: 'along-height', label: FOIL_WORDS['along-height'] },
      ]}
      error={fieldState.error?.message}
    />
  )
}
