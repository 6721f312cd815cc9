import 'server-only'
import { randomInt } from 'node:crypto'
import { Secret, TOTP } from 'otpauth'
import { z } from 'zod'
import { now } from '@/lib/config'
import type { AccountInput, CodeSetUpInput, OwnPasswordInput, SecondStepInput } from '@/lib/inputs'
import { sha256Hex } from '@/lib/review'
import { queueAccountNotice } from '../../consequences/mail/account-notices'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { User } from '../../generated/sqlite/client'
import { type Actor, loadRights } from '../../records/authorization'
import {
  endTokens,
  findOpenToken,
  makeOneTimeToken,
  readTokenData,
  requireOwnToken,
  useToken,
} from '../../records/one-time-tokens'
import { forgetAttempts } from '../../records/sign-in-throttle'
import { isKnownDevice, type Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { outcomeOf, refuseClash, refuseField } from '../../store/errors'
import { seal, unseal } from '../../store/sealed'
import type { ActResult, CodeSetUp, RecoveryCodes } from '../../views'
import { writeOnAccount } from './account-of-somebody'
import { confirmPassword, requireAttempt, requireHere, writeWithPassword } from './password-confirmation'
import { notingRefusedSignIn } from './refused-sign-ins'
import { beginSession, type SignedIn } from './sessions'

/** One-time codes (RFC 6238): six digits, 30 s, SHA-1, which is what authenticator programs know. */
const PERIOD_SECONDS = 30
const SECRET_BYTES = 20
/** One step before and after: clocks differ, and typing takes its time (RFC 6238, 5.2). */
const WINDOW_STEPS = 1
const SEAL = 'one-time codes'
/** The secret that was shown, sealed, while it waits for its first code. */
const sealedSchema = z.looseObject({ sealed: z.string() })

const makeTotp = (secret: string, email: string) =>
  new TOTP({ issuer: 'Bendworthy', label: email, secret: Secret.fromBase32(secret), period: PERIOD_SECONDS })

/** The time step that a code is right for, or null. */
function findStep(secret: string, code: string, at: Date): number | null {
  const delta = makeTotp(secret, '').validate({ token: code, timestamp: at.getTime(), window: WINDOW_STEPS })
  return delta === null ? null : Math.floor(at.getTime() / 1000 / PERIOD_SECONDS) + delta
}

export async function hasSecondFactor(
  tx: Pick<TransactionClient, 'passkey'>,
  user: Pick<User, 'id' | 'totpSealed'>,
): Promise<boolean> {
  return user.totpSealed !== null || (await tx.passkey.findFirst({ where: { userId: user.id } })) !== null
}

/** Draws a secret to be shown once; it counts after the first right code. */
export function beginCodeSetUp(actor: Actor, input: OwnPasswordInput): Promise<ActResult<CodeSetUp>> {
  return outcomeOf(async () => {
    await confirmPassword(actor, input.password, 'password')
    const secret = new Secret({ size: SECRET_BYTES }).base32
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const { token } = await makeOneTimeToken(tx, {
        kind: 'code-set-up',
        userId: rights.userId,
        data: { sealed: seal(secret, SEAL, rights.userId) },
        at: now(),
      })
      return { token, secret, address: makeTotp(secret, actor.email).toString() }
    })
  })
}

export function finishCodeSetUp(actor: Actor, input: CodeSetUpInput): Promise<ActResult<RecoveryCodes>> {
  return outcomeOf(async () => {
    await requireAttempt({ subject: `set-up ${actor.userId}`, visit: NOWHERE, apart: actor.sessionId ?? '' }, null)
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const at = now()
      const row = await requireOwnToken(tx, 'code-set-up', input.token, rights.userId, at)
      const { sealed } = readTokenData(sealedSchema, row)
      const secret = unseal(sealed, SEAL, rights.userId)
      const step = secret === null ? null : findStep(secret, input.code, at)
      if (step === null) refuseField('code', 'wrong', 'is not the current code; check the clock of the device')
      await useToken(tx, ['code-set-up'], input.token, at)
      const user = await tx.user.update({
        where: { id: rights.userId },
        data: { totpSealed: sealed, totpStep: step },
      })
      await noteFactor(tx, at, rights, user, 'second-factor-added', 'one-time codes')
      return { recoveryCodes: await makeRecoveryCodes(tx, user.id, at) }
    })
  })
}

export function removeCodes(actor: Actor, input: OwnPasswordInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    writeWithPassword(actor, input, async ({ tx, rights, user, at }) => {
      if (user.totpSealed === null) return null
      await tx.user.update({ where: { id: user.id }, data: { totpSealed: null, totpStep: null } })
      await tx.recoveryCode.deleteMany({ where: { userId: user.id } })
      await noteFactor(tx, at, rights, user, 'second-factor-removed', 'the one-time codes')
      return null
    }),
  )
}

/** New ones; the old ones stop working. */
export function renewRecoveryCodes(actor: Actor, input: OwnPasswordInput): Promise<ActResult<RecoveryCodes>> {
  return outcomeOf(() =>
    writeWithPassword(actor, input, async ({ tx, rights, user, at }) => {
      if (!(await hasSecondFactor(tx, user))) refuseClash('Recovery codes replace a second factor, and you have none.')
      await appendToTrail(tx, at, rights, { action: 'recovery-codes-made', subject: { kind: 'account', id: user.id } })
      return { recoveryCodes: await makeRecoveryCodes(tx, user.id, at) }
    }),
  )
}

const RECOVERY_CODES = 10
/** 10 of 30 signs: 49 bits, so a fast hash is enough. */
const RECOVERY_LENGTH = 10
const RECOVERY_ALPHABET = '23456789abcdefghjkmnpqrstvwxyz'

