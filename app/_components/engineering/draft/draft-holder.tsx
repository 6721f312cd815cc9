'use client'

import { createContext, type Dispatch, type ReactNode, type SetStateAction, useContext, useMemo, useState } from 'react'
import type { DraftState } from './draft-state'

interface DraftHold {
  /** Null until a page begins a draft. */
  readonly held: DraftState | null
  readonly hold: Dispatch<SetStateAction<DraftState | null>>
  readonly isProposing: boolean
  readonly setProposing: (isProposing: boolean) => void
}

const HoldContext = createContext<DraftHold | null>(null)

/** Holds the draft of one revision while a person moves between the pages that edit it. It ends with the last of them. */
export function DraftHolder({ children }: { children: ReactNode }) {
  const [held, hold] = useState<DraftState | null>(null)
  const [isProposing, setProposing] = useState(false)
  const value = useMemo(() => ({ held, hold, isProposing, setProposing }), [held, isProposing])
  return <HoldContext value={value}>{children}</HoldContext>
}

export function useDraftHold(): DraftHold {
  const value = useContext(HoldContext)
  if (value === null) throw new Error('a draft needs a DraftHolder above it')
  return value
}
