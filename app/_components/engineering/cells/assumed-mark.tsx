'use client'

import { type Assumption, confirmAssumed } from '@/lib/engine'
import { useEdit } from '../draft/draft-context'

interface AssumedMarkProps {
  readonly assumption: Assumption
  /** The field and its row. */
  readonly label: string
  readonly isReadOnly: boolean
}

/** Says beside a value that nobody has confirmed it, and takes the confirmation. */
export function AssumedMark({ assumption, label, isReadOnly }: AssumedMarkProps) {
  const edit = useEdit()
  if (isReadOnly) return <span className="assumed-mark">assumed</span>
  return (
    <button
      type="button"
      className="assumed-mark"
      aria-label={`Confirm the assumed ${label}`}
      onClick={() => edit(`confirm-${assumption.mark}`, (design) => confirmAssumed(design, [assumption.mark]))}
    >
      assumed
    </button>
  )
}
