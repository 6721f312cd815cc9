'use client'

import { Autocomplete } from 'react-aria-components/Autocomplete'
import { Button } from 'react-aria-components/Button'
import { Input } from 'react-aria-components/Input'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'
import { SearchField } from 'react-aria-components/SearchField'
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
  /** What the search over many options is called; without it there is none. */
  searchLabel?: string
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
  searchLabel,
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
          {searchLabel === undefined ? (
            <OptionList options={options} />
          ) : (
            <Autocomplete filter={holdsEveryWord}>
              <SearchField aria-label={searchLabel} autoFocus className="popup-search">
                <Input className="input" placeholder="Search" />
              </SearchField>
              <OptionList options={options} />
            </Autocomplete>
          )}
        </Popover>
      </FieldFrame>
    </Select>
  )
}

function OptionList<T extends string>({ options }: { options: readonly Option<T>[] }) {
  return (
    <ListBox items={options} renderEmptyState={() => <p className="small muted">Nothing matches.</p>}>
      {(option) => (
        <ListBoxItem id={option.value} className="popup-item" textValue={option.label}>
          {option.label}
        </ListBoxItem>
      )}
    </ListBox>
  )
}

/** Words in any order: `radius hinge` finds `bend Hinge inside radius`. */
export function holdsEveryWord(text: string, searched: string): boolean {
  const folded = text.toLowerCase()
  return searched
    .toLowerCase()
    .split(/\s+/)
    .every((word) => folded.includes(word))
}
