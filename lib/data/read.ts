import 'server-only'
import { type Actor, loadStanding, type Standing } from './authorization'
import { inTransaction, type TransactionClient } from './client'

export interface ReadContext {
  readonly tx: TransactionClient
  readonly standing: Standing
}

/**
 * A read by a signed-in person: rights loaded afresh, and everything read as it stood at one moment, so that a view
 * never shows a version beside content that came after it.
 *
 * @throws NotFoundError, NotAllowedError
 */
export function read<T>(actor: Actor, work: (context: ReadContext) => Promise<T>): Promise<T> {
  return inTransaction(async (tx) => work({ tx, standing: await loadStanding(tx, actor.userId) }))
}
