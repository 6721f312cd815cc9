import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { ensureSecrets } from '@/lib/config/secrets'
import { applyMigrations, type MigrationPlaces, migrationPlaces } from '@/lib/data/store/migration'
import { cacheFolder, rootFolder } from '../../scripts/steps/places.mjs'
import { makeShortLivedFolder } from './short-lived-folder.mjs'

/**
 * What the tests copy their databases from: one migrated SQLite file and one migrated PostgreSQL template. Both carry a
 * print of all migrations in their names, so a changed migration makes new ones.
 */
export interface BaseDatabases {
  readonly sqliteFile: string
  readonly postgres: PostgresBase
  readonly run: TestRun
}

/** What the test files of one run share, and nothing after it. */
export interface TestRun {
  /** Databases whose names begin with it go at the end of the run; those of a run that was killed, at the start of the next. */
  readonly databasePrefix: string
  /** Holds the installation's secrets and the reviews that `prepared-reviews.ts` keeps. */
  readonly folder: string
}

export type PostgresBase =
  | { readonly isUp: true; readonly adminUrl: string; readonly template: string }
  | { readonly isUp: false; readonly isRequired: boolean; readonly reason: string }

declare module 'vitest' {
  interface ProvidedContext {
    baseDatabases: BaseDatabases
  }
}

const ADMIN_URL = process.env.BENDWORTHY_TEST_POSTGRES_URL ?? 'postgresql://postgres@127.0.0.1:5432/postgres'
/** On a machine that decides about a change, half of the data layer must not go untested. */
const IS_POSTGRES_REQUIRED = process.env.CI === 'true' || process.env.BENDWORTHY_REQUIRE_POSTGRES === '1'
const A_DAY_MS = 86_400_000

export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const places = migrationPlaces(rootFolder)
  const print = fingerprint(places)
  const [sqliteFile, postgres] = await Promise.all([prepareSqlite(places, print), preparePostgres(places, print)])
  if (!postgres.isUp) {
    const consequence = postgres.isRequired ? 'which is required here: they fail' : 'they are skipped'
    process.stdout.write(`Tests on PostgreSQL need a server at ${ADMIN_URL} (${postgres.reason}); ${consequence}.\n`)
  }
  const run = { databasePrefix: `bendworthy_test_${process.pid}_`, folder: makeShortLivedFolder('bendworthy-run-') }
  ensureSecrets(run.folder)
  project.provide('baseDatabases', { sqliteFile, postgres, run })
  return async () => {
    rmSync(run.folder, { recursive: true, force: true })
    if (postgres.isUp) await dropDatabases(ADMIN_URL, run.databasePrefix)
  }
}

function fingerprint({ migrationsFolder }: MigrationPlaces): string {
  const hash = createHash('sha256')
  const files = readdirSync(migrationsFolder, { recursive: true, encoding: 'utf8' }).sort()
  for (const file of files) {
    const absolute = path.join(migrationsFolder, file)
    if (statSync(absolute).isFile()) hash.update(`${file}\0`).update(readFileSync(absolute)).update('\0')
  }
  return hash.digest('hex').slice(0, 16)
}

async function prepareSqlite(places: MigrationPlaces, print: string): Promise<string> {
  const base = path.join(cacheFolder, `test-${print}.db`)
  if (existsSync(base)) return base
  mkdirSync(cacheFolder, { recursive: true })
  for (const name of readdirSync(cacheFolder)) {
    // Left behind by earlier migrations; a young one may belong to a run that is going on.
    const old = path.join(cacheFolder, name)
    if (/^test-.*\.db/.test(name) && Date.now() - statSync(old).mtimeMs > A_DAY_MS) rmSync(old, { force: true })
  }
  const draft = `${base}.${process.pid}`
  await applyMigrations(`file:${draft}`, places)
  renameSync(draft, base)
  return base
}

async function preparePostgres(places: MigrationPlaces, print: string): Promise<PostgresBase> {
  const admin = new pg.Client({ connectionString: ADMIN_URL, connectionTimeoutMillis: 3_000 })
  try {
    await admin.connect()
  } catch (error) {
    const reason = error instanceof Error && error.message !== '' ? error.message : 'no answer'
    return { isUp: false, isRequired: IS_POSTGRES_REQUIRED, reason }
  }
  try {
    await dropLeftovers(admin)
    const template = `bendworthy_template_${print}`
    if (!(await databaseExists(admin, template))) {
      const draft = `bendworthy_test_${process.pid}_template`
      await admin.query(`CREATE DATABASE "${draft}"`)
      await applyMigrations(withDatabase(ADMIN_URL, draft), places)
      // Two runs may have made it side by side; the first one's is as good.
      const renaming = admin.query(`ALTER DATABASE "${draft}" RENAME TO "${template}"`)
      await renaming.catch(() => admin.query(`DROP DATABASE IF EXISTS "${draft}" WITH (FORCE)`))
    }
    return { isUp: true, adminUrl: ADMIN_URL, template }
  } finally {
    await admin.end()
  }
}

async function databaseExists(admin: pg.Client, name: string): Promise<boolean> {
  const { rows } = await admin.query('SELECT 1 FROM pg_database WHERE datname = $1', [name])
  return rows.length > 0
}

/** Databases of runs that were killed: their names carry the process that made them. */
async function dropLeftovers(admin: pg.Client): Promise<void> {
  const { rows } = await admin.query<{ datname: string }>(
    "SELECT datname FROM pg_database WHERE datname LIKE 'bendworthy\\_test\\_%'",
  )
  for (const { datname } of rows) {
    const processId = Number(/^bendworthy_test_(\d+)_/.exec(datname)?.[1])
    if (!isRunning(processId)) await admin.query(`DROP DATABASE IF EXISTS "${datname}" WITH (FORCE)`)
  }
}

async function dropDatabases(adminUrl: string, prefix: string): Promise<void> {
  const admin = new pg.Client({ connectionString: adminUrl })
  await admin.connect()
  try {
    const { rows } = await admin.query<{ datname: string }>(
      'SELECT datname FROM pg_database WHERE starts_with(datname, $1)',
      [prefix],
    )
    for (const { datname } of rows) await admin.query(`DROP DATABASE IF EXISTS "${datname}" WITH (FORCE)`)
  } finally {
    await admin.end()
  }
}

function isRunning(processId: number): boolean {
  try {
    process.kill(processId, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** The same server's address with another database in it. */
export function withDatabase(url: string, name: string): string {
  const address = new URL(url)
  address.pathname = `/${name}`
  return address.href
}
