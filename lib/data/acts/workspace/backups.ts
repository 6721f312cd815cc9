import 'server-only'
import { cp, mkdir, readdir, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { getSettings, now } from '@/lib/config'
import { APPLICATION, appendToTrail } from '../../consequences/trail'
import { inWriteTransaction, write } from '../../consequences/write'
import { read } from '../../reads/read'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { getDatabase } from '../../store/client'
import { copyDatabase } from '../../store/copy-database'
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
  const made = await outcomeOf(copySqlite)
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

async function copySqlite(): Promise<Backup> {
  if (getDatabase().kind === 'postgresql') {
    refuseClash(
      `The database is PostgreSQL: its backup is made on the server, by "npm run backup" or by pg_dump and a copy of the folder ${getFilesFolder()}.`,
    )
  }
  return copyAll()
}

/**
 * A backup by the operator of the installation, on either database, recorded as the application's own act.
 * @param keep  how many backups are left, this one included; older ones are deleted
 * @throws CopyError
 */
export async function makeBackup(keep: number | null): Promise<Backup> {
  const backup = await copyAll()
  await inWriteTransaction((tx) =>
    appendToTrail(tx, now(), APPLICATION, {
      action: 'backup-made',
      subject: { kind: 'workspace', id: 'workspace' },
      details: { folder: path.basename(backup.folder), sizeBytes: backup.sizeBytes },
    }),
  )
  if (keep !== null) await deleteOlderBackups(path.dirname(backup.folder), keep)
  return backup
}

/** As `copyAll` names them: anything else in the folder is somebody's own. */
const BACKUP_NAME = /^\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z$/

async function deleteOlderBackups(parent: string, keep: number): Promise<void> {
  const names = (await readdir(parent)).filter((name) => BACKUP_NAME.test(name)).sort()
  for (const name of names.slice(0, -keep)) {
    await rm(path.join(/* turbopackIgnore: true */ parent, name), { recursive: true, force: true })
  }
}

async function copyAll(): Promise<Backup> {
  const database = getDatabase()
  const { dataFolder, databaseUrl } = getSettings()
  const parent = path.join(/* turbopackIgnore: true */ dataFolder, 'backups')
  const name = now().toISOString().replaceAll(/[:.]/g, '-')
  const folder = path.join(/* turbopackIgnore: true */ parent, name)
  const partial = `${folder}.partial`
  await mkdir(partial, { recursive: true, mode: 0o700 })
  try {
    // The database comes first: every file that it refers to is then among those copied after it.
    const copied = await copyDatabase(database, databaseUrl, partial)
    const { size } = await stat(copied)
    const files = getFilesFolder()
    if ((await stat(files).catch(() => null)) !== null) {
      await cp(files, path.join(/* turbopackIgnore: true */ partial, 'files'), {
        recursive: true,
        // Neither what is being written, nor what has not arrived.
        filter: (source) => !source.endsWith('.partial') && source !== getIncomingFolder(),
      })
    }
    await rename(partial, folder)
    return { folder, sizeBytes: size }
  } catch (error) {
    await rm(partial, { recursive: true, force: true })
    throw error
  }
}
