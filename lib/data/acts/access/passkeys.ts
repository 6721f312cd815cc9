import 'server-only'
import {
  type AuthenticationResponseJSON,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server'
import { z } from 'zod'
import { getSettings, log, now } from '@/lib/config'
import { readStoredJson } from '@/lib/engine'
import type { OwnPasswordInput, PasskeyAnswer, PasskeySetUpInput, RemovePasskeyInput } from '@/lib/inputs'
import { inWriteTransaction } from '../../consequences/write'
import type { Passkey } from '../../generated/sqlite/client'
import { type Actor, loadRights } from '../../records/authorization'
import { hashToken } from '../../records/invitation-token'
import { makeOneTimeToken, readTokenData, requireOwnToken, useToken } from '../../records/one-time-tokens'
import type { Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { NotFoundError, outcomeOf, refuseClash, refuseField } from '../../store/errors'
import type { ActResult, PasskeyChallenge, PasskeySetUp } from '../../views'
import { confirmPassword, requireAttempt, requireHere } from './password-confirmation'
import { notingRefusedSignIn } from './refused-sign-ins'
import { noteFactor } from './second-factor'
import { beginSession, type SignedIn } from './sessions'

/**
 * Passkeys (W3C Web Authentication, level 3). The authenticator checks who holds it (`userVerification`), so a passkey is
 * two factors by itself: it signs in alone, and it is the second step after a password.
 */
const NAME = 'Bendworthy'
export const challengeSchema = z.looseObject({ challenge: z.string() })
const transportsSchema = z.array(z.string())

/** The browser ties a passkey to a host name, and takes no address of digits for one. */
export function arePasskeysPossible(): boolean {
  const { hostname } = new URL(getSettings().publicUrl)
  return !/^[\d.]+$|^\[/.test(hostname)
}

const getPlace = () => {
  const { publicUrl } = getSettings()
  return { expectedOrigin: publicUrl, expectedRPID: new URL(publicUrl).hostname }
}

export function beginPasskeySetUp(actor: Actor, input: OwnPasswordInput): Promise<ActResult<PasskeySetUp>> {
  return outcomeOf(async () => {
    if (!arePasskeysPossible())
      refuseClash('Passkeys need the server to be reached by a host name, not by an IP address.')
    await confirmPassword(actor, input.password, 'password')
    const own = await db().passkey.findMany({ where: { userId: actor.userId } })
    const options = await generateRegistrationOptions({
      rpName: NAME,
      rpID: getPlace().expectedRPID,
      userName: actor.email,
      userDisplayName: actor.name,
      userID: new TextEncoder().encode(actor.userId),
      attestationType: 'none',
      excludeCredentials: own.map(({ id }) => ({ id })),
      authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
    })
    const { token } = await inWriteTransaction((tx) =>
      makeOneTimeToken(tx, {
        kind: 'passkey-set-up',
        userId: actor.userId,
        data: { challenge: options.challenge },
        at: now(),
      }),
    )
    return { token, options }
  })
}

export function finishPasskeySetUp(actor: Actor, input: PasskeySetUpInput): Promise<ActResult<null>> {
  return outcomeOf(async () => {
    const row = await requireOwnToken(db(), 'passkey-set-up', input.token, actor.userId, now())
    const { challenge } = readTokenData(challengeSchema, row)
    const found = await verifyRegistrationResponse({
      response: input.response as unknown as RegistrationResponseJSON,
      expectedChallenge: challenge,
      ...getPlace(),
      requireUserVerification: true,
    }).catch((error: unknown) => refuse('a passkey was not taken', error))
    if (!found.verified) refuseClash(NOT_TAKEN)
    const { credential } = found.registrationInfo
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const at = now()
      await useToken(tx, ['passkey-set-up'], input.token, at)
      if ((await tx.passkey.findUnique({ where: { id: credential.id } })) !== null) {
        refuseClash('This passkey is in use already.')
      }
      await tx.passkey.create({
        data: {
          id: credential.id,
          userId: rights.userId,
          name: input.name,
          publicKey: Buffer.from(credential.publicKey).toString('base64url'),
          counter: credential.counter,
          transportsJson: JSON.stringify(credential.transports ?? []),
          createdAt: at,
        },
      })
      const user = await tx.user.findUniqueOrThrow({ where: { id: rights.userId } })
      await noteFactor(tx, at, rights, user, 'second-factor-added', `the passkey "${input.name}"`)
      return null
    })
  })
}

const NOT_TAKEN = 'This passkey could not be checked. Try again.'

function refuse(event: string, error: unknown): never {
  log.info(event, { reason: error instanceof Error ? error.message : String(error) })
  refuseClash(NOT_TAKEN)
}

export function removePasskey(actor: Actor, input: RemovePasskeyInput): Promise<ActResult<null>> {
  return outcomeOf(async () => {
    await confirmPassword(actor, input.password, 'password')
    return inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const passkey = await tx.passkey.findUnique({ where: { id: input.passkeyId }, include: { user: true } })
      if (passkey === null || passkey.userId !== rights.userId) throw new NotFoundError('passkey')
      await tx.passkey.delete({ where: { id: passkey.id } })
      await noteFactor(tx, now(), rights, passkey.user, 'second-factor-removed', `the passkey "${passkey.name}"`)
      return null
    })
  })
}

