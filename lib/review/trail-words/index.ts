import { ACCESS_WORDS } from './access'
import { ACTION_WORDS } from './actions'
import { COMPANY_WORDS } from './companies'
import { DIFFERENCE_WORDS } from './differences'
import { MEETING_WORDS } from './meetings'
import { PROJECT_WORDS } from './projects'
import { REVISION_WORDS } from './revisions'
import { THREAD_WORDS } from './threads'
import type { Audience, NoDetails, StoredDetails, TrailWord } from './word'
import { WORKSPACE_WORDS } from './workspace'

export type { Audience } from './word'

/**
 * Everything that the trail records, each act under one word: the kind of thing it was done to, the details that its record
 * carries, the sentence it reads as, and who is told. Words are stored and signed: one that was written once stays.
 */
export const TRAIL_WORDS = {
  ...PROJECT_WORDS,
  ...COMPANY_WORDS,
  ...ACCESS_WORDS,
  ...REVISION_WORDS,
  ...THREAD_WORDS,
  ...ACTION_WORDS,
  ...DIFFERENCE_WORDS,
  ...MEETING_WORDS,
  ...WORKSPACE_WORDS,
} as const

type Words = typeof TRAIL_WORDS
export type TrailAction = keyof Words

/** Words by who is told. */
export type ActionsTold<A extends Audience> = {
  [W in TrailAction]: Words[W]['audience'] extends A ? W : never
}[TrailAction]

type DetailsOf<W extends TrailAction> = Words[W] extends TrailWord<string, infer D> ? D : never

interface NoteOf<W extends TrailAction> {
  readonly action: W
  readonly subject: { readonly kind: Words[W]['subject']; readonly id: string }
  readonly projectId?: string
  readonly revisionId?: string
  /** The fabricator that it is about, if any: it stays out of another fabricator's package. */
  readonly companyId?: string | null
}

/** What happened, before it has its place in the chain. Wrong details do not compile. */
export type TrailNote = {
  [W in TrailAction]: DetailsOf<W> extends NoDetails
    ? NoteOf<W> & { readonly details?: NoDetails }
    : NoteOf<W> & { readonly details: DetailsOf<W> }
}[TrailAction]

/** The note of one word, or of several. */
export type NoteOn<W extends TrailAction> = Extract<TrailNote, { readonly action: W }>

/** A word whose details are not known at compile time: a stored one. */
interface StoredWord {
  readonly subject: string
  sentence(details: StoredDetails<never>): string
  readonly concernsFabricators?: true
}

const BY_WORD: ReadonlyMap<string, StoredWord> = new Map(Object.entries(TRAIL_WORDS))
const ALL = [...BY_WORD.entries()]

/** Words about a kind of thing, as they are stored. */
export function listActionsOn(...subjects: readonly string[]): readonly string[] {
  return ALL.flatMap(([action, { subject }]) => (subjects.includes(subject) ? [action] : []))
}

/** What the team does that concerns every fabricator who sees the revision. */
export const CONCERNS_FABRICATORS: readonly string[] = ALL.flatMap(([action, { concernsFabricators }]) =>
  concernsFabricators === true ? [action] : [],
)

/**
 * A record as a sentence without its subject: `moved the revision from ... to ...`. A word of another version reads as it
 * is written.
 */
export function describeAction(action: string, detailsJson: string): string {
  const known = BY_WORD.get(action)
  return known === undefined ? action.replaceAll('-', ' ') : known.sentence(readDetails(detailsJson))
}

function readDetails(detailsJson: string): StoredDetails<never> {
  const value: unknown = JSON.parse(detailsJson)
  const fields =
    typeof value === 'object' && value !== null ? new Map<string, unknown>(Object.entries(value)) : new Map()
  return {
    text: (key) => {
      const field = fields.get(key)
      return typeof field === 'string' || typeof field === 'number' ? String(field) : ''
    },
    isTrue: (key) => fields.get(key) === true,
  }
}
