import 'server-only'
import { mkdir, readFile, stat } from 'node:fs/promises'
import path from 'node:path'
import { getSettings, writeWhole } from '@/lib/config'
import { sha256Hex } from '@/lib/review'

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

/**
 * Keeps bytes under their SHA-256. A file under its hash is whole.
 * Called before the transaction that refers to it; a transaction that fails leaves only an unused file.
 */
export async function keepFile(bytes: Uint8Array): Promise<{ sha256: string; sizeBytes: number }> {
  const sha256 = sha256Hex(bytes)
  const target = getStoredPath(sha256)
  const existing = await stat(target).catch(() => null)
  if (existing?.size === bytes.length) return { sha256, sizeBytes: bytes.length }
  await mkdir(path.dirname(target), { recursive: true, mode: 0o700 })
  await writeWhole(target, bytes)
  return { sha256, sizeBytes: bytes.length }
}

/** @throws Error when the file is gone or its bytes no longer have that hash: damage that must not pass silently */
export async function readKeptFile(sha256: string): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await readFile(getStoredPath(sha256))
  if (sha256Hex(bytes) !== sha256) throw new Error(`the stored file ${sha256} is damaged: its bytes have another hash`)
  return new Uint8Array(bytes)
}
