import 'server-only'
import { AsyncLocalStorage } from 'node:async_hooks'
import { setTimeout as sleep } from 'node:timers/promises'
import { type DatabaseKind, getSettings, log } from '@/lib/config'
import { PrismaClient as PostgresClient } from '../generated/postgres/client'
import { type Prisma, PrismaClient } from '../generated/sqlite/client'
import { computing } from './computations'
import { isWriteConflict, WriteConflictError } from './database-errors'
import { OrderlyPostgres } from './postgres-adapter'
import { noteDialect, noteTransaction } from './read-together'
import { OrderlySqlite } from './sqlite-adapter'
import { asReader } from './sqlite-readers'
import { watchWrites } from './vouched/watch'

/** The client of either database, typed as the SQLite one: what both can do. */
export type DatabaseClient = PrismaClient

/** What a function inside a transaction works with. */
export type TransactionClient = Prisma.TransactionClient

/** An open database. */
export interface Database {
  readonly kind: DatabaseKind
  readonly client: DatabaseClient
  /** See inTransaction(). */
  readonly inTransaction: <T>(work: (tx: TransactionClient) => Promise<T>) => Promise<T>
  /** See inReadTransaction(). */
  readonly inReadTransaction: <T>(work: (tx: TransactionClient) => Promise<T>, timeoutMs?: number) => Promise<T>
  readonly close: () => Promise<void>
}

const TRANSACTION_OPTIONS = { maxWait: 10_000, timeout: 20_000 }
const POSTGRES_POOL_SIZE = 10
const POSTGRES_CONNECT_TIMEOUT_MS = 5_000

/** Enough for 20 callers on one row, who after their first attempt go one at a time within a process. */
const MOST_ATTEMPTS = 12
const FIRST_PAUSE_MS = 5
const LONGEST_PAUSE_MS = 200

/**
 * Open a database.
 * @param url  `file:` with an absolute path, or `postgresql:`
 */
export function openDatabase(url: string): Database {
  return url.startsWith('file:') ? openSqlite(url) : openPostgres(url)
}

/** The extended client does all that the plain one does; its type says it in other words. */
function watch(client: DatabaseClient): DatabaseClient {
  return client.$extends(watchWrites(() => insideTransaction.getStore() === true)) as unknown as DatabaseClient
}

function openSqlite(url: string): Database {
  const client = watch(new PrismaClient({ adapter: new OrderlySqlite(url), transactionOptions: TRANSACTION_OPTIONS }))
  noteDialect(client, 'sqlite', null)
  const inside = insideOf(client)
  return {
    kind: 'sqlite',
    client,
    inTransaction: (work) => inOneTransaction(() => client.$transaction((tx) => inside(tx, work))),
    inReadTransaction: (work, timeoutMs = TRANSACTION_OPTIONS.timeout) =>
      inOneTransaction(() =>
        asReader(async () => await client.$transaction((tx) => inside(tx, work), { timeout: timeoutMs })),
      ),
    close: () => client.$disconnect(),
  }
}

function openPostgres(url: string): Database {
  const schema = new URL(url).searchParams.get('schema')
  const postgres = new PostgresClient({
    adapter: new OrderlyPostgres(
      { connectionString: url, max: POSTGRES_POOL_SIZE, connectionTimeoutMillis: POSTGRES_CONNECT_TIMEOUT_MS },
      {
        ...(schema === null ? {} : { schema }),
        onPoolError: (error) => log.warn('database connection lost', { error }),
      },
    ),
    transactionOptions: TRANSACTION_OPTIONS,
  })
  // Both clients come from the same models; a union of the two does not type-check, so this is the one cast.
  const client = watch(postgres as unknown as DatabaseClient)
  noteDialect(client, 'postgresql', schema)
  const inside = insideOf(client)
  return {
    kind: 'postgresql',
    client,
    inTransaction: (work) =>
      inOneTransaction(() =>
        repeatOnConflict(() =>
          client.$transaction((tx) => inside(tx, work), {
            isolationLevel: 'Serializable',
          }),
        ),
      ),
    // One snapshot for the whole of it, which aborts nobody and is aborted by nobody.
    inReadTransaction: (work, timeoutMs = TRANSACTION_OPTIONS.timeout) =>
      inOneTransaction(() =>
        client.$transaction((tx) => inside(tx, work), {
          timeout: timeoutMs,
          // The type is the SQLite client's, which has one level alone.
          isolationLevel: 'RepeatableRead' as 'Serializable',
        }),
      ),
    close: () => client.$disconnect(),
  }
}

