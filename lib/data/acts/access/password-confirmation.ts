import 'server-only'
import { now } from '@/lib/config'
import type { OwnPasswordInput } from '@/lib/inputs'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { User } from '../../generated/sqlite/client'
import { type Actor, loadRights, type PersonRights } from '../../records/authorization'
import { isPasswordRight } from '../../records/passwords'
import { type Attempt, forgetAttempts, takeAttempt } from '../../records/sign-in-throttle'
import type { Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash, refuseField, refuseTooMany } from '../../store/errors'

/** Everybody can read the passwords of demo accounts. */
export function requireHere(user: { readonly isDemo: boolean }, visit: Visit): void {
  if (user.isDemo && !visit.isThisMachine) {
    refuseClash('Demo accounts can be used only on the machine that the server runs on, at its own address.')
  }
}

/**
 * Counts an attempt, and refuses it when there were too many. The first refusal in a row is recorded, later ones are not:
 * a stranger must not be able to fill the trail.
 */
export async function requireAttempt(
  attempt: Attempt,
  user: { readonly id: string; readonly name: string } | null,
): Promise<void> {
  const waitMinutes = await inWriteTransaction((tx) => takeAttempt(tx, attempt, now()))
  if (waitMinutes === null) return
  if (user !== null) await recordLimit(user)
  refuseTooMany(
    `There were too many failed attempts from here. Try again in ${waitMinutes} min${attempt.apart === null ? ', or on a device on which you have signed in before' : ''}.`,
  )
}

const RECORD_AGAIN_MS = 60 * 60_000

async function recordLimit(user: { readonly id: string; readonly name: string }): Promise<void> {
  await inWriteTransaction(async (tx) => {
    const at = now()
    const last = await tx.trailRecord.findFirst({
      where: { subjectKind: 'account', subjectId: user.id, action: 'attempts-limited' },
      orderBy: { sequence: 'desc' },
    })
    if (last !== null && at.getTime() - Date.parse(last.at) < RECORD_AGAIN_MS) return
    // Nobody knows who guesses: the application says so itself.
    await appendToTrail(
      tx,
      at,
      { userId: null, name: 'Bendworthy' },
      { action: 'attempts-limited', subject: { kind: 'account', id: user.id }, details: { name: user.name } },
    )
  })
}

/**
 * Compares the password of the person who is acting, before a transaction that then checks the hash is still the same.
 * Counted by session: nobody's guesses elsewhere keep a lead from signing.
 * @returns the stored hash that the password fits
 */
export async function confirmPassword(actor: Actor, password: string, field: string): Promise<string> {
  const user = await db().user.findUnique({ where: { id: actor.userId } })
  if (user === null || user.disabledAt !== null) throw new NotFoundError('account')
  const attempt = makeConfirmationAttempt('confirm', actor)
  await requireAttempt(attempt, user)
  if (!(await isPasswordRight(password, user.passwordHash, 'known'))) {
    refuseField(field, 'wrong', 'is not your password')
  }
  await inWriteTransaction((tx) => forgetAttempts(tx, attempt))
  return user.passwordHash
}

/** What an act on the person's own account works with. */
interface OwnAccount {
  readonly tx: TransactionClient
  readonly rights: PersonRights
  readonly user: User
  readonly at: Date
}

/** One act by which a person changes how they sign in: with their password, in one transaction. */
export async function writeWithPassword<T>(
  actor: Actor,
  { password }: OwnPasswordInput,
  work: (account: OwnAccount) => Promise<T>,
): Promise<T> {
  const hash = await confirmPassword(actor, password, 'password')
  return inWriteTransaction(async (tx) => {
    const rights = await loadRights(tx, actor.userId)
    await requireSamePassword(tx, rights.userId, hash)
    const user = await tx.user.findUniqueOrThrow({ where: { id: rights.userId } })
    return work({ tx, rights, user, at: now() })
  })
}

/** A confirmation is counted by its session alone, wherever its requests come from. */
const NO_SOURCE: Visit = { sourceKey: '', isThisMachine: false, device: '', known: null }

/** Passwords and codes are counted apart: a right password must not make codes free to guess. */
export function makeConfirmationAttempt(what: 'confirm' | 'confirm-code', { userId, sessionId }: Actor): Attempt {
  return { subject: `${what} ${userId}`, visit: NO_SOURCE, apart: sessionId ?? 'without a session' }
}

export async function requireSamePassword(tx: TransactionClient, userId: string, hash: string): Promise<void> {
  const user = await tx.user.findUniqueOrThrow({ where: { id: userId }, select: { passwordHash: true } })
  if (user.passwordHash !== hash) refuseClash('Your password was changed meanwhile. Try again with the new one.')
}
