import { randomUUID } from 'node:crypto'
import { copyFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { inject } from 'vitest'
import type { DatabaseKind } from '@/lib/config'
import { withDatabase } from './base-databases'
import { makeShortLivedFolder } from './short-lived-folder.mjs'

export interface CreatedDatabase {
  readonly url: string
  /** What a copy of it names as its origin. */
  readonly origin: string
  readonly remove: () => Promise<void>
}

interface Creation {
  readonly isDurable?: boolean
  /** Copied from this file, or this database of the server; a migrated, empty one unless said otherwise. */
  readonly origin?: string
  /** Put before the name on the server; by it others know whose it is. */
  readonly prefix?: string
}

/** The caller removes it. */
export function createTestDatabase(kind: DatabaseKind, creation: Creation = {}): Promise<CreatedDatabase> {
  return kind === 'sqlite' ? createSqlite(creation) : createPostgres(creation)
}

async function createSqlite({ origin = inject('baseDatabases').sqliteFile }: Creation): Promise<CreatedDatabase> {
  const folder = makeShortLivedFolder('bendworthy-db-')
  const file = path.join(folder, 'test.db')
  copyFileSync(origin, file)
  return {
    url: `file:${file}`,
    origin: file,
    remove: async () => rmSync(folder, { recursive: true, force: true }),
  }
}

async function createPostgres({
  isDurable = false,
  origin,
  prefix = `bendworthy_test_${process.pid}_`,
}: Creation): Promise<CreatedDatabase> {
  const { postgres } = inject('baseDatabases')
  if (!postgres.isUp) throw new Error(`PostgreSQL does not answer: ${postgres.reason}`)
  const { adminUrl, template } = postgres
  const name = `${prefix}${randomUUID().slice(0, 8)}`
  await administer(adminUrl, `CREATE DATABASE "${name}" TEMPLATE "${origin ?? template}"`)
  return {
    url: isDurable ? withDatabase(adminUrl, name) : withoutWaiting(withDatabase(adminUrl, name)),
    origin: name,
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
