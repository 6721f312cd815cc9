import 'server-only'
import { mkdirSync } from 'node:fs'
import path from 'node:path'
import { DriverAdapterError } from '@prisma/driver-adapter-utils'
import { withoutPassword } from '@/lib/config'
import { isBusy } from '../sqlite-statements'
import { type MigrationPlaces, readMigrations } from './migration-files'
import { type MigrationList, NO_FILTER, type SchemaEngine, withSchemaEngine } from './schema-engine'

/** Thrown when a database could not be brought up to date. The message says what happened, what became of the data, and what to do. */
export class MigrationError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options)
    this.name = 'MigrationError'
  }
}

/**
 * Bring a database up to date: apply, in order, the migrations that it has not had. Creates a SQLite file that is absent.
 * Each migration is applied whole or not at all, on both databases.
 *
 * @param url  `file:` with an absolute path, or `postgresql:`
 * @param beforeChange  runs before a database that was migrated before is changed
 * @returns names of the migrations applied now
 * @throws MigrationError
 */
export async function applyMigrations(
  url: string,
  places: MigrationPlaces,
  beforeChange: () => Promise<void> = async () => {},
): Promise<string[]> {
  const isFile = url.startsWith('file:')
  if (isFile) mkdirSync(path.dirname(url.slice('file:'.length)), { recursive: true })
  const migrationsList = readMigrations(places, isFile ? 'sqlite' : 'postgresql')
  const known = migrationsList.migrationDirectories.map((directory) => directory.path)

  return withSchemaEngine(url, async (engine, getDriverError) => {
    const history = await findHistory(engine, migrationsList)
    if (history !== null) {
      // A migration that was broken off (a power cut, a killed process) left nothing but its record: try it again.
      for (const migrationName of history.failedMigrationNames) await engine.markMigrationRolledBack({ migrationName })
      refuseForeignHistory(history, url)
      // Asked first, since applying takes a SQLite file for itself even when there is nothing to apply.
      if (history.history === null && history.failedMigrationNames.length === 0) return []
      await beforeChange()
    }
    try {
      const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters: NO_FILTER })
      return appliedMigrationNames
    } catch (error) {
      if (isBusy(getDriverError())) {
        throw new MigrationError(
          `The database ${withoutPassword(url)} must be updated, but another program has it open; stop that program (a running server?) and start again.`,
          { cause: error },
        )
      }
      const failed = (await findHistory(engine, migrationsList))?.failedMigrationNames[0]
      if (failed === undefined) throw error
      await engine.markMigrationRolledBack({ migrationName: failed })
      const before = known[known.indexOf(failed) - 1]
      throw new MigrationError(
        `The migration ${failed} failed and was rolled back: ${wordsOf(getDriverError() ?? error)}. The database ${withoutPassword(url)} is ${before === undefined ? 'still empty' : `as the migration ${before} left it, with its data`}; correct the cause and start again.`,
        { cause: error },
      )
    }
  }).catch((error: unknown) => {
    if (error instanceof MigrationError) throw error
    throw new MigrationError(`The database ${withoutPassword(url)} could not be opened: ${wordsOf(error)}.`, {
      cause: error,
    })
  })
}

type History = Awaited<ReturnType<SchemaEngine['diagnoseMigrationHistory']>>

/** What the database records of its migrations; null where it has no such record yet. */
async function findHistory(engine: SchemaEngine, migrationsList: MigrationList): Promise<History | null> {
  try {
    return await engine.diagnoseMigrationHistory({ migrationsList, optInToShadowDatabase: false, filters: NO_FILTER })
  } catch (error) {
    // On SQLite the engine reads the table without asking whether it is there.
    if (error instanceof Error && error.message.includes('`_prisma_migrations` does not exist')) return null
    throw error
  }
}

function refuseForeignHistory({ editedMigrationNames, failedMigrationNames, history }: History, url: string): void {
  if (editedMigrationNames.length > 0) {
    throw new MigrationError(
      `The migration ${editedMigrationNames.join(', ')} was changed after this database had it. Restore its SQL and make the change in a new migration.`,
    )
  }
  const unknown =
    history !== null && 'unpersistedMigrationNames' in history
      ? history.unpersistedMigrationNames.filter((name) => !failedMigrationNames.includes(name))
      : []
  if (unknown.length > 0) {
    throw new MigrationError(
      `The database ${withoutPassword(url)} has migrations that this version does not know: ${unknown.join(', ')}. A newer version has used it; start that version.`,
    )
  }
}

function wordsOf(error: unknown): string {
  const text =
    error instanceof DriverAdapterError ? wordsOfDriver(error) : String(error instanceof Error ? error.message : error)
  return (text.trim().split('\n')[0] ?? '').replace(/\.$/, '')
}

function wordsOfDriver({ cause }: DriverAdapterError): string {
  if (cause.originalMessage) return cause.originalMessage
  if ('message' in cause) return cause.message
  // Such as DatabaseNotReachable.
  return cause.kind.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase()
}
