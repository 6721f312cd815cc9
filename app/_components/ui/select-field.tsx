'use client'

import { Button } from 'react-aria-components/Button'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'
import { Select, SelectValue } from 'react-aria-components/Select'
import { FieldFrame, type FieldTexts } from './field-frame'

export interface Option<T extends string> {
  value: T
  label: string
}

interface SelectFieldProps<T extends string> extends FieldTexts {
  name?: string
  value: T | null
  onChange: (value: T) => void
  options: readonly Option<T>[]
  placeholder?: string
  isDisabled?: boolean
}

export function SelectField<T extends string>({
  label,
  hint,
  error,
  isOptional,
  isLabelHidden,
  value,
  onChange,
  options,
  placeholder = 'Choose…',
  ...rest
}: SelectFieldProps<T>) {
  return (
    <Select
      {...rest}
      value={value}
      onChange={(key) => {
        const chosen = options.find((option) => option.value === key)
        if (chosen !== undefined) onChange(chosen.value)
      }}
      placeholder={placeholder}
      isInvalid={error !== undefined}
      validationBehavior="aria"
      className="field"
    >
      <FieldFrame
        label={label}
        hint={hint}
        error={error}
        isOptional={isOptional ?? false}
        isLabelHidden={isLabelHidden ?? false}
      >
        <Button className="input select-trigger">
          <SelectValue />
          <span aria-hidden="true" className="muted">
            ▾
          </span>
        </Button>
        <Popover className="popup">
          <ListBox items={options}>
            {(option) => (
              <ListBoxItem id={option.value} className="popup-item" textValue={option.label}>
                {option.label}
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </FieldFrame>
    </Select>
  )
}
