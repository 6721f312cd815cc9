'use client'

import { CellFrame, type CellProps } from './cell-frame'

export interface Choice<T extends string> {
  readonly value: T
  readonly label: string
  /** Heading that this choice stands under. */
  readonly group?: string
}

interface ChoiceCellProps<T extends string> extends CellProps {
  readonly value: T
  readonly choices: readonly Choice<T>[]
  readonly onChange: (value: T) => void
}

/** The platform's own list: quick in dense tables, and right on a phone. A value outside the list is shown as it is. */
export function ChoiceCell<T extends string>({ value, choices, onChange, ...cell }: ChoiceCellProps<T>) {
  const present = choices.find((choice) => choice.value === value)
  return (
    <CellFrame {...cell} text={present?.label ?? value}>
      {(input) => (
        <select
          {...input}
          className="input"
          value={value}
          onChange={(event) => {
            const chosen = choices.find((choice) => choice.value === event.target.value)
            if (chosen !== undefined) onChange(chosen.value)
          }}
        >
          {present === undefined && <option value={value}>{value === '' ? 'Choose…' : `${value} (unknown)`}</option>}
          <ChoiceOptions choices={choices} />
        </select>
      )}
    </CellFrame>
  )
}

interface OptionalChoiceCellProps<T extends string> extends CellProps {
  readonly value: T | null
  readonly choices: readonly Choice<T>[]
  readonly onChange: (value: T | null) => void
  /** What null means here. */
  readonly emptyLabel?: string
}

export function OptionalChoiceCell<T extends string>({
  value,
  choices,
  onChange,
  emptyLabel = 'not known',
  ...cell
}: OptionalChoiceCellProps<T>) {
  const present = choices.find((choice) => choice.value === value)
  return (
    <CellFrame {...cell} text={present?.label ?? (value === null ? emptyLabel : value)}>
      {(input) => (
        <select
          {...input}
          className="input"
          value={value ?? ''}
          data-empty={value === null ? '' : undefined}
          onChange={(event) => {
            const chosen = choices.find((choice) => choice.value === event.target.value)
            onChange(chosen?.value ?? null)
          }}
        >
          <option value="">{emptyLabel}</option>
          {value !== null && present === undefined && <option value={value}>{value} (unknown)</option>}
          <ChoiceOptions choices={choices} />
        </select>
      )}
    </CellFrame>
  )
}

function ChoiceOptions<T extends string>({ choices }: { choices: readonly Choice<T>[] }) {
  const groups = [...new Set(choices.map((choice) => choice.group))]
  return groups.map((group) => {
    const options = choices
      .filter((choice) => choice.group === group)
      .map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))
    return group === undefined ? (
      options
    ) : (
      <optgroup key={group} label={group}>
        {options}
      </optgroup>
    )
  })
}

const YES_NO: readonly Choice<'yes' | 'no'>[] = [
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
]

interface ObservedCellProps extends CellProps {
  readonly value: boolean | null
  readonly onChange: (value: boolean | null) => void
}

/** Yes, no, or not known yet: the three are never confused. */
export function ObservedCell({ value, onChange, ...cell }: ObservedCellProps) {
  return (
    <OptionalChoiceCell
      {...cell}
      value={value === null ? null : value ? 'yes' : 'no'}
      choices={YES_NO}
      onChange={(next) => onChange(next === null ? null : next === 'yes')}
    />
  )
}

interface ChoiceSetCellProps<T extends string> extends CellProps {
  readonly values: readonly T[]
  readonly choices: readonly Choice<T>[]
  readonly onChange: (values: T[]) => void
  /** What an empty set means here. */
  readonly emptyLabel?: string
}

/** Any number of choices, in the order of the list; none ticked is not stated. */
export function ChoiceSetCell<T extends string>({
  values,
  choices,
  onChange,
  emptyLabel = 'not stated',
  ...cell
}: ChoiceSetCellProps<T>) {
  const chosen = choices.filter(({ value }) => values.includes(value))
  return (
    <CellFrame {...cell} text={chosen.length === 0 ? emptyLabel : chosen.map(({ label }) => label).join(', ')}>
      {({ id, ...input }) => (
        <fieldset {...input} id={id} aria-label={cell.label} className="choice-set">
          {choices.map(({ value, label }) => (
            <label key={value}>
              <input
                type="checkbox"
                checked={values.includes(value)}
                onChange={(event) =>
                  onChange(
                    choices.flatMap((each) =>
                      (each.value === value ? event.target.checked : values.includes(each.value)) ? [each.value] : [],
                    ),
                  )
                }
              />{' '}
              {label}
            </label>
          ))}
        </fieldset>
      )}
    </CellFrame>
  )
}

interface TickCellProps extends CellProps {
  readonly value: boolean
  readonly onChange: (value: boolean) => void
}

export function TickCell({ value, onChange, ...cell }: TickCellProps) {
  return (
    <CellFrame {...cell} text={value ? 'yes' : 'no'}>
      {(input) => (
        <input
          {...input}
          type="checkbox"
          className="cell-tick"
          checked={value}
          onChange={(event) => onChange(event.target.checked)}
        />
      )}
    </CellFrame>
  )
}