async function makeRecoveryCodes(tx: TransactionClient, userId: string, at: Date): Promise<string[]> {
  await tx.recoveryCode.deleteMany({ where: { userId } })
  const codes = Array.from({ length: RECOVERY_CODES }, () =>
    Array.from({ length: RECOVERY_LENGTH }, () => RECOVERY_ALPHABET[randomInt(RECOVERY_ALPHABET.length)]).join(''),
  )
  for (const code of codes) {
    await tx.recoveryCode.create({ data: { userId, codeHash: hashRecoveryCode(userId, code), createdAt: at } })
  }
  return codes.map((code) => `${code.slice(0, 5)}-${code.slice(5)}`)
}

function hashRecoveryCode(userId: string, code: string): string {
  return sha256Hex(`recovery\n${userId}\n${code.toLowerCase().replaceAll(/[^a-z0-9]/g, '')}`)
}

/** After a right password (or identity): what stands between it and a session. */
export async function beginSecondStep(tx: TransactionClient, userId: string, at: Date): Promise<string> {
  return (await makeOneTimeToken(tx, { kind: 'second-step', userId, at })).token
}

const WRONG_CODE = 'is neither the current code nor an unused recovery code'

/** The second step by a code. A code that was taken once is not taken again, nor is one from before it. */
export function finishSecondStep(input: SecondStepInput, visit: Visit): Promise<ActResult<SignedIn>> {
  return outcomeOf(async () => {
    const row = await findOpenToken(db(), ['second-step'], input.token, now())
    if (row === null || row.userId === null) refuseClash('This took too long. Sign in again.')
    const userId = row.userId
    const known = await db().user.findUniqueOrThrow({ where: { id: userId } })
    const attempt = {
      subject: `code ${userId}`,
      visit,
      apart: isKnownDevice(visit, userId) ? `code ${visit.known?.deviceId}` : null,
    }
    await requireAttempt(attempt, known)
    const takeSecondStep = () =>
      inWriteTransaction(async (tx) => {
        const at = now()
        const user = await tx.user.findUniqueOrThrow({ where: { id: userId } })
        if (user.disabledAt !== null) refuseClash('The account is disabled.')
        requireHere(user, visit)
        const method = await takeCode(tx, user, input.code, at)
        if (method === null) refuseField('code', 'wrong', WRONG_CODE)
        await useToken(tx, ['second-step'], input.token, at)
        await forgetAttempts(tx, attempt)
        return beginSession(tx, { user, method, visit, at })
      })
    return notingRefusedSignIn(visit, async () => ({ userId, subject: known.email }), takeSecondStep)
  })
}

/** A one-time code or a recovery code, used up in this transaction; null where it is neither. */
export async function takeCode(
  tx: TransactionClient,
  user: User,
  typed: string,
  at: Date,
): Promise<'code' | 'recovery-code' | null> {
  const digits = typed.replaceAll(/\s/g, '')
  if (/^\d{6}$/.test(digits)) {
    const secret = user.totpSealed === null ? null : unseal(user.totpSealed, SEAL, user.id)
    const step = secret === null ? null : findStep(secret, digits, at)
    if (step === null || (user.totpStep !== null && step <= user.totpStep)) return null
    await tx.user.update({ where: { id: user.id }, data: { totpStep: step } })
    return 'code'
  }
  const { count } = await tx.recoveryCode.updateMany({
    where: { userId: user.id, codeHash: hashRecoveryCode(user.id, typed), usedAt: null },
    data: { usedAt: at },
  })
  if (count !== 1) return null
  const left = await tx.recoveryCode.count({ where: { userId: user.id, usedAt: null } })
  await appendToTrail(
    tx,
    at,
    { userId: user.id, name: user.name },
    { action: 'recovery-code-used', subject: { kind: 'account', id: user.id }, details: { left } },
  )
  return 'recovery-code'
}

/** By an admin, for somebody who lost theirs. The owner is told. */
export function removeSecondFactor(actor: Actor, input: AccountInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    writeOnAccount(actor, input, async ({ tx, rights, user, at }) => {
      await takeAwaySecondFactor(tx, at, user, rights)
      return null
    }),
  )
}

export async function takeAwaySecondFactor(
  tx: TransactionClient,
  at: Date,
  user: User,
  by: { readonly userId: string | null; readonly name: string },
): Promise<void> {
  if (!(await hasSecondFactor(tx, user))) return
  await tx.user.update({ where: { id: user.id }, data: { totpSealed: null, totpStep: null } })
  await tx.passkey.deleteMany({ where: { userId: user.id } })
  await tx.recoveryCode.deleteMany({ where: { userId: user.id } })
  await endTokens(tx, user.id, ['second-step', 'code-set-up', 'passkey-set-up', 'passkey-confirm'], at)
  await noteFactor(tx, at, by, user, 'second-factor-removed', 'every second factor')
}

export async function noteFactor(
  tx: TransactionClient,
  at: Date,
  by: { readonly userId: string | null; readonly name: string },
  user: Pick<User, 'id' | 'name' | 'email'>,
  happened: 'second-factor-added' | 'second-factor-removed',
  what: string,
): Promise<void> {
  await appendToTrail(tx, at, by, {
    action: happened,
    subject: { kind: 'account', id: user.id },
    details: { what, name: user.name },
  })
  await queueAccountNotice(tx, at, user, { happened, by: by.userId === user.id ? null : by.name })
}

const NOWHERE: Visit = { sourceKey: '', isThisMachine: false, device: '', known: null }
