import isSame from 'fast-deep-equal'
import { type Design, dropSettledMarks, findFieldWords } from '@/lib/engine'

/** What the person is editing. `design` may break limits of the schema while it is being typed. */
export interface DraftState {
  readonly design: Design
  readonly past: readonly Design[]
  readonly future: readonly Design[]
  /** Key of the last edit: further keystrokes in the same field join its step of undo. */
  readonly lastKey: string | null
  /** Grows whenever the content is replaced from outside a field, so that fields drop the text they hold. */
  readonly epoch: number
  /** Text that could not be read, by field: its reason. The text itself stays in the field. */
  readonly misread: Readonly<Record<string, string>>
  /** What the server holds, as far as this page knows, and its version. */
  readonly stored: Design
  readonly seenVersion: number
}

export type DraftAction =
  | { readonly type: 'edit'; readonly key: string; readonly change: (design: Design) => Design }
  | { readonly type: 'misread'; readonly key: string; readonly reason: string | null }
  /** The person left a field: what comes next is a step of undo of its own. */
  | { readonly type: 'settle' }
  | { readonly type: 'undo' }
  | { readonly type: 'redo' }
  /** The whole design is replaced by another (import, starting construction, kept edits); can be undone. */
  | { readonly type: 'replace'; readonly design: Design }
  | { readonly type: 'saved'; readonly design: Design; readonly version: number }
  /** Somebody else saved: go on from their version with this content (mine, theirs, or both merged). Can be undone. */
  | { readonly type: 'rebase'; readonly stored: Design; readonly version: number; readonly design: Design }

/** Steps of undo that are kept; a design is small and steps share most of it. */
const MAX_STEPS = 200

export function makeDraft(stored: Design, seenVersion: number): DraftState {
  return { design: stored, past: [], future: [], lastKey: null, epoch: 0, misread: {}, stored, seenVersion }
}

export function reduceDraft(state: DraftState, action: DraftAction): DraftState {
  switch (action.type) {
    case 'edit': {
      const changed = action.change(state.design)
      if (changed === state.design) return state
      const design = dropSettledMarks(state.design, changed)
      const joins = action.key === state.lastKey && state.past.length > 0
      return {
        ...state,
        design,
        past: joins ? state.past : [...state.past, state.design].slice(-MAX_STEPS),
        future: [],
        lastKey: action.key,
      }
    }
    case 'misread': {
      const { [action.key]: present, ...others } = state.misread
      if (action.reason === null) return present === undefined ? state : { ...state, misread: others }
      return present === action.reason ? state : { ...state, misread: { ...others, [action.key]: action.reason } }
    }
    case 'settle':
      return state.lastKey === null ? state : { ...state, lastKey: null }
    case 'undo': {
      const design = state.past.at(-1)
      if (design === undefined) return state
      return {
        ...withContent(state, design),
        past: state.past.slice(0, -1),
        future: [state.design, ...state.future],
      }
    }
    case 'redo': {
      const [design, ...future] = state.future
      if (design === undefined) return state
      return { ...withContent(state, design), past: [...state.past, state.design], future }
    }
    case 'replace':
      return { ...withContent(state, action.design), past: [...state.past, state.design].slice(-MAX_STEPS), future: [] }
    case 'saved':
      return { ...state, stored: action.design, seenVersion: action.version, lastKey: null }
    case 'rebase': {
      const moved = { ...state, stored: action.stored, seenVersion: action.version, lastKey: null }
      if (action.design === state.design) return moved
      return { ...withContent(moved, action.design), past: [...state.past, state.design].slice(-MAX_STEPS), future: [] }
    }
  }
}

function withContent(state: DraftState, design: Design): DraftState {
  return { ...state, design, lastKey: null, epoch: state.epoch + 1, misread: {} }
}

/**
 * The draft as the next page takes it up: entries that could not be read went with the fields that held their text, and a draft without changes
 * gives way to what is stored by now.
 */
export function takeUpDraft(held: DraftState | null, stored: Design, storedVersion: number): DraftState {
  if (held === null) return makeDraft(stored, storedVersion)
  const readable = Object.keys(held.misread).length === 0 ? held : { ...held, misread: {} }
  return !isDraftChanged(readable) && readable.seenVersion < storedVersion
    ? makeDraft(stored, storedVersion)
    : { ...readable, lastKey: null }
}

/** Does the draft differ from what is stored? */
export function isDraftChanged(state: DraftState): boolean {
  if (Object.keys(state.misread).length > 0) return true
  return !isSame(state.design, state.stored)
}

/** In the order of the pages. What is assumed is said of the values themselves. */
const PARTS = [
  'name',
  'brief',
  'materials',
  'construction',
  'bends',
  'features',
  'plan',
] as const satisfies readonly (keyof Design)[]

/** Parts of the design that the draft changes, as a sentence names them: construction, bends. */
export function listChangedParts({ design, stored }: Pick<DraftState, 'design' | 'stored'>): string[] {
  return PARTS.flatMap((part) => (isSame(design[part], stored[part]) ? [] : [findFieldWords([part]).label]))
}
