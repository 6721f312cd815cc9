import { hashJson, type JsonValue } from './canonical'

/** One thing that somebody did. The fields other than `hash` are what the hash covers. */
export interface TrailRecord {
  /** 1 for the first record, then without gaps. */
  readonly sequence: number
  /** ISO 8601 in UTC with milliseconds. */
  readonly at: string
  /** Who acted; the id is null where the application itself did. */
  readonly actor: { readonly userId: string | null; readonly name: string }
  /** What was done: `design-saved`, `stage-moved`, `revision-signed` ... */
  readonly action: string
  readonly subject: {
    readonly kind: string
    readonly id: string
    readonly projectId: string | null
    readonly revisionId: string | null
    /** The fabricator that the record is about, if any: no other fabricator is shown it. */
    readonly companyId: string | null
  }
  readonly details: { readonly [key: string]: JsonValue | undefined }
  /** Hash of the record before; of the first one `TRAIL_START`. */
  readonly previousHash: string
  readonly hash: string
}

export type TrailEntry = Omit<TrailRecord, 'sequence' | 'previousHash' | 'hash'>

/** What the first record names as the hash before it. */
export const TRAIL_START = '0'.repeat(64)

/** The hash of a record: SHA-256 of the canonical form (RFC 8785) of its other fields. */
export function hashTrailRecord(record: Omit<TrailRecord, 'hash'>): string {
  return hashJson({
    sequence: record.sequence,
    at: record.at,
    actor: record.actor,
    action: record.action,
    subject: record.subject,
    details: record.details,
    previousHash: record.previousHash,
  })
}

/** Makes the record that follows `last` (null at the start of a trail). */
export function chainRecord(last: Pick<TrailRecord, 'sequence' | 'hash'> | null, entry: TrailEntry): TrailRecord {
  const unhashed = {
    sequence: (last?.sequence ?? 0) + 1,
    at: entry.at,
    actor: { userId: entry.actor.userId, name: entry.actor.name },
    action: entry.action,
    subject: {
      kind: entry.subject.kind,
      id: entry.subject.id,
      projectId: entry.subject.projectId,
      revisionId: entry.subject.revisionId,
      companyId: entry.subject.companyId,
    },
    details: entry.details,
    previousHash: last?.hash ?? TRAIL_START,
  }
  return { ...unhashed, hash: hashTrailRecord(unhashed) }
}

export interface TrailFault {
  /** Sequence number that the first bad record carries, or should carry where it is missing. */
  readonly sequence: number
  readonly code: 'malformed' | 'sequence' | 'link' | 'hash' | 'head' | 'checkpoint'
  readonly reason: string
}

export type TrailCheck =
  | { readonly ok: true; readonly count: number; readonly headHash: string }
  | { readonly ok: false; readonly fault: TrailFault }

export interface TrailCheckOptions {
  /** An extract (one revision's records) has gaps: then each record is checked by itself and against its neighbours. */
  readonly allowGaps?: boolean
  /** A head known from elsewhere (a signed checkpoint): shows when the tail was cut off. */
  readonly expectedHead?: { readonly sequence: number; readonly hash: string }
}

/** Checks records from the first on and names the first that does not fit, and why. */
export function checkTrail(records: readonly TrailRecord[], options: TrailCheckOptions = {}): TrailCheck {
  const fail = (sequence: number, code: TrailFault['code'], reason: string): TrailCheck => ({
    ok: false,
    fault: { sequence, code, reason },
  })
  let previous: TrailRecord | null = null
  for (const record of records) {
    const expected: number = (previous?.sequence ?? 0) + 1
    const inOrder = options.allowGaps === true ? record.sequence >= expected : record.sequence === expected
    if (!Number.isSafeInteger(record.sequence) || !inOrder) {
      return fail(
        expected,
        'sequence',
        `record ${expected} is missing or out of order: the next record is numbered ${record.sequence}`,
      )
    }
    if (record.sequence === expected) {
      const link = previous?.hash ?? TRAIL_START
      if (record.previousHash !== link) {
        return fail(
          record.sequence,
          'link',
          `record ${record.sequence} names ${record.previousHash} as the hash before it; that hash is ${link}`,
        )
      }
    }
    let hash: string
    try {
      hash = hashTrailRecord(record)
    } catch (error) {
      return fail(record.sequence, 'malformed', `record ${record.sequence} cannot be hashed: ${String(error)}`)
    }
    if (hash !== record.hash) {
      return fail(
        record.sequence,
        'hash',
        `record ${record.sequence} (${record.action}, ${record.at}) was changed: its content hashes to ${hash}, recorded is ${record.hash}`,
      )
    }
    previous = record
  }
  const head = options.expectedHead
  if (head !== undefined) {
    const found = records.find((record) => record.sequence === head.sequence)
    if (found === undefined) {
      return fail(
        head.sequence,
        'head',
        `the trail ends at record ${previous?.sequence ?? 0}; a checkpoint knows record ${head.sequence}`,
      )
    }
    if (found.hash !== head.hash) {
      return fail(
        head.sequence,
        'head',
        `record ${head.sequence} has the hash ${found.hash}; a checkpoint knows ${head.hash}`,
      )
    }
  }
  return { ok: true, count: records.length, headHash: previous?.hash ?? TRAIL_START }
}
