import 'server-only'
import { now } from '@/lib/config'
import {
  type CheckpointedTrail,
  type Checkpoints,
  checkCheckpoints,
  makeTrailFile,
  type TrailCheckpoint,
} from '@/lib/package'
import {
  findHeadFault,
  followTrail,
  TRAIL_START,
  type TrailCheck,
  type TrailFault,
  type TrailRecord,
} from '@/lib/review'
import { readTrailRow } from '../consequences/trail'
import { write } from '../consequences/write'
import { type Actor, requireInWorkspace } from '../records/authorization'
import { WORKSPACE_ID } from '../records/settings-record'
import { loadKeys } from '../records/signing-keys'
import { listCheckpoints, readKeptCheckpoints } from '../records/trail-checkpoints'
import { inReadTransaction, type TransactionClient } from '../store/client'
import { checkState, collectState, type StateCheck } from '../store/vouched/state-check'
import type { FileDownload } from '../views'
import { read } from './read'

/** Below every sequence number that the column can hold (a signed 32-bit integer): one written by force is found too. */
const BEFORE_ALL = -(2 ** 31)

/** Read in pieces: a trail outgrows one answer of the database long before it outgrows memory. */
const PIECE = 1000

/** The whole trail as a file that the checking command reads. For an admin; the file's last record says that it was made. */
export async function exportTrail(actor: Actor): Promise<FileDownload> {
  await write(actor, 'export-trail', {}, async ({ rights, record }) => {
    requireInWorkspace(rights, 'trail:check')
    await record({ action: 'trail-exported', subject: { kind: 'workspace', id: WORKSPACE_ID }, details: {} })
  })
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'trail:check')
    const file = makeTrailFile(await loadTrail(tx), false, await listCheckpoints(tx))
    return {
      fileName: `trail-${now().toISOString().slice(0, 10)}.json`,
      mediaType: 'application/json',
      bytes: new TextEncoder().encode(`${JSON.stringify(file, null, 1)}\n`),
    }
  })
}

export interface WholeTrailCheck {
  readonly recordCount: number
  readonly firstBad: { readonly sequence: number; readonly reason: string } | null
  readonly checkpointCount: number
  /** The record up to which a cut would show by the checkpoints. */
  readonly vouchedUpTo: number
  /** What the database holds, against what the records say that they left. */
  readonly state: StateCheck
}

/** Checks the whole chain, names the first record that does not fit, and holds the state against it. For an admin. */
export async function checkWholeTrail(actor: Actor): Promise<WholeTrailCheck> {
  await read(actor, async ({ rights }) => requireInWorkspace(rights, 'trail:check'))
  const { check, checkpoints, state, recordCount } = await checkStoredTrail({})
  return {
    recordCount,
    firstBad: check.ok ? null : { sequence: check.fault.sequence, reason: check.fault.reason },
    checkpointCount: checkpoints.length,
    vouchedUpTo: checkpoints.at(-1)?.sequence ?? 0,
    state: state ?? { fitCount: 0, olderCount: 0, misfits: [] },
  }
}

export interface StoredTrailQuestion {
  /** Judges the checkpoints in place of the installation's own key. */
  readonly verifyingKeyPem?: string | null
  /** Of checkpoints that are known from elsewhere. */
  readonly against?: readonly TrailCheckpoint[]
  /** A record that has to be there. */
  readonly head?: { readonly sequence: number; readonly hash: string } | undefined
  /** From the last checkpoint on alone, and without the state: what came before was checked when that was made, or is not looked at. */
  readonly isRecent?: boolean
}

export interface StoredTrailCheck {
  readonly check: TrailCheck
  /** Records that were followed. */
  readonly recordCount: number
  readonly last: TrailRecord | null
  readonly checkpoints: readonly TrailCheckpoint[]
  /** Null where it was not asked for. */
  readonly state: StateCheck | null
}

/** As long as a check of millions of records takes. */
const CHECK_TIMEOUT_MS = 30 * 60_000

/** Checks the trail in the database as its records go by, so that memory does not grow with them. */
export function checkStoredTrail(question: StoredTrailQuestion): Promise<StoredTrailCheck> {
  return inReadTransaction((tx) => checkStored(tx, question), CHECK_TIMEOUT_MS)
}

