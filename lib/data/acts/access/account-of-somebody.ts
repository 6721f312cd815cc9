import 'server-only'
import { now } from '@/lib/config'
import type { AccountInput } from '@/lib/inputs'
import { inWriteTransaction } from '../../consequences/write'
import type { User } from '../../generated/sqlite/client'
import { type Actor, loadRights, type PersonRights, requireInWorkspace } from '../../records/authorization'
import type { TransactionClient } from '../../store/client'
import { NotFoundError } from '../../store/errors'

/** The account that an admin acts on. */
export async function requireAccount(
  tx: TransactionClient,
  rights: PersonRights,
  { userId }: AccountInput,
): Promise<User> {
  requireInWorkspace(rights, 'account:manage')
  const user = await tx.user.findUnique({ where: { id: userId } })
  if (user === null) throw new NotFoundError('account')
  return user
}

interface ManagedAccount {
  readonly tx: TransactionClient
  readonly rights: PersonRights
  readonly user: User
  readonly at: Date
}

/** By an admin, in one transaction. */
export function writeOnAccount<T>(
  actor: Actor,
  input: AccountInput,
  work: (account: ManagedAccount) => Promise<T>,
): Promise<T> {
  return inWriteTransaction(async (tx) => {
    const rights = await loadRights(tx, actor.userId)
    const user = await requireAccount(tx, rights, input)
    return work({ tx, rights, user, at: now() })
  })
}
