import { randomUUID } from 'node:crypto'
import { copyFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { afterAll, afterEach, beforeAll, beforeEach, describe, inject, it } from 'vitest'
import type { DatabaseKind } from '@/lib/config'
import { type Database, openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { withDatabase } from './base-databases'
import { makeShortLivedFolder } from './short-lived-folder'

/** A migrated, empty database of a test's own. */
export interface TestDatabase {
  readonly kind: DatabaseKind
  readonly url: string
  readonly database: Database
}

interface CreatedDatabase {
  readonly url: string
  readonly remove: () => Promise<void>
}

/**
 * Run the same tests on SQLite and on PostgreSQL. Each time the functions of lib/data work on a fresh, migrated, empty
 * database: one for all tests of the block, or one for each. PostgreSQL waits for its disk only where `isDurable` says so.
 *
 * @param body  defines the tests; `current()` gives the database, inside tests and hooks only
 * @example
 * describeOnBothDatabases('answers', (current) => {
 *   it('records who answered', async () => { … })
 * })
 */
export function describeOnBothDatabases(
  title: string,
  body: (current: () => TestDatabase, kind: DatabaseKind) => void,
  { fresh = 'block', isDurable = false }: { fresh?: 'block' | 'test'; isDurable?: boolean } = {},
): void {
  const { postgres } = inject('baseDatabases')
  describe(`${title} (SQLite)`, () => defineOn('sqlite', body, { fresh, isDurable }))
  if (!postgres.isUp && postgres.isRequired) {
    it(`${title} (PostgreSQL)`, () => {
      throw new Error(`PostgreSQL is required here and does not answer: ${postgres.reason}`)
    })
    return
  }
  describe.skipIf(!postgres.isUp)(`${title} (PostgreSQL)`, () => defineOn('postgresql', body, { fresh, isDurable }))
}

function defineOn(
  kind: DatabaseKind,
  body: (current: () => TestDatabase, kind: DatabaseKind) => void,
  { fresh, isDurable }: { fresh: 'block' | 'test'; isDurable: boolean },
): void {
  let created: CreatedDatabase | undefined
  let current: TestDatabase | undefined
  const open = async (): Promise<void> => {
    created = await createTestDatabase(kind, isDurable)
    current = { kind, url: created.url, database: openDatabase(created.url) }
    replaceDatabase(current.database)
  }
  const close = async (): Promise<void> => {
    replaceDatabase(null)
    await current?.database.close()
    await created?.remove()
  }
  if (fresh === 'block') {
    beforeAll(open)
    afterAll(close)
  } else {
    beforeEach(open)
    afterEach(close)
  }
  body(() => {
    if (current === undefined) throw new Error('the database is there in tests and hooks only')
    return current
  }, kind)
}

/** A migrated, empty database; the caller removes it. */
export function createTestDatabase(kind: DatabaseKind, isDurable = false): Promise<CreatedDatabase> {
  return kind === 'sqlite' ? createSqlite() : createPostgres(isDurable)
}

async function createSqlite(): Promise<CreatedDatabase> {
  const folder = makeShortLivedFolder('bendworthy-db-')
  const file = path.join(folder, 'test.db')
  copyFileSync(inject('baseDatabases').sqliteFile, file)
  return { url: `file:${file}`, remove: async () => rmSync(folder, { recursive: true, force: true }) }
}

async function createPostgres(isDurable: boolean): Promise<CreatedDatabase> {
  const { postgres } = inject('baseDatabases')
  if (!postgres.isUp) throw new Error(`PostgreSQL does not answer: ${postgres.reason}`)
  const { adminUrl, template } = postgres
  const name = `bendworthy_test_${process.pid}_${randomUUID().slice(0, 8)}`
  await administer(adminUrl, `CREATE DATABASE "${name}" TEMPLATE "${template}"`)
  return {
    url: isDurable ? withDatabase(adminUrl, name) : withoutWaiting(withDatabase(adminUrl, name)),
    remove: () => administer(adminUrl, `DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`),
  }
}

/** A commit that the server loses when the machine fails is no loss here. */
function withoutWaiting(url: string): string {
  const address = new URL(url)
  address.searchParams.set('options', '-c synchronous_commit=off')
  return address.href
}

async function administer(adminUrl: string, sql: string): Promise<void> {
  const admin = new pg.Client({ connectionString: adminUrl })
  await admin.connect()
  try {
    await admin.query(sql)
  } finally {
    await admin.end()
  }
}
