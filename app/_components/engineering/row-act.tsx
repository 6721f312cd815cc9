'use client'

interface RowActProps {
  /** What a screen reader hears: the act and the row. */
  readonly label: string
  readonly onPress: () => void
  readonly isDisabled?: boolean
  /** What is seen: a word or an arrow. */
  readonly children: string
}

/** A small act at the end of a table row. Many stand on one page, so it is a plain button. */
export function RowAct({ label, onPress, isDisabled = false, children }: RowActProps) {
  return (
    <button type="button" className="row-act" aria-label={label} title={label} onClick={onPress} disabled={isDisabled}>
      {children}
    </button>
  )
}
