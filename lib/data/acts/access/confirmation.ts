import 'server-only'
import { now } from '@/lib/config'
import type { Confirmation } from '@/lib/inputs'
import { inWriteTransaction, type WriteContext } from '../../consequences/write'
import { type Actor, loadRights } from '../../records/authorization'
import { makeOneTimeToken, readTokenData, useToken as spendToken } from '../../records/one-time-tokens'
import { type Attempt, forgetAttempts } from '../../records/sign-in-throttle'
import type { TransactionClient } from '../../store/client'
import { outcomeOf, refuseClash, refuseField } from '../../store/errors'
import type { ActResult, PasskeyConfirmation } from '../../views'
import { answerPasskey, challengeSchema, makePasskeyChallenge } from './passkeys'
import { confirmPassword, makeConfirmationAttempt, requireAttempt, requireSamePassword } from './password-confirmation'
import { takeCode } from './second-factor'

/**
 * What binds others (a signature, an approved waiver, a release) asks for the person again: the password, and the second
 * factor of anyone who has one. An open browser, or a password that was seen, signs nothing.
 */
export interface Confirmed {
  readonly passwordHash: string
  readonly given: Confirmation
  readonly attempt: Attempt
}

/** What it was confirmed by, for the trail. */
export type ConfirmedBy = 'password' | 'password and code' | 'password and recovery code' | 'password and passkey'

/** The part that takes its time, or counts though the act is refused: before the transaction. */
export async function confirmPerson(actor: Actor, given: Confirmation): Promise<Confirmed> {
  const passwordHash = await confirmPassword(actor, given.password, 'password')
  const attempt = makeConfirmationAttempt('confirm-code', actor)
  if (isGiven(given.code)) await requireAttempt(attempt, { id: actor.userId, name: actor.name })
  return { passwordHash, given, attempt }
}

const isGiven = (code: string | undefined): code is string => code !== undefined && code.trim() !== ''

/** In the transaction of the act: the password is still the same, and the second factor is used up with the act or not at all. */
export async function requireConfirmed(
  { tx, rights, at }: Pick<WriteContext, 'tx' | 'rights' | 'at'>,
  { passwordHash, given, attempt }: Confirmed,
): Promise<ConfirmedBy> {
  await requireSamePassword(tx, rights.userId, passwordHash)
  const user = await tx.user.findUniqueOrThrow({
    where: { id: rights.userId },
    include: { passkeys: { select: { id: true } } },
  })
  if (given.passkey !== undefined) {
    await takePasskey(tx, user.id, given.passkey, at)
    return 'password and passkey'
  }
  if (isGiven(given.code)) {
    const method = await takeCode(tx, user, given.code, at)
    if (method === null) refuseField('code', 'wrong', WRONG_CODE)
    await forgetAttempts(tx, attempt)
    return method === 'code' ? 'password and code' : 'password and recovery code'
  }
  if (user.totpSealed !== null || user.passkeys.length > 0)
    refuseField('code', 'missing', user.totpSealed === null ? NEEDS_PASSKEY : NEEDS_CODE)
  return 'password'
}

async function takePasskey(
  tx: TransactionClient,
  userId: string,
  { token, response }: NonNullable<Confirmation['passkey']>,
  at: Date,
): Promise<void> {
  const row = await spendToken(tx, ['passkey-confirm'], token, at, PASSKEY_OVER)
  if (row.userId !== userId) refuseClash(PASSKEY_OVER)
  const { challenge } = readTokenData(challengeSchema, row)
  const passkey = await answerPasskey(tx, { challenge, response, at })
  if (passkey.userId !== userId) refuseField('passkey', 'unknown', 'is not a passkey of your account')
}

const WRONG_CODE =
  'is neither the current code nor an unused recovery code. A code that you signed in with cannot be used again; wait for the next one.'
const PASSKEY_OVER = 'The passkey check took too long or was already used. Use the passkey again.'
const NEEDS_CODE = 'is empty: your account has a second factor, so enter a one-time code or use a passkey'
const NEEDS_PASSKEY = 'is empty: your account has a passkey, so use it or enter a recovery code'

/** For a signed-in person with a passkey: what their authenticator is to answer. Counts for one act. */
export function beginPasskeyConfirmation(actor: Actor): Promise<ActResult<PasskeyConfirmation>> {
  return outcomeOf(async () => {
    const { challenge, options } = await makePasskeyChallenge()
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const order = { kind: 'passkey-confirm' as const, userId: rights.userId, data: { challenge }, at: now() }
      return { token: (await makeOneTimeToken(tx, order)).token, options }
    })
  })
}
