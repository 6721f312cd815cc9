import 'server-only'
import { type Actor, loadRights, type PersonRights } from '../records/authorization'
import { inReadTransaction, type TransactionClient } from '../store/client'
import { isUnstorableText } from '../store/database-errors'
import { NotFoundError } from '../store/errors'

export interface ReadContext {
  readonly tx: TransactionClient
  readonly rights: PersonRights
}

/**
 * A read by a signed-in person: rights loaded afresh, and everything read as it stood at one moment, so that a view
 * never shows a version beside content that came after it.
 *
 * @throws NotFoundError, NotAllowedError
 */
export async function read<T>(actor: Actor, work: (context: ReadContext) => Promise<T>): Promise<T> {
  try {
    return await inReadTransaction(async (tx) => work({ tx, rights: await loadRights(tx, actor.userId) }))
  } catch (error) {
    // Ids come from addresses: one that cannot be compared is one that there is not.
    if (isUnstorableText(error)) throw new NotFoundError('record')
    throw error
  }
}
