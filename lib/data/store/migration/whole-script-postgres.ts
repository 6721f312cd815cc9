import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import {
  DriverAdapterError,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import pg from 'pg'

/**
 * Prisma's PostgreSQL adapter cuts a script at every semicolon, which breaks function bodies, and commits each piece on its
 * own. Here a migration's script goes to the server whole, in one transaction.
 */
export class WholeScriptPostgres implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'postgres'
  readonly adapterName = 'whole-script-postgres'
  readonly #url: string

  constructor(url: string) {
    this.#url = url
  }

  async connect(): Promise<SqlDriverAdapter> {
    // One connection: the engine's advisory lock belongs to the session that took it.
    const pool = new pg.Pool({ connectionString: this.#url, max: 1, connectionTimeoutMillis: CONNECT_TIMEOUT_MS })
    const schema = new URL(this.#url).searchParams.get('schema')
    const inner = await new PrismaPg(pool, {
      ...(schema === null ? {} : { schema }),
      disposeExternalPool: true,
    }).connect()
    return {
      provider: inner.provider,
      adapterName: inner.adapterName,
      getConnectionInfo: () => inner.getConnectionInfo(),
      queryRaw: (query) => inner.queryRaw(query),
      executeRaw: (query) => inner.executeRaw(query),
      startTransaction: (isolationLevel) => inner.startTransaction(isolationLevel),
      executeScript: (script) => runScript(pool, script),
      dispose: () => inner.dispose(),
    }
  }

  async connectToShadowDb(): Promise<SqlDriverAdapter> {
    throw new Error('Migrations are written from texts of the models; no shadow database is used.')
  }
}

const CONNECT_TIMEOUT_MS = 5_000

async function runScript(pool: pg.Pool, script: string): Promise<void> {
  const connection = await pool.connect()
  try {
    await connection.query('BEGIN')
    await connection.query(script)
    await connection.query('COMMIT')
  } catch (error) {
    await connection.query('ROLLBACK')
    if (!(error instanceof pg.DatabaseError)) throw error
    throw new DriverAdapterError({
      kind: 'postgres',
      code: error.code ?? 'XX000', // internal_error
      severity: error.severity ?? 'ERROR',
      message: error.message,
      detail: error.detail,
      column: error.column,
      hint: error.hint,
    })
  } finally {
    connection.release()
  }
}
