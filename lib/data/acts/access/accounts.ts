import 'server-only'
import { now } from '@/lib/config'
import type { AccountStateInput, AdminRightInput, ChangePasswordInput } from '@/lib/inputs'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction, write } from '../../consequences/write'
import { type Actor, loadRights } from '../../records/authorization'
import { requireGoodPassword } from '../../records/password-rules'
import { hashPassword } from '../../records/passwords'
import { db } from '../../store/client'
import { outcomeOf, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireAccount } from './account-of-somebody'
import { confirmPassword, requireSamePassword } from './password-confirmation'
import { endSessions } from './sessions'

/** Ends every other session; the caller's goes on. */
export function changePassword(actor: Actor, input: ChangePasswordInput): Promise<ActResult<null>> {
  return outcomeOf(async () => {
    const oldHash = await confirmPassword(actor, input.currentPassword, 'currentPassword')
    if (input.currentPassword === input.newPassword) {
      refuseField('newPassword', 'unchanged', 'is the same as the old one')
    }
    requireGoodPassword('newPassword', input.newPassword, actor)
    const passwordHash = await hashPassword(input.newPassword, 'known')
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      await requireSamePassword(tx, actor.userId, oldHash)
      const at = now()
      await tx.user.update({ where: { id: actor.userId }, data: { passwordHash } })
      await endSessions(tx, actor.userId, at, actor.sessionId)
      await appendToTrail(tx, at, rights, {
        action: 'password-changed',
        subject: { kind: 'account', id: actor.userId },
      })
      return null
    })
  })
}

/** Disabling ends the person's sessions at once. An admin cannot disable their own account. */
export function setAccountState(actor: Actor, input: AccountStateInput): Promise<ActResult<null>> {
  return write(actor, 'set-account-state', input, async ({ tx, rights, at, record }) => {
    const user = await requireAccount(tx, rights, input)
    if (user.id === rights.userId) refuseField('userId', 'own-account', 'is your own account')
    if ((user.disabledAt !== null) === input.isDisabled) return null
    await tx.user.update({ where: { id: user.id }, data: { disabledAt: input.isDisabled ? at : null } })
    await endSessions(tx, user.id, at)
    await record({
      action: input.isDisabled ? 'account-disabled' : 'account-enabled',
      subject: { kind: 'account', id: user.id },
      details: { name: user.name },
    })
    return null
  })
}

/** An admin cannot take the right from their own account, so there is always one left. */
export function setAdminRight(actor: Actor, input: AdminRightInput): Promise<ActResult<null>> {
  return write(actor, 'set-admin-right', input, async ({ tx, rights, record }) => {
    const user = await requireAccount(tx, rights, input)
    if (user.id === rights.userId) refuseField('userId', 'own-account', 'is your own account')
    if (user.isAdmin === input.isAdmin) return null
    await tx.user.update({ where: { id: user.id }, data: { isAdmin: input.isAdmin } })
    await record({
      action: input.isAdmin ? 'admin-right-given' : 'admin-right-taken',
      subject: { kind: 'account', id: user.id },
      details: { name: user.name },
    })
    return null
  })
}

/**
 * Marks every account there is as one of the demo data, whose passwords everybody can read. For the program that fills an
 * empty database with the demo scenario.
 */
export async function markAccountsAsDemo(): Promise<void> {
  await db().user.updateMany({ data: { isDemo: true } })
}
