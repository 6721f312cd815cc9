import 'server-only'
import { chmodSync, closeSync, openSync } from 'node:fs'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import {
  DriverAdapterError,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type Transaction,
} from '@prisma/driver-adapter-utils'
import { SqliteReaders, withReaders } from './sqlite-readers'
import { BUSY_TIMEOUT_MS, COMMIT, ROLLBACK, statement, whenFree } from './sqlite-statements'
import { makeTransaction } from './sqlite-transaction'

const BEGIN = 'BEGIN IMMEDIATE'

/**
 * Prisma's better-sqlite3 adapter, made safe for callers that run at the same time. As it comes, there is one connection
 * and nothing keeps a statement issued outside an open interactive transaction from running inside it: it is rolled
 * back with it although it was acknowledged, and reads what was never committed. Here
 *  - every statement waits its turn, and a transaction holds the turn from beginning to end;
 *  - every connection sets its pragmas: reopening a WAL file would leave synchronous at NORMAL, which may lose the last
 *    commits when the power fails;
 *  - a transaction takes the write lock when it begins, so that two processes that read and then write wait for each
 *    other rather than fail.
 * Inside a transaction use its own client only: the outer one waits for the turn that the transaction holds.
 *
 * Reads have connections of their own (`sqlite-readers.ts`), which wait for no writer: WAL gives each the state that was
 * committed when it began. Statements do not yield by themselves, so each lets the event loop run now and then.
 */
export class OrderlySqlite implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'sqlite'
  readonly adapterName = 'orderly-sqlite'
  readonly #inner: PrismaBetterSqlite3
  readonly #file: string
  readonly #forMigration: boolean

  /**
   * @param url  `file:` with an absolute path
   * @param options.forMigration  scripts run as one transaction each, with foreign keys checked at their end
   */
  constructor(url: string, { forMigration = false }: { forMigration?: boolean } = {}) {
    this.#inner = new PrismaBetterSqlite3({ url })
    this.#file = url.slice('file:'.length)
    this.#forMigration = forMigration
  }

  async connect(): Promise<SqlDriverAdapter> {
    keepToOwner(this.#file)
    const inner = await this.#inner.connect()
    await setPragmas(inner, this.#forMigration)
    if (this.#forMigration) return takeTurns(inner, runScriptAsTransaction)
    return withReaders(takeTurns(inner), new SqliteReaders(() => this.#connectReader()))
  }

  async #connectReader(): Promise<SqlDriverAdapter> {
    const inner = await this.#inner.connect()
    await inner.executeScript(`PRAGMA busy_timeout = ${BUSY_TIMEOUT_MS}`)
    // Held to by SQLite itself. The file is not opened read-only: then the last to close would leave the log behind.
    await inner.executeScript('PRAGMA query_only = ON')
    return inner
  }

  async connectToShadowDb(): Promise<SqlDriverAdapter> {
    return takeTurns(await this.#inner.connectToShadowDb())
  }
}

/**
 * Makes the database readable by its owner alone, also one that an older version made. SQLite gives its log and its shared memory
 * the rights of the database. An existing file is not opened: closing it would end SQLite's own locks on it (POSIX).
 */
function keepToOwner(file: string): void {
  if (file === ':memory:') return
  ignoring(['EEXIST', 'ENOENT'], () => closeSync(openSync(file, 'wx', 0o600)))
  // Where the file is somebody else's, its owner decides.
  for (const end of ['', '-wal', '-shm']) ignoring(['ENOENT', 'EPERM'], () => chmodSync(`${file}${end}`, 0o600))
}

function ignoring(codes: readonly string[], run: () => void): void {
  try {
    run()
  } catch (error) {
    if (!codes.includes((error as NodeJS.ErrnoException).code ?? '')) throw error
  }
}

async function setPragmas(inner: SqlDriverAdapter, forMigration: boolean): Promise<void> {
  await inner.executeScript(`PRAGMA busy_timeout = ${BUSY_TIMEOUT_MS}`)
  // Turning a new file to WAL needs it alone for a moment.
  await whenFree(() => inner.executeScript('PRAGMA journal_mode = WAL'))
  await inner.executeScript('PRAGMA synchronous = FULL')
  // Rebuilding a table drops it, and with keys enforced that would delete the rows that refer to it.
  await inner.executeScript(`PRAGMA foreign_keys = ${forMigration ? 'OFF' : 'ON'}`)
}

type ScriptRunner = (inner: SqlDriverAdapter, script: string) => Promise<void>

function takeTurns(
  inner: SqlDriverAdapter,
  runScript: ScriptRunner = (adapter, script) => whenFree(() => adapter.executeScript(script)),
): SqlDriverAdapter {
  const turns = new Turns()
  const inTurn = async <T>(work: () => Promise<T>): Promise<T> => {
    const endTurn = await turns.take()
    try {
      return await work()
    } finally {
      endTurn()
    }
  }
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    queryRaw: (query) => inTurn(() => whenFree(() => inner.queryRaw(query))),
    executeRaw: (query) => inTurn(() => whenFree(() => inner.executeRaw(query))),
    executeScript: (script) => inTurn(() => runScript(inner, script)),
    startTransaction: async () => {
      const endTurn = await turns.take()
      try {
        return await beginImmediate(inner, endTurn)
      } catch (error) {
        endTurn()
        throw error
      }
    },
    dispose: () => inTurn(() => inner.dispose()),
  }
}

/** The turn is held, so the connection is the transaction's alone; the adapter's own BEGIN would be deferred. */
async function beginImmediate(inner: SqlDriverAdapter, endTurn: () => void): Promise<Transaction> {
  await whenFree(() => inner.executeRaw(statement(BEGIN)))
  return makeTransaction(inner, endTurn)
}

/** Run a migration's script whole or not at all. */
async function runScriptAsTransaction(inner: SqlDriverAdapter, script: string): Promise<void> {
  await whenFree(() => inner.executeScript(BEGIN))
  try {
    await inner.executeScript(script)
    const broken = await inner.queryRaw(statement('PRAGMA foreign_key_check'))
    const [table, , parent] = broken.rows[0] ?? []
    if (broken.rows.length > 0) {
      throw new DriverAdapterError({
        kind: 'sqlite',
        extendedCode: 787, // SQLITE_CONSTRAINT_FOREIGNKEY
        message: `rows of ${String(table)} would refer to rows of ${String(parent)} that do not exist`,
      })
    }
    await inner.executeScript(COMMIT)
  } catch (error) {
    await inner.executeScript(ROLLBACK)
    throw error
  }
}

/** First come, first served, one at a time. */
class Turns {
  #last: Promise<void> = Promise.resolve()

  /** Resolves when everybody who came before has ended their turn; call the result to end one's own. */
  async take(): Promise<() => void> {
    const before = this.#last
    let endTurn = (): void => {}
    this.#last = new Promise((resolve) => {
      endTurn = resolve
    })
    await before
    return endTurn
  }
}
