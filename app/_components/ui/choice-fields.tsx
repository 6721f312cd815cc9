'use client'

import type { ReactNode } from 'react'
import { Checkbox } from 'react-aria-components/Checkbox'
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup'
import { FieldFrame, type FieldTexts } from './field-frame'
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
      <FieldFrame label={label} hint={hint} error={error}>
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
      </FieldFrame>
    </RadioGroup>
  )
}
