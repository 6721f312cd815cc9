'use client'

import { Input } from 'react-aria-components/Input'
import { NumberField as AriaNumberField } from 'react-aria-components/NumberField'
import { NUMBER_ENTRY_FORMAT } from '@/lib/engine/units'
import { FieldFrame, type FieldTexts } from './field-frame'

interface NumberFieldProps extends FieldTexts {
  name?: string
  /** Null while nothing is entered: an unknown number is never shown as 0. */
  value: number | null
  onChange: (value: number | null) => void
  onBlur?: () => void
  /** Shown after the input, e.g. `°C`. */
  unit?: string
  isReadOnly?: boolean
  isRequired?: boolean
  step?: number
}

export function NumberField({
  label,
  hint,
  error,
  isOptional,
  unit,
  value,
  onChange,
  step,
  ...rest
}: NumberFieldProps) {
  return (
    <AriaNumberField
      {...rest}
      {...(step === undefined ? {} : { step })}
      value={value ?? Number.NaN}
      onChange={(next) => onChange(Number.isNaN(next) ? null : next)}
      formatOptions={NUMBER_ENTRY_FORMAT}
      isInvalid={error !== undefined}
      validationBehavior="aria"
      className="field"
    >
      <FieldFrame label={label} hint={hint} error={error} isOptional={isOptional ?? false} unit={unit}>
        <Input className="input input-num" />
      </FieldFrame>
    </AriaNumberField>
  )
}
