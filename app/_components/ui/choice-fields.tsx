'use client'

import type { ReactNode } from 'react'
import { Checkbox } from 'react-aria-components/Checkbox'
import { FieldError } from 'react-aria-components/FieldError'
import { Label } from 'react-aria-components/Label'
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup'
import { Text } from 'react-aria-components/Text'
import type { FieldTexts } from './field-frame'
import type { Option } from './select-field'

interface CheckboxFieldProps {
  name?: string
  isSelected: boolean
  onChange: (isSelected: boolean) => void
  isDisabled?: boolean
  children: ReactNode
}

export function CheckboxField({ children, ...rest }: CheckboxFieldProps) {
  return (
    <Checkbox {...rest} className="tick">
      <span className="tick-box" aria-hidden="true">
        <span />
      </span>
      <span>{children}</span>
    </Checkbox>
  )
}

interface RadioFieldProps<T extends string> extends FieldTexts {
  name?: string
  value: T | null
  onChange: (value: T) => void
  options: readonly (Option<T> & { note?: string; isDisabled?: boolean })[]
  isDisabled?: boolean
}

export function RadioField<T extends string>({
  label,
  hint,
  error,
  value,
  onChange,
  options,
  ...rest
}: Omit<RadioFieldProps<T>, 'isOptional'>) {
  return (
    <RadioGroup
      {...rest}
      value={value}
      onChange={(next) => {
        const chosen = options.find((option) => option.value === next)
        if (chosen !== undefined) onChange(chosen.value)
      }}
      isInvalid={error !== undefined}
      validationBehavior="aria"
      className="field"
    >
      <Label className="field-label">{label}</Label>
      {options.map((option) => (
        <Radio key={option.value} value={option.value} isDisabled={option.isDisabled ?? false} className="tick">
          <span className="tick-box" data-round aria-hidden="true">
            <span />
          </span>
          <span>
            {option.label}
            {option.note !== undefined && <span className="field-hint"> {option.note}</span>}
          </span>
        </Radio>
      ))}
      {hint !== undefined && (
        <Text slot="description" className="field-hint">
          {hint}
        </Text>
      )}
      <FieldError className="field-error">{error}</FieldError>
    </RadioGroup>
  )
}
