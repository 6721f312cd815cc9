import { z } from 'zod'
import type { RevisionTarget } from '@/lib/addresses'
import { readStoredJson } from '@/lib/engine'
import type { TRAIL_WORDS, TrailAction } from './trail-words'

/** A line of what a record carries, for people. */
export interface TrailDetail {
  readonly label: string
  readonly text: string
}

/** Hashes of rows, which tie the record to the database and tell a reader nothing. */
const UNREAD = new Set(['rows', 'rowsJson'])

const WORDS: Readonly<Record<string, string>> = {
  because: 'because of a change by',
  changeCount: 'inputs changed',
  confirmedBy: 'confirmed by',
  contentHash: 'SHA-256 of the content',
  designHash: 'SHA-256 of the design',
  designVersion: 'version of the design',
  itemId: 'item',
  fileName: 'file',
  lookedAt: 'looked at',
  packageSha256: 'SHA-256 of the package',
}

const nameOf = (key: string) => WORDS[key] ?? key.replaceAll(/([A-Z])/g, ' $1').toLowerCase()

const detailsSchema = z.record(z.string(), z.unknown())

/**
 * All that a record carries beside its sentence, a line each: what was before and after among it. A value inside another is
 * named with it: `before, state`.
 */
export function listTrailDetails(detailsJson: string): TrailDetail[] {
  const details = readStoredJson('details of a record', detailsSchema, detailsJson)
  return Object.entries(details).flatMap(([key, value]) => (UNREAD.has(key) ? [] : flatten(nameOf(key), value)))
}

function flatten(label: string, value: unknown): TrailDetail[] {
  if (value === null || value === undefined || value === '') return []
  if (Array.isArray(value)) {
    const isPlain = value.every((entry) => typeof entry !== 'object')
    if (isPlain) return value.length === 0 ? [] : [{ label, text: value.map(String).join('; ') }]
    return value.flatMap((entry, at) => flatten(`${label} ${at + 1}`, entry))
  }
  if (typeof value === 'object') {
    return Object.entries(value).flatMap(([key, inner]) => flatten(`${label}, ${nameOf(key)}`, inner))
  }
  return [{ label, text: String(value) }]
}

type SubjectKind = (typeof TRAIL_WORDS)[TrailAction]['subject']

/** What a record is about: the kind of thing, and where on a revision such a thing stands; null for what stands elsewhere. */
const THINGS: Readonly<Record<SubjectKind, { readonly label: string; readonly tab: RevisionTarget['tab'] | null }>> = {
  revision: { label: 'revision', tab: 'overview' },
  item: { label: 'checklist', tab: 'checklist' },
  waiver: { label: 'waivers', tab: 'checklist' },
  thread: { label: 'threads', tab: 'threads' },
  proposal: { label: 'proposals', tab: 'proposals' },
  artwork: { label: 'artwork', tab: 'artwork' },
  attachment: { label: 'files', tab: 'checklist' },
  action: { label: 'actions', tab: 'actions' },
  meeting: { label: 'meetings', tab: 'meetings' },
  need: { label: 'needs', tab: 'needs' },
  condition: { label: 'conditions', tab: 'sign-off' },
  declaration: { label: 'declarations', tab: 'sign-off' },
  difference: { label: 'words against numbers', tab: 'sign-off' },
  package: { label: 'packages', tab: 'sign-off' },
  receipt: { label: 'packages', tab: 'sign-off' },
  review: { label: 'reviews', tab: 'sign-off' },
  signature: { label: 'signatures', tab: 'sign-off' },
  account: { label: 'accounts', tab: null },
  capacity: { label: 'capacities', tab: null },
  catalogue: { label: 'catalogue', tab: null },
  company: { label: 'companies', tab: null },
  invitation: { label: 'invitations', tab: null },
  library: { label: 'materials and constructions', tab: null },
  limit: { label: 'limits', tab: null },
  mail: { label: 'mail', tab: null },
  project: { label: 'project', tab: null },
  session: { label: 'sign-ins', tab: null },
  sheet: { label: 'fabricator’s sheets', tab: null },
  trail: { label: 'trail', tab: null },
  workspace: { label: 'workspace', tab: null },
}

/** By the kind as it is stored; comments are of older records. */
export const TRAIL_THINGS: Readonly<Record<string, (typeof THINGS)[SubjectKind]>> = {
  ...THINGS,
  comment: THINGS.thread,
}

interface StoredRecord {
  readonly subjectKind: string
  readonly subjectId: string
  readonly detailsJson: string
}

/** Kinds whose id is the place's own. */
const PLACES: ReadonlySet<string> = new Set(['item', 'thread', 'proposal', 'action', 'meeting', 'need'])

/** Where the thing that a record is about is shown; null for what has no place on the revision. */
export function findTrailTarget({ subjectKind, subjectId, detailsJson }: StoredRecord): RevisionTarget | null {
  const thing = TRAIL_THINGS[subjectKind]
  const tab = thing?.tab ?? null
  if (tab === null) return null
  if (PLACES.has(subjectKind)) return { tab, id: subjectId }
  const details = readStoredJson('details of a record', detailsSchema, detailsJson)
  const item = details.itemId
  return { tab, id: subjectKind === 'waiver' && typeof item === 'string' ? item : null }
}

export interface TrailFilter {
  readonly person: string
  readonly act: string
  readonly thing: string
}

interface FilterableEntry {
  readonly actorName: string
  readonly action: string
  readonly thing: string
}

/** Entries that every part of the filter lets pass; an empty part asks nothing. */
export function filterTrail<E extends FilterableEntry>(
  entries: readonly E[],
  { person, act, thing }: TrailFilter,
): readonly E[] {
  return entries.filter(
    (entry) =>
      (person === '' || entry.actorName === person) &&
      (act === '' || entry.action === act) &&
      (thing === '' || entry.thing === thing),
  )
}

/** What can be filtered by, from the entries that there are. */
export function listTrailChoices(entries: readonly FilterableEntry[]) {
  const differ = (values: readonly string[]) => [...new Set(values)].sort()
  return {
    people: differ(entries.map(({ actorName }) => actorName)),
    acts: differ(entries.map(({ action }) => action)),
    things: differ(entries.map(({ thing }) => thing)),
  }
}
