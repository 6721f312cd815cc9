import { z } from 'zod'
import type { RevisionTarget } from '@/lib/addresses'
import { readStoredJson } from '@/lib/engine'

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

/** What a record of a revision is about: a kind of thing, and where it stands. */
export const TRAIL_THINGS: Readonly<Record<string, { readonly label: string; readonly tab: RevisionTarget['tab'] }>> = {
  revision: { label: 'revision', tab: 'overview' },
  item: { label: 'checklist', tab: 'checklist' },
  waiver: { label: 'waivers', tab: 'checklist' },
  thread: { label: 'threads', tab: 'threads' },
  comment: { label: 'threads', tab: 'threads' },
  proposal: { label: 'proposals', tab: 'proposals' },
  artwork: { label: 'artwork', tab: 'artwork' },
  attachment: { label: 'files', tab: 'checklist' },
  declaration: { label: 'declarations', tab: 'sign-off' },
  review: { label: 'reviews', tab: 'sign-off' },
  signature: { label: 'signatures', tab: 'sign-off' },
}

interface StoredRecord {
  readonly subjectKind: string
  readonly subjectId: string
  readonly detailsJson: string
}

/** Kinds whose id is the place's own. */
const PLACES: ReadonlySet<string> = new Set(['item', 'thread', 'proposal'])

/** Where the thing that a record is about is shown; null for what has no place on the revision. */
export function findTrailTarget({ subjectKind, subjectId, detailsJson }: StoredRecord): RevisionTarget | null {
  const thing = TRAIL_THINGS[subjectKind]
  if (thing === undefined) return null
  if (PLACES.has(subjectKind)) return { tab: thing.tab, id: subjectId }
  const details = readStoredJson('details of a record', detailsSchema, detailsJson)
  const item = details.itemId
  return { tab: thing.tab, id: subjectKind === 'waiver' && typeof item === 'string' ? item : null }
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
