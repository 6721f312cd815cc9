import 'server-only'
import { chmodSync, closeSync, openSync } from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import {
  DriverAdapterError,
  type IsolationLevel,
  isDriverAdapterError,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
  type Transaction,
} from '@prisma/driver-adapter-utils'

/** How long SQLite itself waits for another process. It blocks this process meanwhile, so the rest is waited below. */
const BUSY_TIMEOUT_MS = 100
/** How long a statement or the start of a transaction waits for another process in all. */
const BUSY_DEADLINE_MS = 10_000
const BUSY_PAUSE_MS = 20

const BEGIN = 'BEGIN IMMEDIATE'
const COMMIT = 'COMMIT'
const ROLLBACK = 'ROLLBACK'

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
    return this.#forMigration ? takeTurns(inner, runScriptAsTransaction) : takeTurns(inner)
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
    startTransaction: async (isolationLevel) => {
      const endTurn = await turns.take()
      try {
        return await beginImmediate(inner, isolationLevel, endTurn)
      } catch (error) {
        endTurn()
        throw error
      }
    },
    dispose: () => inTurn(() => inner.dispose()),
  }
}

async function beginImmediate(
  inner: SqlDriverAdapter,
  isolationLevel: IsolationLevel | undefined,
  endTurn: () => void,
): Promise<Transaction> {
  const transaction = await inner.startTransaction(isolationLevel)
  let isOpen = false
  const execute = async (query: SqlQuery) => {
    const changed = await transaction.executeRaw(query)
    if (query.sql === COMMIT || query.sql === ROLLBACK) isOpen = false
    return changed
  }
  const finish = async () => {
    try {
      // Prisma does not roll back after a COMMIT that failed, as on a full disk.
      if (isOpen) await execute(statement(ROLLBACK))
    } finally {
      await transaction.rollback()
      endTurn()
    }
  }
  try {
    // The adapter began a deferred transaction, which takes the write lock only at its first write.
    await transaction.executeRaw(statement(COMMIT))
    await whenFree(() => transaction.executeRaw(statement(BEGIN)))
    isOpen = true
  } catch (error) {
    await transaction.rollback()
    throw error
  }
  return {
    provider: transaction.provider,
    adapterName: transaction.adapterName,
    options: transaction.options,
    queryRaw: (query) => transaction.queryRaw(query),
    executeRaw: execute,
    createSavepoint: async (name) => transaction.createSavepoint?.(name),
    rollbackToSavepoint: async (name) => transaction.rollbackToSavepoint?.(name),
    releaseSavepoint: async (name) => transaction.releaseSavepoint?.(name),
    commit: finish,
    rollback: finish,
  }
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

/** Repeat what found the database locked by another process; such a statement has had no effect. */
async function whenFree<T>(work: () => Promise<T>): Promise<T> {
  const deadline = performance.now() + BUSY_DEADLINE_MS
  for (;;) {
    try {
      return await work()
    } catch (error) {
      if (!isBusy(error) || performance.now() > deadline) throw error
    }
    await sleep(BUSY_PAUSE_MS)
  }
}

/** Whether another process, or another connection of this one, had the file locked. */
export function isBusy(error: unknown): boolean {
  // By its form, not by its class: a bundle holds a class of its own beside the one that the adapter's package throws.
  return (
    error instanceof Error &&
    isDriverAdapterError(error) &&
    error.cause.originalCode?.startsWith('SQLITE_BUSY') === true
  )
}

function statement(sql: string): SqlQuery {
  return { sql, args: [], argTypes: [] }
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
