import 'server-only'
import { now } from '@/lib/config'
import { type CheckpointedTrail, checkTrailWithCheckpoints, makeTrailFile } from '@/lib/package'
import type { TrailRecord } from '@/lib/review'
import { readTrailRow } from '../consequences/trail'
import { write } from '../consequences/write'
import { type Actor, requireInWorkspace } from '../records/authorization'
import { WORKSPACE_ID } from '../records/settings-record'
import { loadKeys } from '../records/signing-keys'
import { listCheckpoints, readKeptCheckpoints } from '../records/trail-checkpoints'
import { inReadTransaction, type TransactionClient } from '../store/client'
import { checkState, type StateCheck } from '../store/vouched/state-check'
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
export function checkWholeTrail(actor: Actor): Promise<WholeTrailCheck> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'trail:check')
    const trail = await loadWholeTrail(tx)
    const check = checkTrailWithCheckpoints(trail)
    return {
      recordCount: trail.records.length,
      firstBad: check.ok ? null : { sequence: check.fault.sequence, reason: check.fault.reason },
      checkpointCount: trail.checkpoints.length,
      vouchedUpTo: trail.checkpoints.at(-1)?.sequence ?? 0,
      state: await checkState(tx, trail.records),
    }
  })
}

/**
 * Every record, oldest first, with the checkpoints in the database and in the data folder, and what the database holds
 * against it. For the command that checks the trail, which the operator of the installation calls.
 */
export function readWholeTrail(): Promise<CheckpointedTrail & { readonly state: StateCheck }> {
  return inReadTransaction(async (tx) => {
    const trail = await loadWholeTrail(tx)
    return { ...trail, state: await checkState(tx, trail.records) }
  })
}

async function loadWholeTrail(tx: TransactionClient): Promise<CheckpointedTrail> {
  const records = await loadTrail(tx)
  const checkpoints = await listCheckpoints(tx)
  const keys = await loadKeys(tx)
  const trailIds = new Set([records[0]?.hash, checkpoints[0]?.trailId].filter((id) => id !== undefined))
  const others = await Promise.all([...trailIds].map(readKeptCheckpoints))
  return {
    records,
    isExtract: false,
    checkpoints,
    others: others.flat(),
    verifyingKeyPem: keys.at(-1)?.verifyingKeyPem ?? '',
    earlierKeys: keys.flatMap(({ verifyingKeyPem, retiredAt }) =>
      retiredAt === null ? [] : [{ verifyingKeyPem, retiredAt }],
    ),
  }
}

export async function loadTrail(tx: TransactionClient): Promise<TrailRecord[]> {
  const records: TrailRecord[] = []
  for (;;) {
    const rows = await tx.trailRecord.findMany({
      where: { sequence: { gt: records.at(-1)?.sequence ?? BEFORE_ALL } },
      orderBy: { sequence: 'asc' },
      take: PIECE,
    })
    records.push(...rows.map(readTrailRow))
    if (rows.length < PIECE) return records
  }
}
