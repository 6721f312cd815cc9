import 'server-only'
import type { TrailNote } from '@/lib/review'
import { chainRecord, type TrailRecord } from '@/lib/review'
import type { TrailRecord as TrailRow } from '../generated/sqlite/client'
import { makeCheckpointIfDue } from '../records/trail-checkpoints'
import type { TransactionClient } from '../store/client'
import { groupRows, hashTouchedRows, type TouchedRow } from '../store/vouched/touched-rows'
import { getWriting, type PendingRecord, type Writing } from '../store/vouched/writing'
import { WriteReach } from './write-reach'

/**
 * Notes what is to go into the trail. The record is written at the end of the transaction, with hashes of the rows that
 * the act left behind; so nothing that the act does later in it is missing.
 *
 * @param onWritten  runs when the record has its place, in the same transaction
 */
export async function appendToTrail(
  tx: TransactionClient,
  at: Date,
  actor: { readonly userId: string | null; readonly name: string },
  note: TrailNote,
  onWritten: (sequence: number) => Promise<void> = async () => {},
): Promise<void> {
  const writing = getWriting()
  if (writing?.tx !== tx) throw new Error('the trail is written through inWriteTransaction alone')
  writing.pending.push({ at, actor, note, onWritten })
}

/** Who acts where nobody does. */
export const APPLICATION = { userId: null, name: 'Bendworthy' }

/** An act that nobody notes in words left rows behind all the same, such as a second look at the same design. */
const STATE_ALONE: TrailNote = { action: 'state-recorded', subject: { kind: 'trail', id: 'state' } }

/** Writes what an act noted, one record after the other. Each touched row is vouched for by one of them. */
export async function finishWriting(writing: Writing, at: Date): Promise<void> {
  const reach = new WriteReach()
  // What follows a record may touch rows and note further ones: as often as there is something left.
  for (;;) {
    const left = await hashTouchedRows(writing)
    writing.touched.clear()
    if (writing.pending.length === 0 && left.length > 0) {
      writing.pending.push({ at, actor: APPLICATION, note: STATE_ALONE, onWritten: async () => {} })
    }
    const pending = writing.pending.splice(0)
    const last = pending.at(-1)
    if (last === undefined) break
    reach.add(left, pending)
    const rowsOf = new Map<PendingRecord, TouchedRow[]>()
    for (const row of left) {
      const own = pending.findLast(({ note }) => note.subject.id === row.key) ?? last
      rowsOf.set(own, [...(rowsOf.get(own) ?? []), row])
    }
    for (const record of pending) {
      const sequence = await writeRecord(writing.tx, record, rowsOf.get(record) ?? [])
      await record.onWritten(sequence)
    }
  }
  await reach.countUp(writing.tx)
}

const CLOCK_SET_BACK = { action: 'clock-set-back', subject: { kind: 'trail', id: 'clock' } } as const

/** Acts take their moment before they wait for their turn to write: less than this is no clock set back. */
const WAIT_MS = 60_000

const isSetBack = (last: { readonly at: string }, at: Date) => Date.parse(last.at) - at.getTime() > WAIT_MS

/** Each record of a clock that is behind says so; the first is preceded by one that tells of it. */
const isNoted = (last: { readonly detailsJson: string }) => readDetails(last.detailsJson).clock !== undefined

/**
 * The writing transaction holds the writers' lock, so nothing comes between reading the last record and writing the next.
 * @returns the record's place in the trail
 */
async function writeRecord(
  tx: TransactionClient,
  pending: Pick<PendingRecord, 'at' | 'actor' | 'note'>,
  rows: readonly TouchedRow[],
): Promise<number> {
  const last = await tx.trailRecord.findFirst({ orderBy: { sequence: 'desc' } })
  if (last === null || !isSetBack(last, pending.at)) return (await chain(tx, last, pending, rows)).sequence
  const details = { clock: pending.at.toISOString(), last: last.at }
  const noted = isNoted(last)
    ? last
    : await chain(tx, last, { at: pending.at, actor: APPLICATION, note: { ...CLOCK_SET_BACK, details } }, [])
  return (await chain(tx, noted, pending, rows)).sequence
}

async function chain(
  tx: TransactionClient,
  last: { readonly sequence: number; readonly hash: string; readonly at: string } | null,
  { at, actor, note }: Pick<PendingRecord, 'at' | 'actor' | 'note'>,
  rows: readonly TouchedRow[],
): Promise<TrailRecord> {
  const clock = at.toISOString()
  const record = chainRecord(last, {
    // A clock set back must not make the trail contradict its own order; the record says what the clock said.
    at: last !== null && last.at > clock ? last.at : clock,
    actor: { userId: actor.userId, name: actor.name },
    action: note.action,
    subject: {
      kind: note.subject.kind,
      id: note.subject.id,
      projectId: note.projectId ?? null,
      revisionId: note.revisionId ?? null,
      companyId: note.companyId ?? null,
    },
    details: {
      ...note.details,
      ...(last !== null && isSetBack(last, at) ? { clock } : {}),
      ...(rows.length === 0 ? {} : { rows: groupRows(rows) }),
    },
  })
  await tx.trailRecord.create({
    data: {
      sequence: record.sequence,
      at: record.at,
      actorId: record.actor.userId,
      actorName: record.actor.name,
      action: record.action,
      subjectKind: record.subject.kind,
      subjectId: record.subject.id,
      projectId: record.subject.projectId,
      revisionId: record.subject.revisionId,
      companyId: record.subject.companyId,
      detailsJson: JSON.stringify(record.details),
      previousHash: record.previousHash,
      hash: record.hash,
    },
  })
  await makeCheckpointIfDue(tx, record)
  return record
}

export function readTrailRow(row: TrailRow): TrailRecord {
  return {
    sequence: row.sequence,
    at: row.at,
    actor: { userId: row.actorId, name: row.actorName },
    action: row.action,
    subject: {
      kind: row.subjectKind,
      id: row.subjectId,
      projectId: row.projectId,
      revisionId: row.revisionId,
      companyId: row.companyId,
    },
    details: readDetails(row.detailsJson),
    previousHash: row.previousHash,
    hash: row.hash,
  }
}

/** Whatever was read from JSON holds JSON values. */
const isDetails = (value: unknown): value is TrailRecord['details'] =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * Text that is no longer JSON, or not as it was written (other spaces, a key twice), is kept as found, so that checking
 * the chain names the record.
 */
function readDetails(text: string): TrailRecord['details'] {
  try {
    const details: unknown = JSON.parse(text)
    return isDetails(details) && JSON.stringify(details) === text ? details : { unreadable: text }
  } catch {
    return { unreadable: text }
  }
}
