'use client'

import { useController, useFieldArray, useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormCheckbox, FormNumber, FormSelect, FormText } from '@/app/_components/ui/form-fields'
import { SelectField } from '@/app/_components/ui/select-field'
import { findFieldPattern, listFieldPatterns } from '@/lib/engine'
import { DECIDED_WHEN_WORDS, isLimitKey, LIMIT_KEYS, LIMITS } from '@/lib/engine/catalogue'
import { getUnitSymbol } from '@/lib/engine/units'
import type { ProfileControl } from './controls'
import { KindSelect } from './kind-select'

const UNCHANGED = { value: 'unchanged', label: 'as in the catalogue' } as const
const ASKED = [UNCHANGED, { value: 'on', label: 'asked' }, { value: 'off', label: 'not asked' }]
const SEVERITY = [UNCHANGED, ...['blocking', 'major', 'minor', 'advice'].map((value) => ({ value, label: value }))]
const STAGE = [UNCHANGED, ...Object.entries(DECIDED_WHEN_WORDS).map(([value, label]) => ({ value, label }))]
const LIMIT_OPTIONS = LIMIT_KEYS.map((key) => ({ value: key as string, label: LIMITS[key].label }))
const FIELD_OPTIONS = listFieldPatterns().map(({ pattern, label }) => ({ value: pattern, label }))

interface RowsProps {
  readonly control: ProfileControl
  readonly questions: Readonly<Record<string, string>>
}

/** Items, limits and required fields of a profile, a row each. */
export function ProfileRows({ control, questions }: RowsProps) {
  const items = useFieldArray({ control, name: 'profile.items' })
  const limits = useFieldArray({ control, name: 'profile.limits' })
  const required = useFieldArray({ control, name: 'profile.requiredFields' })
  const itemOptions = Object.entries(questions).map(([value, label]) => ({ value, label }))
  return (
    <>
      <fieldset className="stack">
        <legend className="label">Items</legend>
        {items.fields.map(({ id }, index) => (
          <div className="form-grid" key={id}>
            <FormSelect control={control} name={`profile.items.${index}.itemId`} label="Item" options={itemOptions} />
            <NullableSelect control={control} name={`profile.items.${index}.asked`} label="Asked" options={ASKED} />
            <NullableSelect
              control={control}
              name={`profile.items.${index}.severity`}
              label="Severity"
              options={SEVERITY}
            />
            <NullableSelect
              control={control}
              name={`profile.items.${index}.decidedWhen`}
              label="Decided in"
              options={STAGE}
            />
            <FormText control={control} name={`profile.items.${index}.reason`} label="Why" />
            <FormCheckbox control={control} name={`profile.items.${index}.isForEveryDesign`}>
              For every design
            </FormCheckbox>
            <RemoveRow what={`item ${index + 1}`} onPress={() => items.remove(index)} />
          </div>
        ))}
        <AddRow
          label="Add an item to the profile"
          onPress={() =>
            items.append({
              itemId: itemOptions[0]?.value ?? '',
              asked: 'on',
              severity: null,
              decidedWhen: null,
              isForEveryDesign: false,
              reason: '',
            })
          }
        />
      </fieldset>
      <fieldset className="stack">
        <legend className="label">Limits</legend>
        {limits.fields.map(({ id }, index) => (
          <LimitRow key={id} control={control} index={index} onRemove={() => limits.remove(index)} />
        ))}
        <AddRow
          label="Add a limit"
          onPress={() => {
            const [key] = LIMIT_KEYS
            if (key === undefined) return
            limits.append({ key, value: LIMITS[key].value, isRelaxed: false, sourceKey: 'workspaceRule', note: '' })
          }}
        />
      </fieldset>
      <fieldset className="stack">
        <legend className="label">Required fields</legend>
        {required.fields.map(({ id }, index) => (
          <RequiredRow key={id} control={control} index={index} onRemove={() => required.remove(index)} />
        ))}
        <AddRow
          label="Add a required field"
          onPress={() => required.append({ field: FIELD_OPTIONS[0]?.value ?? '', where: null, reason: '' })}
        />
      </fieldset>
    </>
  )
}

interface RowProps {
  readonly control: ProfileControl
  readonly index: number
  readonly onRemove: () => void
}

function LimitRow({ control, index, onRemove }: RowProps) {
  const key = useWatch({ control, name: `profile.limits.${index}.key` })
  const definition = typeof key === 'string' && isLimitKey(key) ? LIMITS[key] : undefined
  return (
    <div className="form-grid">
      <FormSelect control={control} name={`profile.limits.${index}.key`} label="Limit" options={LIMIT_OPTIONS} />
      <FormNumber
        control={control}
        name={`profile.limits.${index}.value`}
        label={definition?.sense === 'at-most' ? 'At most' : 'At least'}
        {...(definition === undefined ? {} : { unit: getUnitSymbol(definition.unit) })}
      />
      <FormText control={control} name={`profile.limits.${index}.note`} label="Where it comes from" />
      <FormCheckbox control={control} name={`profile.limits.${index}.isRelaxed`}>
        Laxer than the delivered limit on purpose
      </FormCheckbox>
      <RemoveRow what={`limit ${index + 1}`} onPress={onRemove} />
    </div>
  )
}

function RequiredRow({ control, index, onRemove }: RowProps) {
  const field = useWatch({ control, name: `profile.requiredFields.${index}.field` })
  const pattern = typeof field === 'string' && findFieldPattern(field) !== null ? field : ''
  return (
    <div className="form-grid">
      <FormSelect
        control={control}
        name={`profile.requiredFields.${index}.field`}
        label="Field"
        options={FIELD_OPTIONS}
      />
      <KindSelect control={control} name={`profile.requiredFields.${index}.where`} pattern={pattern} />
      <FormText control={control} name={`profile.requiredFields.${index}.reason`} label="Why" />
      <RemoveRow what={`required field ${index + 1}`} onPress={onRemove} />
    </div>
  )
}

interface NullableSelectProps {
  readonly control: ProfileControl
  readonly name:
    | `profile.items.${number}.asked`
    | `profile.items.${number}.severity`
    | `profile.items.${number}.decidedWhen`
  readonly label: string
  readonly options: readonly { readonly value: string; readonly label: string }[]
}

/** A choice of which one is to leave things as they are. */
function NullableSelect({ control, name, label, options }: NullableSelectProps) {
  const { field, fieldState } = useController({ control, name })
  return (
    <SelectField
      label={label}
      options={options}
      value={field.value ?? UNCHANGED.value}
      onChange={(value) => field.onChange(value === UNCHANGED.value ? null : value)}
      error={fieldState.error?.message}
    />
  )
}

function RemoveRow({ what, onPress }: { what: string; onPress: () => void }) {
  return (
    <Button weight="quiet" aria-label={`Remove ${what}`} onPress={onPress}>
      Remove
    </Button>
  )
}

function AddRow({ label, onPress }: { label: string; onPress: () => void }) {
  return (
    <div className="row">
      <Button weight="quiet" onPress={onPress}>
        {label}
      </Button>
    </div>
  )
}
