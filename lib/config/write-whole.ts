import 'server-only'
import { randomUUID } from 'node:crypto'
import { open, rename, rm } from 'node:fs/promises'
import path from 'node:path'

/**
 * Writes a file beside its place, flushes it and renames it: a file under its name is whole. Readable by its owner alone.
 * The folder must be there.
 *
 * @throws Error of the file system; nothing is left behind
 */
export async function writeWhole(target: string, bytes: Uint8Array): Promise<void> {
  const partial = path.join(/* turbopackIgnore: true */ path.dirname(target), `${randomUUID()}.partial`)
  try {
    const file = await open(partial, 'wx', 0o600)
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(partial, target)
  } catch (error) {
    await rm(partial, { force: true })
    throw error
  }
}