/** For a visitor: names nobody, and keeps nothing here. The caller returns the challenge with the answer. */
export async function makePasskeyChallenge(): Promise<PasskeyChallenge> {
  const options = await generateAuthenticationOptions({
    rpID: getPlace().expectedRPID,
    userVerification: 'required',
  })
  return { challenge: options.challenge, options }
}

/** Signs in by a passkey's answer to a challenge that the server made for this browser. Each challenge is taken once. */
export function signInByPasskey(
  { challenge, response }: { readonly challenge: string; readonly response: AuthenticationResponseJSON },
  visit: Visit,
): Promise<ActResult<SignedIn>> {
  const findMeant = async () => {
    const passkey = await db().passkey.findUnique({ where: { id: String(response.id) }, select: { userId: true } })
    return { userId: passkey?.userId ?? null, subject: 'passkey' }
  }
  const run = async () => {
    await requireAttempt({ subject: 'passkey', visit, apart: `passkey ${visit.sourceKey}` }, null)
    const passkey = await db().passkey.findUnique({ where: { id: String(response.id) }, include: { user: true } })
    if (passkey === null || passkey.user.disabledAt !== null) refuseField('passkey', 'unknown', 'is not known here')
    const { user } = passkey
    requireHere(user, visit)
    const counter = await checkAnswer(passkey, challenge, response)
    return inWriteTransaction(async (tx) => {
      const at = now()
      await spendChallenge(tx, challenge, user.id, at)
      await tx.passkey.update({
        where: { id: passkey.id },
        data: { counter, usedAt: at },
      })
      await tx.signInAttempt.deleteMany({ where: { deviceKey: `passkey ${visit.sourceKey}` } })
      return beginSession(tx, { user, method: 'passkey', visit, at })
    })
  }
  return outcomeOf(() => notingRefusedSignIn(visit, findMeant, run))
}

/** @returns the counter that the authenticator is at now */
async function checkAnswer(
  passkey: Pick<Passkey, 'id' | 'publicKey' | 'counter' | 'transportsJson'>,
  challenge: string,
  response: AuthenticationResponseJSON,
): Promise<number> {
  const found = await verifyAuthenticationResponse({
    response,
    expectedChallenge: challenge,
    ...getPlace(),
    requireUserVerification: true,
    credential: {
      id: passkey.id,
      publicKey: new Uint8Array(Buffer.from(passkey.publicKey, 'base64url')),
      // A counter that does not grow is a copy of the key; the library refuses it.
      counter: passkey.counter,
      transports: readStoredJson('ways to a passkey', transportsSchema, passkey.transportsJson),
    },
  }).catch((error: unknown) => refuse('a passkey was not accepted', error))
  if (!found.verified) refuseClash(NOT_TAKEN)
  return found.authenticationInfo.newCounter
}

/** The passkey that answered a challenge of the server's own, in a transaction that uses the challenge up. */
export async function answerPasskey(
  tx: TransactionClient,
  { challenge, response, at }: { readonly challenge: string; readonly response: PasskeyAnswer; readonly at: Date },
): Promise<Passkey> {
  const passkey = await tx.passkey.findUnique({ where: { id: response.id } })
  if (passkey === null) refuseField('passkey', 'unknown', 'is not known here')
  const counter = await checkAnswer(passkey, challenge, response as unknown as AuthenticationResponseJSON)
  return tx.passkey.update({ where: { id: passkey.id }, data: { counter, usedAt: at } })
}

/** A challenge has a row from the moment it was answered: a second answer finds it. */
async function spendChallenge(tx: TransactionClient, challenge: string, userId: string, at: Date): Promise<void> {
  if ((await tx.oneTimeToken.findUnique({ where: { tokenHash: hashToken(challenge) } })) !== null) {
    refuseClash('This answer was used already. Try again.')
  }
  const spent = await makeOneTimeToken(tx, { kind: 'passkey-sign-in', userId: null, token: challenge, at })
  await tx.oneTimeToken.update({ where: { tokenHash: hashToken(spent.token) }, data: { usedAt: at, userId } })
}
