import 'server-only'
import { readdir, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { log } from '@/lib/config'
import { inWriteTransaction } from '../../consequences/write'
import { listPictures } from '../../records/artwork-picture'
import type { TransactionClient } from '../../store/client'
import { getFilesFolder, getIncomingFolder } from '../../store/file-store'

const HOUR_MS = 3_600_000
/** Longer than any act takes between a file's arrival and its row; a package is put down seconds before. */
const GRACE_MS = 24 * HOUR_MS
/** So many are decided on while nobody else writes. */
const MOST_AT_ONCE = 200

export interface Swept {
  readonly fileCount: number
  readonly sizeBytes: number
}

/**
 * Takes away kept files that no record refers to, and what was left of files that never arrived. Each batch is decided on and
 * removed while nobody else writes, and an act puts its file in place while it writes: so a file goes only where no
 * record refers to it, nor comes to.
 */
export async function sweepFiles({ graceMs = GRACE_MS }: { readonly graceMs?: number } = {}): Promise<Swept> {
  const isOld = async (place: string): Promise<number | null> => {
    const found = await stat(place).catch(() => null)
    // By the clock of the file system, whatever time the application goes by.
    return found?.isFile() === true && found.mtimeMs < Date.now() - graceMs ? found.size : null
  }
  const swept = { fileCount: 0, sizeBytes: 0 }
  const remove = async (place: string): Promise<void> => {
    const size = await isOld(place)
    if (size === null) return
    await rm(place, { force: true })
    swept.fileCount += 1
    swept.sizeBytes += size
  }
  for (const name of await list(getIncomingFolder())) {
    await remove(path.join(/* turbopackIgnore: true */ getIncomingFolder(), name))
  }
  for (const shelf of (await list(getFilesFolder())).filter((name) => /^[0-9a-f]{2}$/.test(name))) {
    const folder = path.join(/* turbopackIgnore: true */ getFilesFolder(), shelf)
    const inFolder = (name: string) => path.join(/* turbopackIgnore: true */ folder, name)
    const old: string[] = []
    for (const name of await list(folder)) if ((await isOld(inFolder(name))) !== null) old.push(name)
    for (let start = 0; start < old.length; start += MOST_AT_ONCE) {
      const batch = old.slice(start, start + MOST_AT_ONCE)
      await inWriteTransaction(async (tx) => {
        const used = await findUsed(tx, batch)
        for (const name of batch) if (!used.has(name)) await remove(inFolder(name))
      })
    }
  }
  if (swept.fileCount > 0) log.info('files swept', { ...swept })
  return swept
}

/** Those of the hashes that some record names. A test holds this list against the models. */
async function findUsed(tx: TransactionClient, hashes: string[]): Promise<ReadonlySet<string>> {
  const query = { where: { sha256: { in: hashes } }, select: { sha256: true } } as const
  const rows = [
    ...(await tx.attachment.findMany(query)),
    ...(await tx.artwork.findMany(query)),
    ...(await tx.artworkRole.findMany(query)),
    ...(await tx.package.findMany(query)),
    ...(await listPictures(tx, hashes)),
  ]
  return new Set(rows.map(({ sha256 }) => sha256))
}

async function list(folder: string): Promise<string[]> {
  return readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })
}
