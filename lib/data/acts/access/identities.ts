import 'server-only'
import { z } from 'zod'
import { getSettings, now } from '@/lib/config'
import type { AccountInput, OwnPasswordInput, ProvidedIdentity } from '@/lib/inputs'
import { queueAccountNotice } from '../../consequences/mail/account-notices'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { User } from '../../generated/sqlite/client'
import type { Actor } from '../../records/authorization'
import { makeOneTimeToken, readTokenData, requireOwnToken, useToken } from '../../records/one-time-tokens'
import type { Visit } from '../../records/visit'
import type { TransactionClient } from '../../store/client'
import { outcomeOf, refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'
import { writeOnAccount } from './account-of-somebody'
import { requireHere, writeWithPassword } from './password-confirmation'
import { beginSecondStep, hasSecondFactor } from './second-factor'
import { beginSession, type SignedIn } from './sessions'
import type { SecondStep } from './sign-in'

/**
 * Accounts here and identities at the provider of the settings are joined in two ways alone: by the person, signed in and
 * with the password; or by an admin's word for one account, which the first sign-in with the same address, vouched for by
 * the provider, makes good. An address that happens to be the same joins nothing: anyone who can get such an address at a
 * provider would own the account.
 */

const NOT_JOINED =
  'No account here is linked to this identity. Sign in with your password and link it on the account page, or ask an administrator.'

/** For which identity an admin gave the word. */
const allowedSchema = z.looseObject({ issuer: z.string(), email: z.string() })

export function signInByIdentity(identity: ProvidedIdentity, visit: Visit): Promise<ActResult<SignedIn | SecondStep>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const at = now()
      const user = (await findJoined(tx, identity)) ?? (await joinAsAllowed(tx, identity, at))
      if (user === null) refuseClash(NOT_JOINED)
      if (user.disabledAt !== null) refuseClash('The account is disabled.')
      requireHere(user, visit)
      if (await hasSecondFactor(tx, user)) return { secondStep: await beginSecondStep(tx, user.id, at) }
      return beginSession(tx, { user, method: 'provider', visit, at })
    }),
  )
}

async function findJoined(tx: TransactionClient, { issuer, subject }: ProvidedIdentity): Promise<User | null> {
  const found = await tx.identity.findUnique({
    where: { issuer_subject: { issuer, subject } },
    include: { user: true },
  })
  return found?.user ?? null
}

/** Makes an admin's word good, once, for the address that the account had when it was given and has now. */
async function joinAsAllowed(tx: TransactionClient, identity: ProvidedIdentity, at: Date): Promise<User | null> {
  if (!identity.isEmailVerified) return null
  const user = await tx.user.findUnique({ where: { email: identity.email } })
  if (user === null || user.disabledAt !== null) return null
  const allowed = await tx.oneTimeToken.findFirst({
    where: { userId: user.id, kind: 'identity-allowed', usedAt: null, expiresAt: { gt: at } },
  })
  if (allowed === null) return null
  const { issuer, email } = readTokenData(allowedSchema, allowed)
  if (issuer !== identity.issuer || email !== user.email) return null
  await tx.oneTimeToken.update({ where: { id: allowed.id }, data: { usedAt: at } })
  await join(tx, at, user, identity, allowed.createdById ?? user.id)
  return user
}

async function join(
  tx: TransactionClient,
  at: Date,
  user: User,
  { issuer, subject, email }: ProvidedIdentity,
  linkedById: string,
): Promise<void> {
  const taken = await tx.identity.findFirst({
    where: {
      OR: [
        { issuer, subject },
        { userId: user.id, issuer },
      ],
    },
  })
  if (taken !== null) {
    refuseClash(
      taken.userId === user.id
        ? 'Your account is already linked to an identity. Remove that link first.'
        : 'This identity is linked to another account.',
    )
  }
  await tx.identity.create({ data: { userId: user.id, issuer, subject, email, linkedById, createdAt: at } })
  await appendToTrail(
    tx,
    at,
    { userId: user.id, name: user.name },
    { action: 'identity-linked', subject: { kind: 'account', id: user.id }, details: { issuer } },
  )
  await queueAccountNotice(tx, at, user, { happened: 'identity-linked', by: null })
}

/** By an admin: the next sign-in at the provider with this account's address, vouched for, joins the two. */
export function allowIdentity(actor: Actor, input: AccountInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    writeOnAccount(actor, input, async ({ tx, rights, user, at }) => {
      const { oidc } = getSettings()
      if (oidc === null) refuseClash('No sign-in provider is set for this installation.')
      await makeOneTimeToken(tx, {
        kind: 'identity-allowed',
        userId: user.id,
        createdById: rights.userId,
        data: { issuer: oidc.issuer, email: user.email },
        at,
      })
      await appendToTrail(tx, at, rights, {
        action: 'identity-allowed',
        subject: { kind: 'account', id: user.id },
        details: { name: user.name, issuer: oidc.issuer },
      })
      return null
    }),
  )
}

/** The first half of joining one's own account: the provider's answer comes back with the token in a cookie. */
export function beginIdentityLink(actor: Actor, input: OwnPasswordInput): Promise<ActResult<{ token: string }>> {
  return outcomeOf(async () => {
    if (getSettings().oidc === null) refuseClash('No sign-in provider is set for this installation.')
    return writeWithPassword(actor, input, ({ tx, user, at }) =>
      makeOneTimeToken(tx, { kind: 'identity-link', userId: user.id, at }),
    )
  })
}

/** The second half: the person is still signed in, as the one who began. */
export function finishIdentityLink(
  actor: Actor,
  { token, identity }: { readonly token: string; readonly identity: ProvidedIdentity },
): Promise<ActResult<null>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const at = now()
      await requireOwnToken(tx, 'identity-link', token, actor.userId, at)
      await useToken(tx, ['identity-link'], token, at)
      const user = await tx.user.findUniqueOrThrow({ where: { id: actor.userId } })
      if (user.disabledAt !== null) refuseClash('The account is disabled.')
      await join(tx, at, user, identity, actor.userId)
      return null
    }),
  )
}

export function removeIdentity(actor: Actor, input: OwnPasswordInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    writeWithPassword(actor, input, async ({ tx, rights, user, at }) => {
      const { count } = await tx.identity.deleteMany({ where: { userId: user.id } })
      if (count === 0) return null
      await appendToTrail(tx, at, rights, { action: 'identity-removed', subject: { kind: 'account', id: user.id } })
      return null
    }),
  )
}
