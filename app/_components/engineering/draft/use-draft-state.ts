'use client'

import { type RefObject, startTransition, useCallback, useRef, useState } from 'react'
import { type DraftAction, type DraftState, reduceDraft } from './draft-state'

export interface ShownDraft {
  /** What the screen shows. It may lag behind what was typed by as long as the screen takes to be drawn. */
  readonly shown: DraftState
  /** The draft as it is now: what acts go by. */
  readonly read: () => DraftState
  readonly dispatch: (action: DraftAction) => void
  /** Runs what a key typed: its field shows the text by itself, and the rest of the screen follows between further keys. */
  readonly asTyped: (act: () => void) => void
  /** Shows at once what is not shown yet: before anything is done by what stands on the screen. */
  readonly catchUp: () => void
}

/**
 * The draft, held so that a key waits for its own field alone. Every action changes the draft at once; of what was typed,
 * React draws the consequences as a transition, in pieces, and begins again when more is typed meanwhile.
 *
 * @param held  where the next page finds it
 */
export function useDraftState(held: RefObject<DraftState | null>, makeFirst: () => DraftState): ShownDraft {
  const [shown, setShown] = useState(makeFirst)
  const latest = useRef(shown)
  const isTyping = useRef(false)
  const read = useCallback(() => latest.current, [])
  const dispatch = useCallback(
    (action: DraftAction) => {
      const next = reduceDraft(latest.current, action)
      if (next === latest.current) return
      latest.current = next
      held.current = next
      if (isTyping.current) startTransition(() => setShown(next))
      else setShown(next)
    },
    [held],
  )
  const asTyped = useCallback((act: () => void) => {
    isTyping.current = true
    try {
      act()
    } finally {
      isTyping.current = false
    }
  }, [])
  const catchUp = useCallback(() => setShown(latest.current), [])
  return { shown, read, dispatch, asTyped, catchUp }
}
