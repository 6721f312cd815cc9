'use client'

import { CellFrame, type CellProps } from './cell-frame'

interface TextCellProps extends CellProps {
  readonly value: string
  readonly onChange: (value: string) => void
  readonly maxLength?: number
}

export function TextCell({ value, onChange, maxLength, ...cell }: TextCellProps) {
  return (
    <CellFrame {...cell} text={value}>
      {(input) => (
        <input
          {...input}
          className="input"
          autoComplete="off"
          maxLength={maxLength}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </CellFrame>
  )
}

/** Free text over several lines. */
export function LongTextCell({ value, onChange, ...cell }: TextCellProps) {
  return (
    <CellFrame {...cell} text={value}>
      {(input) => (
        <textarea
          {...input}
          className="input"
          rows={3}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </CellFrame>
  )
}

interface DateCellProps extends CellProps {
  readonly value: string | null
  readonly onChange: (value: string | null) => void
}

/** Calendar day, ISO 8601. */
export function DateCell({ value, onChange, ...cell }: DateCellProps) {
  return (
    <CellFrame {...cell} text={value ?? ''}>
      {(input) => (
        <input
          {...input}
          type="date"
          className="input"
          value={value ?? ''}
          onChange={(event) => onChange(event.target.value === '' ? null : event.target.value)}
        />
      )}
    </CellFrame>
  )
}
