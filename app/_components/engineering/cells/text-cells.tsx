'use client'

import { useDraftActs } from '../draft/draft-context'
import { CellFrame, type CellProps } from './cell-frame'
import { useTyped } from './use-typed'

interface TextCellProps extends CellProps {
  readonly value: string
  readonly onChange: (value: string) => void
  readonly maxLength?: number
}

/** A text as it is being typed, ahead of what follows from it. */
function useTypedText({ value, onChange }: Pick<TextCellProps, 'value' | 'onChange'>) {
  const { asTyped } = useDraftActs()
  const { typed, keep, drop } = useTyped<string>('')
  return {
    value: typed?.text ?? value,
    onChange: (event: { readonly target: { readonly value: string } }) => {
      const text = event.target.value
      keep(text, text)
      asTyped(() => onChange(text))
    },
    onBlur: drop,
  }
}

export function TextCell({ value, onChange, maxLength, ...cell }: TextCellProps) {
  const typing = useTypedText({ value, onChange })
  return (
    <CellFrame {...cell} text={value}>
      {(input) => <input {...input} className="input" autoComplete="off" maxLength={maxLength} {...typing} />}
    </CellFrame>
  )
}

/** Free text over several lines. */
export function LongTextCell({ value, onChange, ...cell }: TextCellProps) {
  const typing = useTypedText({ value, onChange })
  return (
    <CellFrame {...cell} text={value}>
      {(input) => <textarea {...input} className="input" rows={3} {...typing} />}
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
