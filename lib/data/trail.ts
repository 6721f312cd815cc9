import 'server-only'
import { chainRecord, type JsonValue, type TrailRecord } from '@/lib/review'
import type { TransactionClient } from './client'
import type { TrailRecord as TrailRow } from './generated/sqlite/client'
import { makeCheckpointIfDue } from './trail-checkpoints'

/** What happened, before it has its place in the chain. */
export interface TrailNote {
  readonly action: string
  readonly subject: { readonly kind: string; readonly id: string }
  readonly projectId?: string
  readonly revisionId?: string
  /** The fabricator that it is about, if any: it stays out of another fabricator's package. */
  readonly companyId?: string | null
  readonly details?: { readonly [key: string]: JsonValue | undefined }
}

/**
 * Adds a record to the trail. The caller's transaction holds the writers' lock, so nothing comes between reading the
 * last record and writing the next.
 * @returns the record's place in the trail
 */
export async function appendToTrail(
  tx: TransactionClient,
  at: Date,
  actor: { readonly userId: string | null; readonly name: string },
  note: TrailNote,
): Promise<number> {
  const last = await tx.trailRecord.findFirst({ orderBy: { sequence: 'desc' } })
  const written = at.toISOString()
  const record = chainRecord(last, {
    // A clock set back must not make the trail contradict its own order.
    at: last !== null && last.at > written ? last.at : written,
    actor: { userId: actor.userId, name: actor.name },
    action: note.action,
    subject: {
      kind: note.subject.kind,
      id: note.subject.id,
      projectId: note.projectId ?? null,
      revisionId: note.revisionId ?? null,
      companyId: note.companyId ?? null,
    },
    details: note.details ?? {},
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
  return record.sequence
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

/**
 * Text that is no longer JSON, or not as it was written (other spaces, a key twice), is kept as found, so that checking
 * the chain names the record.
 */
function readDetails(text: string): TrailRecord['details'] {
  try {
    const details: unknown = JSON.parse(text)
    return JSON.stringify(details) === text ? (details as TrailRecord['details']) : { unreadable: text }
  } catch {
    return { unreadable: text }
  }
}
