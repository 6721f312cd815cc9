import 'server-only'
import { chmod, cp, mkdir, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { getSettings, now } from '@/lib/config'
import { write } from '../../consequences/write'
import { read } from '../../reads/read'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { db, getDatabase } from '../../store/client'
import { outcomeOf, refuseClash } from '../../store/errors'
import { getFilesFolder, getIncomingFolder } from '../../store/file-store'
import type { ActResult } from '../../views'

export interface Backup {
  readonly folder: string
  readonly sizeBytes: number
}

/**
 * A consistent copy of the SQLite database, made while the server runs, with the kept files beside it, in a folder of its
 * own under the data folder. Secrets are left out: the person who keeps the backup must not be able to sign packages with it.
 * On PostgreSQL it is refused, naming the server's own tool.
 */
export async function createBackup(actor: Actor): Promise<ActResult<Backup>> {
  await read(actor, async ({ rights }) => requireInWorkspace(rights, 'backup:make'))
  const made = await outcomeOf(copyAll)
  if (!made.ok) return made
  return write(actor, 'create-backup', {}, async ({ rights, record }) => {
    requireInWorkspace(rights, 'backup:make')
    await record({
      action: 'backup-made',
      subject: { kind: 'workspace', id: 'workspace' },
      details: { folder: path.basename(made.value.folder), sizeBytes: made.value.sizeBytes },
    })
    return made.value
  })
}

async function copyAll(): Promise<Backup> {
  if (getDatabase().kind === 'postgresql') {
    refuseClash(
      `The database is PostgreSQL: back it up with the server's own tool (pg_dump), then copy the folder ${getFilesFolder()}.`,
    )
  }
  const parent = path.join(/* turbopackIgnore: true */ getSettings().dataFolder, 'backups')
  const name = now().toISOString().replaceAll(/[:.]/g, '-')
  const folder = path.join(/* turbopackIgnore: true */ parent, name)
  const partial = `${folder}.partial`
  await mkdir(partial, { recursive: true, mode: 0o700 })
  try {
    const database = path.join(/* turbopackIgnore: true */ partial, 'bendworthy.db')
    // The database comes first: every file that it refers to is then among those copied after it.
    await db().$executeRaw`VACUUM INTO ${database}`
    await chmod(database, 0o600)
    const files = getFilesFolder()
    if ((await stat(files).catch(() => null)) !== null) {
      await cp(files, path.join(/* turbopackIgnore: true */ partial, 'files'), {
        recursive: true,
        // Neither what is being written, nor what has not arrived.
        filter: (source) => !source.endsWith('.partial') && source !== getIncomingFolder(),
      })
    }
    await rename(partial, folder)
    const { size } = await stat(path.join(/* turbopackIgnore: true */ folder, 'bendworthy.db'))
    return { folder, sizeBytes: size }
  } catch (error) {
    await rm(partial, { recursive: true, force: true })
    throw error
  }
}
