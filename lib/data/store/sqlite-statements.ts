import 'server-only'
import { setImmediate as nextTurnOfLoop, setTimeout as sleep } from 'node:timers/promises'
import { isDriverAdapterError, type SqlQuery } from '@prisma/driver-adapter-utils'

export const COMMIT = 'COMMIT'
export const ROLLBACK = 'ROLLBACK'

/** How long SQLite itself waits for another process. It blocks this process meanwhile, so the rest is waited below. */
export const BUSY_TIMEOUT_MS = 100
/** How long a statement or the start of a transaction waits for another process in all. */
const BUSY_DEADLINE_MS = 10_000
const BUSY_PAUSE_MS = 20

/** Statements after which the event loop is due: better-sqlite3 runs each to its end, and promises alone let no timer fire. */
const LONGEST_WITHOUT_LOOP_MS = 8
let loopRanAt = 0

/** Run a statement, letting timers and other requests have their turn first where they have waited. */
export async function yielding<T>(run: () => Promise<T>): Promise<T> {
  if (performance.now() - loopRanAt > LONGEST_WITHOUT_LOOP_MS) {
    await nextTurnOfLoop()
    loopRanAt = performance.now()
  }
  return run()
}

/** Repeat what found the database locked by another process; such a statement has had no effect. */
export async function whenFree<T>(work: () => Promise<T>): Promise<T> {
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

export function statement(sql: string): SqlQuery {
  return { sql, args: [], argTypes: [] }
}
