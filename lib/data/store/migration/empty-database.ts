import 'server-only'
import { rmSync } from 'node:fs'
import { type Database, openDatabase } from '../client'
import { SEARCH_TABLES } from '../word-search'

const MIGRATIONS_TABLE = '_prisma_migrations'

/** Whether no table of the application holds a row, whatever its tables are. */
export async function isEmptyDatabase({ kind, client }: Database): Promise<boolean> {
  const tables = await client.$queryRawUnsafe<{ name: string }[]>(
    kind === 'sqlite'
      ? `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND name NOT LIKE '${SEARCH_TABLES}' ESCAPE '\\'`
      : `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = current_schema() AND table_type = 'BASE TABLE'`,
  )
  for (const { name } of tables) {
    if (name === MIGRATIONS_TABLE) continue
    const rows = await client.$queryRawUnsafe<unknown[]>(`SELECT 1 AS found FROM "${name}" LIMIT 1`)
    if (rows.length > 0) return false
  }
  return true
}

/**
 * Remove everything that a database holds, tables included. Nobody else may have it open.
 * @param url  `file:` with an absolute path, or `postgresql:`
 */
export async function wipeDatabase(url: string): Promise<void> {
  if (url.startsWith('file:')) {
    const file = url.slice('file:'.length)
    for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${ending}`, { force: true })
    return
  }
  const database = openDatabase(url)
  try {
    const [row] = await database.client.$queryRawUnsafe<{ schema: string }[]>('SELECT current_schema()::text AS schema')
    const schema = row?.schema ?? 'public'
    await database.client.$executeRawUnsafe(`DROP SCHEMA "${schema}" CASCADE`)
    await database.client.$executeRawUnsafe(`CREATE SCHEMA "${schema}"`)
  } finally {
    await database.close()
  }
}
