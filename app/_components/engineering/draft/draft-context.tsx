'use client'

// The one that knows maps: to the other all maps are alike.
import isSame from 'fast-deep-equal/es6'
import { createContext, type ReactNode, useContext, useEffect, useMemo, useRef, useState } from 'react'
import {
  type AssumableList,
  type Assumption,
  type Design,
  formatIssuePath,
  type Issue,
  listAssumptions,
} from '@/lib/engine'
import { useDraftHold } from './draft-holder'
import { type DraftState, isDraftChanged, takeUpDraft } from './draft-state'
import { dropKeptDraft, keepDraft } from './kept-draft'
import type { StoredRevision } from './stored-revision'
import { type ShownDraft, useDraftState } from './use-draft-state'
import { type LiveEvaluation, useLiveEvaluation } from './use-live-evaluation'

interface DraftContextValue extends Pick<ShownDraft, 'read' | 'dispatch'> {
  /** As the screen shows it. What an act sends away comes from `read`. */
  readonly state: DraftState
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

/** What stands beside fields. It is the same object from key to key where nothing of it changed, so that fields are left alone. */
type FieldNotes = Pick<DraftContextValue, 'isReadOnly' | 'issueByPath' | 'assumedByPath'> &
  Pick<DraftState, 'misread' | 'epoch'>

/** The same object for as long as the page is there. */
type DraftActs = Pick<ShownDraft, 'dispatch' | 'asTyped'>

/** What fields choose among; unchanged by whatever is typed elsewhere. */
export type DraftChoices = Pick<Design, 'construction' | 'bends'> & Pick<Design['features'], 'netClasses'>

const DraftContext = createContext<DraftContextValue | null>(null)
const FieldNotesContext = createContext<FieldNotes | null>(null)
const DraftActsContext = createContext<DraftActs | null>(null)
const DraftChoicesContext = createContext<DraftChoices | null>(null)

/** Time after the last change at which the draft is kept for a later visit, ms: short against losing anything. */
const KEEP_DELAY_MS = 400

export function DraftProvider({ stored, children }: { stored: StoredRevision; children: ReactNode }) {
  const { held, isProposing, setProposing } = useDraftHold()
  const {
    shown: state,
    read,
    dispatch,
    asTyped,
    catchUp,
  } = useDraftState(held, () => takeUpDraft(held.current, stored.design, stored.designVersion))
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
    // A field is left before anything else is pressed: what is pressed then stands on what was typed.
    const onFocusOut = () => {
      dispatch({ type: 'settle' })
      catchUp()
    }
    document.addEventListener('focusout', onFocusOut)
    return () => document.removeEventListener('focusout', onFocusOut)
  }, [dispatch, catchUp])

  const isReadOnly = !stored.mayEdit && !isProposing
  const issueByPath = useKept(useMemo(() => mapIssues(live.issues), [live.issues]))
  const assumedByPath = useKept(useMemo(() => mapAssumptions(state.design), [state.design]))
  const { misread, epoch, design } = state
  const notes = useMemo<FieldNotes>(
    () => ({ isReadOnly, issueByPath, assumedByPath, misread, epoch }),
    [isReadOnly, issueByPath, assumedByPath, misread, epoch],
  )
  const acts = useMemo<DraftActs>(() => ({ dispatch, asTyped }), [dispatch, asTyped])
  const {
    construction,
    bends,
    features: { netClasses },
  } = design
  const choices = useMemo<DraftChoices>(() => ({ construction, bends, netClasses }), [construction, bends, netClasses])
  const problemCount = Object.keys(misread).length + live.issues.length
  const value = useMemo<DraftContextValue>(
    () => ({
      state,
      read,
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
    }),
    [
      state,
      read,
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
    ],
  )
  return (
    <DraftActsContext value={acts}>
      <DraftChoicesContext value={choices}>
        <FieldNotesContext value={notes}>
          <DraftContext value={value}>
            <div className="draft" data-outdated={problemCount > 0 ? '' : undefined}>
              {children}
            </div>
          </DraftContext>
        </FieldNotesContext>
      </DraftChoicesContext>
    </DraftActsContext>
  )
}

/** The value of the render before for as long as it says the same. */
function useKept<T>(value: T): T {
  const [kept, setKept] = useState(value)
  if (kept === value || isSame(kept, value)) return kept
  setKept(value)
  return value
}

function mapIssues(issues: readonly Issue[]): ReadonlyMap<string, string> {
  const issueByPath = new Map<string, string>()
  for (const issue of issues) {
    const path = formatIssuePath(issue.path)
    if (!issueByPath.has(path)) issueByPath.set(path, issue.message)
  }
  return issueByPath
}

function mapAssumptions(design: Design): ReadonlyMap<string, Assumption> {
  return new Map(
    listAssumptions(design).map((assumption) => [formatIssuePath(pathOf(assumption)), assumption] as const),
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
  return found(useContext(DraftContext))
}

/** What stands beside fields; drawn anew where that changes, and not with every key. */
export function useFieldNotes(): FieldNotes {
  return found(useContext(FieldNotesContext))
}

export function useDraftActs(): DraftActs {
  return found(useContext(DraftActsContext))
}

/** The construction and the bends of the draft; drawn anew where they change. */
export function useDraftChoices(): DraftChoices {
  return found(useContext(DraftChoicesContext))
}

function found<T>(value: T | null): T {
  if (value === null) throw new Error('this needs a DraftProvider above it')
  return value
}

/** Applies a change to the draft; keystrokes with the same key join one step of undo. The same function from render to render. */
export function useEdit(): (key: string, change: (design: Design) => Design) => void {
  const { dispatch } = useDraftActs()
  return useMemo(() => (key, change) => dispatch({ type: 'edit', key, change }), [dispatch])
}
