import 'server-only'
import { createHash, randomUUID } from 'node:crypto'
import { mkdir, open, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { getSettings, log, writeWhole } from '@/lib/config'
import { sha256Hex } from '@/lib/review'
import { refuseBusy } from './errors'
import { FILE_HEAD_BYTES } from './file-kinds'

/** Artwork archives of real parts stay well below this. */
export const MAX_FILE_BYTES = 25 * 1024 * 1024

const SHA256 = /^[0-9a-f]{64}$/

/** Where the bytes with that hash lie: `files/ab/abcd...` in the data folder. */
function getStoredPath(sha256: string): string {
  // The hash comes from the database; the check keeps a damaged one from becoming a path elsewhere.
  if (!SHA256.test(sha256)) throw new Error('a stored file has no valid SHA-256')
  return path.join(/* turbopackIgnore: true */ getFilesFolder(), sha256.slice(0, 2), sha256)
}

export function getFilesFolder(): string {
  return path.join(/* turbopackIgnore: true */ getSettings().dataFolder, 'files')
}

/** Where files lie that are still on their way, or whose act has not ended. */
export function getIncomingFolder(): string {
  return path.join(/* turbopackIgnore: true */ getFilesFolder(), 'incoming')
}

/**
 * Keeps bytes under their SHA-256. A file under its hash is whole. Called shortly before the transaction that refers to it; if
 * that fails, the sweep takes the file away.
 */
export async function keepFile(bytes: Uint8Array): Promise<{ sha256: string; sizeBytes: number }> {
  const sha256 = sha256Hex(bytes)
  const target = getStoredPath(sha256)
  await mkdir(path.dirname(target), { recursive: true, mode: 0o700 })
  // Also where it is there already: what is put down again is not old, and an old copy may be damaged.
  await writeWhole(target, bytes)
  return { sha256, sizeBytes: bytes.length }
}

/** @throws Error when the file is gone or its bytes no longer have that hash: damage that must not pass silently */
export async function readKeptFile(sha256: string): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await readFile(getStoredPath(sha256))
  if (sha256Hex(bytes) !== sha256) throw new Error(`the stored file ${sha256} is damaged: its bytes have another hash`)
  return new Uint8Array(bytes)
}

/** A file's bytes, at once or as they arrive. */
export type FileBytes = Uint8Array | AsyncIterable<Uint8Array>

/** A file that has arrived whole, and belongs to nothing yet. */
export interface ReceivedFile {
  readonly sha256: string
  readonly sizeBytes: number
  /** The first bytes: all that its kind is found by. */
  readonly head: Uint8Array
  /** Puts it under its hash. Within the transaction that refers to it, so that the sweep sees both or neither. */
  readonly publish: () => Promise<void>
  /** Takes away what was not put under its hash. */
  readonly discard: () => Promise<void>
}

interface ReceiveOptions {
  readonly mostBytes: number
  /** Refuses a file that has more; never returns. */
  readonly refuseTooLarge: (bytesSoFar: number) => never
}

/**
 * Writes a file to disk as it arrives: no more than a piece of it is ever in memory, and it is counted while it comes. What
 * ends early, whether the connection broke, the disk is full or the file is too large, leaves nothing behind.
 *
 * @throws RefusalError, or the error of whatever the bytes came from
 */
export async function receiveFile(bytes: FileBytes, options: ReceiveOptions): Promise<ReceivedFile> {
  const folder = getIncomingFolder()
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const place = path.join(/* turbopackIgnore: true */ folder, randomUUID())
  const discard = () => rm(place, { force: true })
  try {
    const counted = await writeCounted(place, bytes, options)
    const publish = async (): Promise<void> => {
      const target = getStoredPath(counted.sha256)
      await mkdir(path.dirname(target), { recursive: true, mode: 0o700 })
      // By the clock that file systems go by, which is the one that the sweep compares with.
      const at = new Date()
      await utimes(place, at, at).catch(ignoreAbsent)
      // A transaction that is run again finds it in its place.
      await rename(place, target).catch(ignoreAbsent)
      await stat(target)
    }
    return { ...counted, publish, discard }
  } catch (error) {
    await discard()
    if (!isDiskFull(error)) throw error
    log.error('disk full', { folder, error })
    refuseBusy(
      'The disk of this server is full. The file was not stored; the administrator of this installation can make room.',
    )
  }
}

async function writeCounted(place: string, bytes: FileBytes, { mostBytes, refuseTooLarge }: ReceiveOptions) {
  const hash = createHash('sha256')
  const headParts: Uint8Array[] = []
  let sizeBytes = 0
  async function* count() {
    for await (const part of bytes instanceof Uint8Array ? [bytes] : bytes) {
      if (sizeBytes < FILE_HEAD_BYTES) headParts.push(part.subarray(0, FILE_HEAD_BYTES - sizeBytes))
      sizeBytes += part.length
      if (sizeBytes > mostBytes) refuseTooLarge(sizeBytes)
      hash.update(part)
      yield part
    }
  }
  const file = await open(place, 'wx', 0o600)
  try {
    await writeFile(file, count())
    await file.sync()
  } finally {
    await file.close()
  }
  return { sha256: hash.digest('hex'), sizeBytes, head: new Uint8Array(Buffer.concat(headParts)) }
}

/** ENOSPC and EDQUOT (POSIX): no room on the device, or none left for this account. */
function isDiskFull(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException | null)?.code
  return code === 'ENOSPC' || code === 'EDQUOT'
}

function ignoreAbsent(error: NodeJS.ErrnoException): void {
  if (error.code !== 'ENOENT') throw error
}
