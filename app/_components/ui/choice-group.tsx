'use client'

import { ToggleButton } from 'react-aria-components/ToggleButton'
import { ToggleButtonGroup } from 'react-aria-components/ToggleButtonGroup'
import type { Option } from './select-field'

interface ChoiceGroupProps<T extends string> {
  label: string
  options: readonly Option<T>[]
  value: T
  onChange: (value: T) => void
}

/** A few choices side by side of which exactly one holds. */
export function ChoiceGroup<T extends string>({ label, options, value, onChange }: ChoiceGroupProps<T>) {
  return (
    <ToggleButtonGroup
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const chosen = options.find((option) => keys.has(option.value))
        if (chosen !== undefined) onChange(chosen.value)
      }}
      className="choices"
    >
      {options.map((option) => (
        <ToggleButton key={option.value} id={option.value} className="choice">
          {option.label}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  )
}
