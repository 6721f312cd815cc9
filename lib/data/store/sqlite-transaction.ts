import 'server-only'
import type { SqlDriverAdapter, Transaction } from '@prisma/driver-adapter-utils'
import { COMMIT, ROLLBACK, statement, whenFree, yielding } from './sqlite-statements'

/**
 * What Prisma works with on a connection on which a transaction was begun, and which nobody else uses until it is over.
 * @param onOver  runs once, whatever the end was like
 */
export function makeTransaction(connection: SqlDriverAdapter, onOver: () => void): Transaction {
  let isOpen = true
  const finish = async () => {
    try {
      // Prisma does not roll back after a COMMIT that failed, as on a full disk.
      if (isOpen) await connection.executeRaw(statement(ROLLBACK))
    } finally {
      isOpen = false
      onOver()
    }
  }
  const run = (sql: string) => yielding(() => connection.executeRaw(statement(sql)))
  return {
    provider: connection.provider,
    adapterName: connection.adapterName,
    options: { usePhantomQuery: false },
    queryRaw: (query) => yielding(() => whenFree(() => connection.queryRaw(query))),
    executeRaw: (query) =>
      yielding(async () => {
        const changed = await connection.executeRaw(query)
        if (query.sql === COMMIT || query.sql === ROLLBACK) isOpen = false
        return changed
      }),
    createSavepoint: async (name) => void (await run(`SAVEPOINT ${name}`)),
    rollbackToSavepoint: async (name) => void (await run(`ROLLBACK TO ${name}`)),
    releaseSavepoint: async (name) => void (await run(`RELEASE SAVEPOINT ${name}`)),
    commit: finish,
    rollback: finish,
  }
}