async function checkStored(tx: TransactionClient, question: StoredTrailQuestion): Promise<StoredTrailCheck> {
  const { isRecent = false, head, against = [] } = question
  const first = await tx.trailRecord.findFirst({ orderBy: { sequence: 'asc' } })
  const own = await loadCheckpoints(tx, first?.hash)
  const checkpoints = {
    ...own,
    others: [...own.others, ...against],
    verifyingKeyPem: question.verifyingKeyPem ?? own.verifyingKeyPem,
  }
  const named = new Set([...checkpoints.checkpoints, ...checkpoints.others].map(({ sequence }) => sequence))
  if (head !== undefined) named.add(head.sequence)
  const start = isRecent ? await findStart(tx, own.checkpoints) : null
  const hashes = new Map<number, string>(isRecent ? await findHashes(tx, named) : [])
  const recorded = collectState()
  const follower = followTrail(start === null ? {} : { start })
  let fault: TrailFault | null = start === null ? null : (followTrail({ allowGaps: true }).follow(start) ?? null)
  for await (const record of eachRecord(tx, start?.sequence ?? BEFORE_ALL)) {
    if (named.has(record.sequence)) hashes.set(record.sequence, record.hash)
    if (!isRecent) recorded.add(record)
    // What the rest says of the state is collected all the same.
    fault ??= follower.follow(record)
  }
  const last = follower.last()
  const end = last?.sequence ?? 0
  const outline = { first: first === null ? null : { sequence: first.sequence, hash: first.hash }, end, hashes }
  fault ??= head === undefined ? null : findHeadFault(head, end, hashes.get(head.sequence))
  fault ??= checkCheckpoints(checkpoints, outline)
  return {
    check:
      fault === null
        ? { ok: true, count: follower.count(), headHash: last?.hash ?? TRAIL_START }
        : { ok: false, fault },
    recordCount: isRecent || fault === null ? follower.count() : await tx.trailRecord.count(),
    last,
    checkpoints: own.checkpoints,
    state: isRecent ? null : await checkState(tx, recorded),
  }
}

/** The record that the last checkpoint vouches for; null where none does, and the whole trail has to be followed. */
async function findStart(tx: TransactionClient, checkpoints: readonly TrailCheckpoint[]): Promise<TrailRecord | null> {
  const sequence = checkpoints.at(-1)?.sequence
  const row = sequence === undefined ? null : await tx.trailRecord.findUnique({ where: { sequence } })
  return row === null ? null : readTrailRow(row)
}

async function findHashes(tx: TransactionClient, named: ReadonlySet<number>): Promise<(readonly [number, string])[]> {
  const asked = [...named]
  const found: (readonly [number, string])[] = []
  for (let at = 0; at < asked.length; at += PIECE) {
    const rows = await tx.trailRecord.findMany({
      where: { sequence: { in: asked.slice(at, at + PIECE) } },
      select: { sequence: true, hash: true },
    })
    found.push(...rows.map(({ sequence, hash }) => [sequence, hash] as const))
  }
  return found
}

/**
 * Every record, oldest first, with the checkpoints in the database and in the data folder, and what the database holds
 * against it: all in memory, as an export is.
 */
export function readWholeTrail(): Promise<CheckpointedTrail & { readonly state: StateCheck }> {
  return inReadTransaction(async (tx) => {
    const records = await loadTrail(tx)
    const recorded = collectState()
    for (const record of records) recorded.add(record)
    return { records, ...(await loadCheckpoints(tx, records[0]?.hash)), state: await checkState(tx, recorded) }
  })
}

/** @param firstHash  of the first record, by which the checkpoints in the data folder are found */
async function loadCheckpoints(tx: TransactionClient, firstHash: string | undefined): Promise<Checkpoints> {
  const checkpoints = await listCheckpoints(tx)
  const keys = await loadKeys(tx)
  const trailIds = new Set([firstHash, checkpoints[0]?.trailId].filter((id) => id !== undefined))
  const others = await Promise.all([...trailIds].map(readKeptCheckpoints))
  return {
    isExtract: false,
    checkpoints,
    others: others.flat(),
    verifyingKeyPem: keys.at(-1)?.verifyingKeyPem ?? '',
    earlierKeys: keys.flatMap(({ verifyingKeyPem, retiredAt }) =>
      retiredAt === null ? [] : [{ verifyingKeyPem, retiredAt }],
    ),
  }
}

/** Records after one, oldest first, a piece in memory at a time. */
async function* eachRecord(tx: TransactionClient, after: number): AsyncGenerator<TrailRecord> {
  let last = after
  for (;;) {
    const rows = await tx.trailRecord.findMany({
      where: { sequence: { gt: last } },
      orderBy: { sequence: 'asc' },
      take: PIECE,
    })
    for (const row of rows) yield readTrailRow(row)
    last = rows.at(-1)?.sequence ?? last
    if (rows.length < PIECE) return
  }
}

async function loadTrail(tx: TransactionClient): Promise<TrailRecord[]> {
  const records: TrailRecord[] = []
  for await (const record of eachRecord(tx, BEFORE_ALL)) records.push(record)
  return records
}
