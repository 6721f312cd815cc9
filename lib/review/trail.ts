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

/** Checks records as they come, one after the other, and keeps none of them. */
export interface TrailFollower {
  /** What is wrong with the next record; after a fault no more are to be given. */
  readonly follow: (record: TrailRecord) => TrailFault | null
  /** Of the last record that fitted; null before the first. */
  readonly last: () => TrailRecord | null
  readonly count: () => number
}

/** @param start  the record before the first that will be given, where a trail is followed from its middle on */
export function followTrail(
  options: { readonly allowGaps?: boolean; readonly start?: TrailRecord } = {},
): TrailFollower {
  let previous: TrailRecord | null = options.start ?? null
  let count = 0
  const fail = (sequence: number, code: TrailFault['code'], reason: string): TrailFault => ({ sequence, code, reason })
  return {
    last: () => previous,
    count: () => count,
    follow(record) {
      const expected: number = (previous?.sequence ?? 0) + 1
      const inOrder = options.allowGaps === true ? record.sequence >= expected : record.sequence === expected
      if (!Number.isSafeInteger(record.sequence) || !inOrder) {
        return fail(
          expected,
          'sequence',
          `record ${expected} is missing or out of order: the next record is numbered ${record.sequence}`,
        )
      }
      const link = previous?.hash ?? TRAIL_START
      if (record.sequence === expected && record.previousHash !== link) {
        return fail(
          record.sequence,
          'link',
          `record ${record.sequence} names ${record.previousHash} as the hash before it; that hash is ${link}`,
        )
      }
      const fault = findHashFault(record)
      if (fault !== null) return fault
      previous = record
      count += 1
      return null
    },
  }
}

/** Is the record as it was hashed? */
function findHashFault(record: TrailRecord): TrailFault | null {
  const { sequence } = record
  try {
    const hash = hashTrailRecord(record)
    if (hash === record.hash) return null
    const reason = `record ${sequence} (${record.action}, ${record.at}) was changed: its content hashes to ${hash}, recorded is ${record.hash}`
    return { sequence, code: 'hash', reason }
  } catch (error) {
    return { sequence, code: 'malformed', reason: `record ${sequence} cannot be hashed: ${String(error)}` }
  }
}

/** Checks records from the first on and names the first that does not fit, and why. */
export function checkTrail(records: readonly TrailRecord[], options: TrailCheckOptions = {}): TrailCheck {
  const follower = followTrail(options)
  for (const record of records) {
    const fault = follower.follow(record)
    if (fault !== null) return { ok: false, fault }
  }
  const head = options.expectedHead
  const fault =
    head === undefined
      ? null
      : findHeadFault(
          head,
          follower.last()?.sequence ?? 0,
          records.find(({ sequence }) => sequence === head.sequence)?.hash,
        )
  if (fault !== null) return { ok: false, fault }
  return { ok: true, count: records.length, headHash: follower.last()?.hash ?? TRAIL_START }
}

/** @param found  hash of the record with the number of the head; undefined where there is none */
export function findHeadFault(
  head: { readonly sequence: number; readonly hash: string },
  end: number,
  found: string | undefined,
): TrailFault | null {
  const { sequence } = head
  if (found === head.hash) return null
  const reason =
    found === undefined
      ? `the trail ends at record ${end}; a checkpoint knows record ${sequence}`
      : `record ${sequence} has the hash ${found}; a checkpoint knows ${head.hash}`
  return { sequence, code: 'head', reason }
}
