import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import type { IsolationLevel, SqlDriverAdapter, Transaction } from '@prisma/driver-adapter-utils'

/**
 * Prisma's PostgreSQL adapter, with one statement at a time inside a transaction. Prisma loads the parts of a record side
 * by side; a transaction has one connection, on which the driver queues such statements with a warning now and refuses
 * them from its next major version on.
 */
export class OrderlyPostgres extends PrismaPg {
  override async connect(): ReturnType<PrismaPg['connect']> {
    const adapter = await super.connect()
    const start: SqlDriverAdapter['startTransaction'] = adapter.startTransaction.bind(adapter)
    adapter.startTransaction = async (isolationLevel?: IsolationLevel) => oneByOne(await start(isolationLevel))
    return adapter
  }
}

function oneByOne(transaction: Transaction): Transaction {
  let last: Promise<unknown> = Promise.resolve()
  const inTurn = <T>(run: () => Promise<T>): Promise<T> => {
    const turn = last.then(run, run)
    // The next statement waits for this one whether it fails or not; who issued it hears of the failure.
    last = turn.catch(() => {})
    return turn
  }
  return Object.assign(Object.create(transaction) as Transaction, {
    queryRaw: (query) => inTurn(() => transaction.queryRaw(query)),
    executeRaw: (query) => inTurn(() => transaction.executeRaw(query)),
    commit: () => inTurn(() => transaction.commit()),
    rollback: () => inTurn(() => transaction.rollback()),
  } satisfies Partial<Transaction>)
}
