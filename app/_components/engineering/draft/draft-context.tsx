'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react'
import { type AssumableList, type Assumption, type Design, formatIssuePath, listAssumptions } from '@/lib/engine'
import { useDraftHold } from './draft-holder'
import { type DraftAction, type DraftState, isDraftChanged, reduceDraft, takeUpDraft } from './draft-state'
import { dropKeptDraft, keepDraft } from './kept-draft'
import type { StoredRevision } from './stored-revision'
import { type LiveEvaluation, useLiveEvaluation } from './use-live-evaluation'

interface DraftContextValue {
  readonly state: DraftState
  readonly dispatch: (action: DraftAction) => void
  readonly live: LiveEvaluation
  readonly stored: StoredRevision
  readonly isChanged: boolean
  readonly isReadOnly: boolean
  /** Somebody who may not save edits in order to propose. */
  readonly isProposing: boolean
  readonly setProposing: (isProposing: boolean) => void
  /** First message by path, in the form that `formatIssuePath` writes. */
  readonly issueByPath: ReadonlyMap<string, string>
  /** What needs correction: entries that cannot be read, and issues of the design. Results are then of an earlier state. */
  readonly problemCount: number
  /** Values that are assumed and not confirmed, by path of the field. */
  readonly assumedByPath: ReadonlyMap<string, Assumption>
}

const DraftContext = createContext<DraftContextValue | null>(null)

/** Time after the last change at which the draft is kept for a later visit, ms: short against losing anything. */
const KEEP_DELAY_MS = 400

export function DraftProvider({ stored, children }: { stored: StoredRevision; children: ReactNode }) {
  const { held, hold, isProposing, setProposing } = useDraftHold()
  const [takenUp] = useState(() => takeUpDraft(held, stored.design, stored.designVersion))
  const [isHeld, setHeld] = useState(false)
  useEffect(() => {
    hold(takenUp)
    setHeld(true)
  }, [hold, takenUp])
  const state = isHeld && held !== null ? held : takenUp
  const dispatch = useCallback(
    (action: DraftAction) => hold((current) => reduceDraft(current ?? takenUp, action)),
    [hold, takenUp],
  )
  const live = useLiveEvaluation(state.design, stored)
  const isChanged = useMemo(() => isDraftChanged(state), [state])
  const hasKept = useRef(false)

  useEffect(() => {
    if (!isChanged) {
      // What this page kept itself is settled now; what an earlier visit left is still to be offered.
      if (hasKept.current) dropKeptDraft(stored.revisionId)
      hasKept.current = false
      return
    }
    const timer = window.setTimeout(() => {
      hasKept.current = true
      keepDraft(stored.revisionId, { seenVersion: state.seenVersion, design: state.design })
    }, KEEP_DELAY_MS)
    return () => window.clearTimeout(timer)
  }, [isChanged, state.design, state.seenVersion, stored.revisionId])

  useEffect(() => {
    const onFocusOut = () => dispatch({ type: 'settle' })
    document.addEventListener('focusout', onFocusOut)
    return () => document.removeEventListener('focusout', onFocusOut)
  }, [dispatch])

  const value = useMemo<DraftContextValue>(() => {
    const issueByPath = new Map<string, string>()
    for (const issue of live.issues) {
      const path = formatIssuePath(issue.path)
      if (!issueByPath.has(path)) issueByPath.set(path, issue.message)
    }
    const isReadOnly = !stored.mayEdit && !isProposing
    const problemCount = Object.keys(state.misread).length + live.issues.length
    const assumedByPath = new Map(
      listAssumptions(state.design).map((assumption) => [formatIssuePath(pathOf(assumption)), assumption] as const),
    )
    return {
      state,
      dispatch,
      live,
      stored,
      isChanged,
      isReadOnly,
      isProposing,
      setProposing,
      issueByPath,
      problemCount,
      assumedByPath,
    }
  }, [state, dispatch, live, stored, isChanged, isProposing, setProposing])
  return (
    <DraftContext value={value}>
      <div className="draft" data-outdated={value.problemCount > 0 ? '' : undefined}>
        {children}
      </div>
    </DraftContext>
  )
}

const LISTS: Record<AssumableList, readonly string[]> = {
  layers: ['construction', 'layers'],
  zones: ['construction', 'zones'],
  bends: ['bends'],
  conductors: ['features', 'conductors'],
  pads: ['features', 'pads'],
  widthSteps: ['features', 'widthSteps'],
}

function pathOf({ list, index, field }: Assumption): (string | number)[] {
  return [...LISTS[list], index, field]
}

export function useDraft(): DraftContextValue {
  const value = useContext(DraftContext)
  if (value === null) throw new Error('useDraft needs a DraftProvider above it')
  return value
}

/** Applies a change to the draft; keystrokes with the same key join one step of undo. */
export function useEdit(): (key: string, change: (design: Design) => Design) => void {
  const { dispatch } = useDraft()
  return useMemo(() => (key, change) => dispatch({ type: 'edit', key, change }), [dispatch])
}
