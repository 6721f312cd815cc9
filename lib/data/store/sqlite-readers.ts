import 'server-only'
import { AsyncLocalStorage } from 'node:async_hooks'
import type { SqlDriverAdapter, SqlQuery, Transaction } from '@prisma/driver-adapter-utils'
import { statement, whenFree, yielding } from './sqlite-statements'
import { makeTransaction } from './sqlite-transaction'

/** Reads that run at the same time; further ones wait. Statements block the process, so more would not be faster. */
const MOST_READERS = 4

/**
 * Connections that only read, opened as they are needed. A transaction on one is deferred: it takes no lock that a writer waits for, and
 * sees what was committed when its first statement ran.
 */
export class SqliteReaders {
  readonly #connect: () => Promise<SqlDriverAdapter>
  readonly #free: SqlDriverAdapter[] = []
  readonly #waiting: ((reader: SqlDriverAdapter) => void)[] = []
  #opened = 0

  constructor(connect: () => Promise<SqlDriverAdapter>) {
    this.#connect = connect
  }

  async take(): Promise<SqlDriverAdapter> {
    const free = this.#free.pop()
    if (free !== undefined) return free
    if (this.#opened === MOST_READERS) return new Promise((resolve) => this.#waiting.push(resolve))
    this.#opened += 1
    try {
      return await this.#connect()
    } catch (error) {
      this.#opened -= 1
      throw error
    }
  }

  giveBack(reader: SqlDriverAdapter): void {
    const next = this.#waiting.shift()
    if (next === undefined) this.#free.push(reader)
    else next(reader)
  }

  async dispose(): Promise<void> {
    for (const reader of this.#free.splice(0)) await reader.dispose()
    this.#opened = 0
  }
}

const reading = new AsyncLocalStorage<true>()

/** What is begun in `work` as a transaction only reads. */
export function asReader<T>(work: () => Promise<T>): Promise<T> {
  return reading.run(true, work)
}

const SELECT = /^\s*SELECT\b/i

/** The same database with its reads on connections of their own: transactions begun by {@link asReader}, and queries outside of any. */
export function withReaders(writer: SqlDriverAdapter, readers: SqliteReaders): SqlDriverAdapter {
  return {
    ...writer,
    queryRaw: (query) => (SELECT.test(query.sql) ? readOnce(readers, query) : writer.queryRaw(query)),
    startTransaction: (isolationLevel) =>
      reading.getStore() === true ? beginReading(readers) : writer.startTransaction(isolationLevel),
    dispose: async () => {
      await readers.dispose()
      await writer.dispose()
    },
  }
}

async function readOnce(readers: SqliteReaders, query: SqlQuery) {
  const reader = await readers.take()
  try {
    return await yielding(() => whenFree(() => reader.queryRaw(query)))
  } finally {
    readers.giveBack(reader)
  }
}

/** Deferred: it sees the state that is committed when its first statement runs, and holds no lock that a writer waits for. */
async function beginReading(readers: SqliteReaders): Promise<Transaction> {
  const reader = await readers.take()
  try {
    await reader.executeRaw(statement('BEGIN'))
  } catch (error) {
    readers.giveBack(reader)
    throw error
  }
  return makeTransaction(reader, () => readers.giveBack(reader))
}