const insideTransaction = new AsyncLocalStorage<true>()

/** Runs what is done in a transaction of the client. */
function insideOf(client: DatabaseClient) {
  return <T>(tx: TransactionClient, work: (tx: TransactionClient) => Promise<T>): Promise<T> => {
    noteTransaction(tx, client)
    return insideTransaction.run(true, async () => await work(tx))
  }
}

function refuseInsideTransaction(): void {
  if (insideTransaction.getStore() !== true) return
  throw new Error('Inside a transaction use its own client: on SQLite the outer one waits for the transaction to end.')
}

async function inOneTransaction<T>(run: () => Promise<T>): Promise<T> {
  refuseInsideTransaction()
  return computing(run)
}

let retries: Promise<void> = Promise.resolve()

/**
 * Serializable transactions that touch the same rows abort each other. The first attempt runs at once; further ones queue
 * up within this process, since callers that retry side by side would go on aborting each other.
 */
async function repeatOnConflict<T>(run: () => Promise<T>): Promise<T> {
  try {
    return await run()
  } catch (error) {
    if (!isWriteConflict(error)) throw error
  }
  const before = retries
  let endTurn = (): void => {}
  retries = new Promise((resolve) => {
    endTurn = resolve
  })
  await before
  try {
    for (let attempt = 2; ; attempt++) {
      try {
        return await run()
      } catch (error) {
        if (!isWriteConflict(error)) throw error
        if (attempt === MOST_ATTEMPTS) throw new WriteConflictError(attempt, error)
      }
      const longestMs = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** attempt)
      await sleep(longestMs * (0.5 + Math.random() / 2))
    }
  } finally {
    endTurn()
  }
}

/**
 * The server's bundles hold several copies of this module, and each would open a connection of its own: two SQLite
 * connections in one process block each other. So the open database lives with the process, not with the module.
 */
const PLACE = Symbol.for('bendworthy.database')
const process_ = globalThis as { [PLACE]?: Database }

/** The database of this installation, opened on first use. */
export function getDatabase(): Database {
  refuseInsideTransaction()
  process_[PLACE] ??= openDatabase(getSettings().databaseUrl)
  return process_[PLACE]
}

/** Use another database from here on, as tests and commands with an address of their own do; null goes back to the settings. */
export function replaceDatabase(database: Database | null): void {
  if (database === null) delete process_[PLACE]
  else process_[PLACE] = database
}

/** The client for a read or a single statement. Refused inside a transaction, which has a client of its own. */
export function db(): DatabaseClient {
  return getDatabase().client
}

/**
 * Run reads and writes as one: all of them are stored or none, and no other change comes between.
 *
 * SQLite holds the write lock from the first statement. PostgreSQL runs SERIALIZABLE and runs `work` again, up to 12
 * times in all, when another transaction got in its way; on both it runs again after a computation that it needed (`computing`).
 * So `work` changes nothing but the database, and uses only `tx`.
 *
 * @throws WriteConflictError  when PostgreSQL gave up; nothing is stored
 */
export function inTransaction<T>(work: (tx: TransactionClient) => Promise<T>): Promise<T> {
  return getDatabase().inTransaction(work)
}

/**
 * Run reads that show one moment. They wait for no writer and no writer waits for them: SQLite reads on connections of their own,
 * PostgreSQL at REPEATABLE READ. A write in it is refused by SQLite, so that no test lets one pass.
 */
export function inReadTransaction<T>(
  work: (tx: TransactionClient) => Promise<T>,
  /** Where it may take longer than a page. */
  timeoutMs?: number,
): Promise<T> {
  return getDatabase().inReadTransaction(work, timeoutMs)
}
