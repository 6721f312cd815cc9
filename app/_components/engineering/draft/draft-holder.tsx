'use client'

import { createContext, type ReactNode, type RefObject, useContext, useMemo, useRef, useState } from 'react'
import type { DraftState } from './draft-state'

interface DraftHold {
  /** As it is now, for the page that takes it up; the page that edits it says when it is drawn. Null until something was edited. */
  readonly held: RefObject<DraftState | null>
  readonly isProposing: boolean
  readonly setProposing: (isProposing: boolean) => void
}

const HoldContext = createContext<DraftHold | null>(null)

/** Holds the draft of one revision while a person moves between the pages that edit it. It ends with the last of them. */
export function DraftHolder({ children }: { children: ReactNode }) {
  const held = useRef<DraftState | null>(null)
  const [isProposing, setProposing] = useState(false)
  const value = useMemo(() => ({ held, isProposing, setProposing }), [isProposing])
  return <HoldContext value={value}>{children}</HoldContext>
}

export function useDraftHold(): DraftHold {
  const value = useContext(HoldContext)
  if (value === null) throw new Error('a draft needs a DraftHolder above it')
  return value
}
