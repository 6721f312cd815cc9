import 'server-only'
import { mkdir, readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { getSettings, log, writeWhole } from '@/lib/config'
import { checkpointSchema, hashCheckpoint, makeCheckpoint, type TrailCheckpoint } from '@/lib/package'
import type { TrailRecord } from '@/lib/review'
import { db, type TransactionClient } from '../store/client'
import { loadSigningKeys } from './signing-keys'

/** A cut shows back to the last checkpoint: after so many records there is another, however busy the day. */
const RECORDS_BETWEEN = 100

/** What a team relies on most is vouched for at once. */
const ALWAYS_AFTER = new Set(['revision-signed', 'revision-released', 'signing-key-rotated'])

/** Transactions that made a checkpoint: once committed, the checkpoint is kept beside the database too. */
const withCheckpoint = new WeakSet<TransactionClient>()

/** Makes a checkpoint of a record just written: after a signature and a release, every so many records, and daily. */
export async function makeCheckpointIfDue(tx: TransactionClient, record: TrailRecord): Promise<void> {
  const last = await tx.trailCheckpoint.findFirst({ orderBy: { sequence: 'desc' } })
  const isDue =
    last === null ||
    ALWAYS_AFTER.has(record.action) ||
    record.sequence - last.sequence >= RECORDS_BETWEEN ||
    record.at.slice(0, 10) !== last.at.slice(0, 10)
  if (!isDue) return
  const trailId = last?.trailId ?? (await findTrailId(tx))
  if (trailId === null) throw new Error('a checkpoint was asked for before the first record')
  const previousHash = last === null ? '' : hashCheckpoint(last)
  const { sequence, hash, at } = record
  // The record of a rotation is there already: its checkpoint bears the new key, and vouches for all before it.
  const { signingKeyPem } = await loadSigningKeys(tx)
  const checkpoint = makeCheckpoint({ sequence, hash, trailId, at, previousHash }, signingKeyPem)
  await tx.trailCheckpoint.create({ data: checkpoint })
  withCheckpoint.add(tx)
}

async function findTrailId(tx: TransactionClient): Promise<string | null> {
  const first = await tx.trailRecord.findFirst({ orderBy: { sequence: 'asc' }, select: { hash: true } })
  return first?.hash ?? null
}

export function listCheckpoints(tx: TransactionClient): Promise<TrailCheckpoint[]> {
  return tx.trailCheckpoint.findMany({ orderBy: { sequence: 'asc' } })
}

/**
 * Keeps the checkpoints of a committed transaction in the data folder: the person who cuts the database's trail would have to
 * find these too. That it cannot be written is logged and does not undo what was done; the next one catches up.
 */
export async function keepCheckpointsOf(tx: TransactionClient | null): Promise<void> {
  if (tx === null || !withCheckpoint.has(tx)) return
  try {
    await keepCheckpoints(await listCheckpoints(db()))
  } catch (error) {
    log.error('a checkpoint of the trail could not be kept in the data folder', { error: String(error) })
  }
}

async function keepCheckpoints(checkpoints: readonly TrailCheckpoint[]): Promise<void> {
  const [first] = checkpoints
  if (first === undefined) return
  const folder = getFolder(first.trailId)
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const there = new Set(await readdir(folder))
  for (const checkpoint of checkpoints) {
    const name = `${checkpoint.sequence}.json`
    if (there.has(name)) continue
    // Acts that end at the same moment write the same checkpoint: each under a name of its own until it is whole.
    const text = `${JSON.stringify(checkpoint)}\n`
    await writeWhole(path.join(/* turbopackIgnore: true */ folder, name), new TextEncoder().encode(text))
  }
}

/** Those in the data folder. One that cannot be read is an error that names the file: it must not be passed over. */
export async function readKeptCheckpoints(trailId: string): Promise<TrailCheckpoint[]> {
  const folder = getFolder(trailId)
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })
  const checkpoints: TrailCheckpoint[] = []
  for (const name of names.filter((candidate) => /^\d+\.json$/.test(candidate))) {
    const file = path.join(/* turbopackIgnore: true */ folder, name)
    try {
      checkpoints.push(checkpointSchema.parse(JSON.parse(await readFile(file, 'utf8'))))
    } catch (cause) {
      throw new Error(`${file} is not a checkpoint of the trail`, { cause })
    }
  }
  return checkpoints.sort((a, b) => a.sequence - b.sequence)
}

/** Each trail has a folder of its own: a database that was started again is no cut. */
function getFolder(trailId: string): string {
  return path.join(/* turbopackIgnore: true */ getSettings().dataFolder, 'checkpoints', trailId.slice(0, 16))
}
