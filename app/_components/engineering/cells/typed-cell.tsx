'use client'

import { useDraftActs } from '../draft/draft-context'
import { CellFrame, type CellProps } from './cell-frame'
import { useTyped } from './use-typed'

export type Reading =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly reason: string }

interface TypedCellProps extends CellProps {
  readonly value: number | null
  readonly unit?: string
  /** The value in the words of this field, without its unit. */
  readonly format: (value: number) => string
  readonly read: (text: string) => Reading
  readonly onChange: (value: number | null) => void
  /** Changes when the same value is written differently (another length unit). */
  readonly notation: string
}

/**
 * A number as a person is typing it. Every keystroke that can be read changes the draft at once; text that cannot
 * stays in the field with its reason, and the draft keeps the last value that could be read.
 */
export function TypedCell({ value, unit, format, read, onChange, notation, ...frame }: TypedCellProps) {
  const { dispatch, asTyped } = useDraftActs()
  const { typed, keep, drop } = useTyped<number | null>(notation)
  const shown = value === null ? '' : format(value)
  // What the draft holds: where keys come faster than the screen is drawn, more than `value` says.
  const present = typed === null ? value : typed.sent
  const take = (next: string) => {
    // What is shown may be rounded in another unit: typed back, it still is what the design holds.
    const reading: Reading = next === shown ? { ok: true, value } : read(next)
    keep(next, reading.ok ? reading.value : present)
    asTyped(() => {
      dispatch({ type: 'misread', key: frame.at.key, reason: reading.ok ? null : reading.reason })
      if (reading.ok && reading.value !== present) onChange(reading.value)
    })
  }
  return (
    <CellFrame {...frame} unit={unit} text={shown} isNumeric>
      {(input) => (
        <input
          {...input}
          className="input input-num"
          inputMode="decimal"
          autoComplete="off"
          value={typed?.text ?? shown}
          onChange={(event) => take(event.target.value)}
          onBlur={(event) => {
            if (read(event.target.value).ok) drop()
          }}
        />
      )}
    </CellFrame>
  )
}
