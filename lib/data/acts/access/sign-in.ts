import 'server-only'
import { now } from '@/lib/config'
import type { SignInInput } from '@/lib/inputs'
import { inWriteTransaction } from '../../consequences/write'
import { atTheDoor, type HashTurn, isPasswordRight, spendPasswordTime } from '../../records/passwords'
import { type Attempt, forgetAttempts } from '../../records/sign-in-throttle'
import { isKnownDevice, type Visit } from '../../records/visit'
import { db } from '../../store/client'
import { outcomeOf, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireAttempt, requireHere, requireSamePassword } from './password-confirmation'
import { notingRefusedSignIn } from './refused-sign-ins'
import { beginSecondStep, hasSecondFactor } from './second-factor'
import { beginSession, type SignedIn } from './sessions'

/** The password was right, and a code or passkey is still to come. */
export interface SecondStep {
  readonly secondStep: string
}

const WRONG = 'The address or password is wrong, or the account is disabled.'

/**
 * The same refusal, after the same time, for a wrong password, an unknown address and a disabled account. Demo accounts,
 * whose passwords everybody can read, are refused to anyone who is not on this machine.
 */
export function authenticate(input: SignInInput, visit: Visit): Promise<ActResult<SignedIn | SecondStep>> {
  return outcomeOf(async () => {
    const isKnown = await isOnKnownDevice(input.email, visit)
    const turn: HashTurn = isKnown ? 'known' : { sourceKey: visit.sourceKey }
    return notingRefusedSignIn(
      visit,
      async () => {
        const user = await db().user.findUnique({ where: { email: input.email }, select: { id: true } })
        return { userId: user?.id ?? null, subject: input.email }
      },
      () => atTheDoor(turn, () => comparePassword(input, visit, turn)),
    )
  })
}

/** Nothing is looked up for a browser that knows nobody. */
async function isOnKnownDevice(email: string, visit: Visit): Promise<boolean> {
  if (visit.known === null) return false
  const user = await db().user.findUnique({ where: { email }, select: { id: true } })
  return user !== null && isKnownDevice(visit, user.id)
}

async function comparePassword(input: SignInInput, visit: Visit, turn: HashTurn): Promise<SignedIn | SecondStep> {
  const user = await db().user.findUnique({ where: { email: input.email } })
  const apart = turn === 'known' ? (visit.known?.deviceId ?? null) : null
  const attempt: Attempt = { subject: input.email, visit, apart }
  await requireAttempt(attempt, user)
  if (user === null) await spendPasswordTime(input.password, turn)
  const isRight = user !== null && (await isPasswordRight(input.password, user.passwordHash, turn))
  if (user === null || !isRight || user.disabledAt !== null) refuseField('password', 'wrong', WRONG)
  requireHere(user, visit)
  return inWriteTransaction(async (tx) => {
    await requireSamePassword(tx, user.id, user.passwordHash)
    await forgetAttempts(tx, attempt)
    const at = now()
    if (await hasSecondFactor(tx, user)) return { secondStep: await beginSecondStep(tx, user.id, at) }
    return beginSession(tx, { user, method: 'password', visit, at })
  })
}
