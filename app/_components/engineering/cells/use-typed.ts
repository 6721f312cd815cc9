'use client'

import { useState } from 'react'
import { useFieldNotes } from '../draft/draft-context'

interface Typed<T> {
  readonly text: string
  /** The value that the draft has from it. */
  readonly sent: T
}

/**
 * The text of a field for as long as a person is typing it: it is there with the key, and what follows from it is drawn
 * after that. It ends where the content is replaced from outside the field.
 *
 * @param notation  changes when the same value is written differently
 */
export function useTyped<T>(notation: string): {
  readonly typed: Typed<T> | null
  readonly keep: (text: string, sent: T) => void
  readonly drop: () => void
} {
  const { epoch } = useFieldNotes()
  const [kept, setKept] = useState<(Typed<T> & { readonly epoch: number; readonly notation: string }) | null>(null)
  const isMine = kept !== null && kept.epoch === epoch && kept.notation === notation
  return {
    typed: isMine ? kept : null,
    keep: (text, sent) => setKept({ text, sent, epoch, notation }),
    drop: () => setKept(null),
  }
}
