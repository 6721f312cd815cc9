import 'server-only'
import { paths } from '@/lib/addresses'
import { getSettings, now } from '@/lib/config'
import type { AccountInput, AskForResetInput, SetPasswordInput } from '@/lib/inputs'
import { composeMail, TOKEN_PLACE } from '@/lib/mail'
import { queueAccountNotice } from '../../consequences/mail/account-notices'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { Actor } from '../../records/authorization'
import { deriveToken, makeTokenSeed } from '../../records/invitation-token'
import { endTokens, findOpenToken, makeOneTimeToken, useToken } from '../../records/one-time-tokens'
import { queueMail } from '../../records/outbox'
import { requireGoodPassword } from '../../records/password-rules'
import { hashPassword } from '../../records/passwords'
import type { Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { outcomeOf, refuseClash } from '../../store/errors'
import type { ActResult, ResetLink, ResetOffer } from '../../views'
import { writeOnAccount } from './account-of-somebody'
import { requireAttempt } from './password-confirmation'
import { takeAwaySecondFactor } from './second-factor'
import { endSessions } from './sessions'

/** Links for a new password: asked for by mail, made by an admin, or made by the operator of the installation. */
const RESET_KINDS = ['reset-by-mail', 'reset-by-hand'] as const

/** So many links an address gets in an hour: enough for a slow mailbox, too few to bury somebody under. */
const MOST_MAILS = 3
const MAIL_WINDOW_MS = 60 * 60_000

const makeLink = (token: string): string => `${getSettings().publicUrl}${paths.resetPassword('')}${token}`

/**
 * Notes that somebody asked. Nothing is looked up: the answer, and the time it takes, are the same for every address. The
 * server's worker does the rest.
 */
export function askForReset(input: AskForResetInput, visit: Visit): Promise<ActResult<null>> {
  return outcomeOf(async () => {
    await requireAttempt({ subject: 'reset', visit, apart: `reset ${visit.sourceKey}` }, null)
    await db().resetRequest.create({ data: { email: input.email, at: now() } })
    return null
  })
}

/** Writes the messages for what was asked since. Of an address without an account nothing is kept. */
export async function answerResetRequests(): Promise<number> {
  const requests = await db().resetRequest.findMany({ orderBy: { at: 'asc' }, take: 50 })
  for (const request of requests) {
    await inWriteTransaction(async (tx) => {
      const { count } = await tx.resetRequest.deleteMany({ where: { id: request.id } })
      // Another process was faster.
      if (count === 1) await mailReset(tx, request.email)
    })
  }
  return requests.length
}

async function mailReset(tx: TransactionClient, email: string): Promise<void> {
  const at = now()
  const user = await tx.user.findUnique({ where: { email } })
  if (user === null || user.disabledAt !== null) return
  const recent = await tx.oneTimeToken.count({
    where: {
      userId: user.id,
      kind: 'reset-by-mail',
      createdAt: { gt: new Date(at.getTime() - MAIL_WINDOW_MS) },
    },
  })
  if (recent >= MOST_MAILS) return
  const tokenSeed = makeTokenSeed(user.id, undefined)
  const { expiresAt } = await makeOneTimeToken(tx, {
    kind: 'reset-by-mail',
    userId: user.id,
    token: deriveToken(tokenSeed),
    at,
  })
  await queueMail(tx, at, {
    kind: 'password-reset',
    dedupeKey: `reset:${tokenSeed}`,
    recipient: { userId: user.id, name: user.name, address: user.email },
    tokenSeed,
    text: composeMail({ kind: 'password-reset', href: makeLink(TOKEN_PLACE), expiresAt: expiresAt.toISOString() }),
  })
  // The person who asked may not be the owner.
  await appendToTrail(
    tx,
    at,
    { userId: null, name: 'Bendworthy' },
    { action: 'reset-mailed', subject: { kind: 'account', id: user.id }, details: { name: user.name } },
  )
}

/** By an admin, for somebody who cannot read their mail. The link is in the answer and nowhere else. */
export function makeResetLink(actor: Actor, input: AccountInput): Promise<ActResult<ResetLink>> {
  return outcomeOf(() =>
    writeOnAccount(actor, input, async ({ tx, rights, user, at }) => {
      if (user.disabledAt !== null) refuseClash('The account is disabled. Enable it first.')
      await queueAccountNotice(tx, at, user, { happened: 'reset-link', by: rights.name })
      return giveLink(tx, at, user, rights)
    }),
  )
}

/**
 * By the operator of the installation, from the command line: the way back for the last admin. Enables the account too.
 * @returns null where the address has no account
 */
export function recoverAccount(
  email: string,
  { removeSecondFactor }: { readonly removeSecondFactor: boolean },
): Promise<ResetLink | null> {
  return inWriteTransaction(async (tx) => {
    const at = now()
    const user = await tx.user.findUnique({ where: { email } })
    if (user === null) return null
    const operator = { userId: null, name: 'the command line' }
    if (user.disabledAt !== null) {
      await tx.user.update({ where: { id: user.id }, data: { disabledAt: null } })
      await appendToTrail(tx, at, operator, {
        action: 'account-enabled',
        subject: { kind: 'account', id: user.id },
        details: { name: user.name },
      })
    }
    if (removeSecondFactor) await takeAwaySecondFactor(tx, at, user, operator)
    await queueAccountNotice(tx, at, user, { happened: 'reset-link', by: operator.name })
    return giveLink(tx, at, user, operator)
  })
}

async function giveLink(
  tx: TransactionClient,
  at: Date,
  user: { readonly id: string; readonly name: string },
  by: { readonly userId: string | null; readonly name: string },
): Promise<ResetLink> {
  const { token, expiresAt } = await makeOneTimeToken(tx, {
    kind: 'reset-by-hand',
    userId: user.id,
    createdById: by.userId,
    at,
  })
  await appendToTrail(tx, at, by, {
    action: 'reset-link-made',
    subject: { kind: 'account', id: user.id },
    details: { name: user.name },
  })
  return { link: makeLink(token), expiresAt: expiresAt.toISOString() }
}

/** Whose password the link would set, for anyone who holds it; null where it is used or over. */
export async function previewReset(token: string): Promise<ResetOffer | null> {
  const row = await findOpenToken(db(), RESET_KINDS, token, now())
  if (row === null || row.userId === null) return null
  const user = await db().user.findUnique({ where: { id: row.userId } })
  return user === null || user.disabledAt !== null
    ? null
    : { email: user.email, expiresAt: row.expiresAt.toISOString() }
}

/**
 * By anyone with the link. Ends every session and every other link, and asks for the second factor at the next sign-in as
 * before: somebody who reads a mailbox has the first factor alone.
 */
export function setPasswordByLink(input: SetPasswordInput, visit: Visit): Promise<ActResult<{ email: string }>> {
  return outcomeOf(async () => {
    const offer = await previewReset(input.token)
    if (offer === null) refuseClash(LINK_OVER)
    const known = await db().user.findUniqueOrThrow({ where: { email: offer.email } })
    requireGoodPassword('newPassword', input.newPassword, known)
    const passwordHash = await hashPassword(input.newPassword, { sourceKey: visit.sourceKey })
    return inWriteTransaction(async (tx) => {
      const at = now()
      const row = await useToken(tx, RESET_KINDS, input.token, at)
      const user = await tx.user.findUnique({ where: { id: row.userId ?? '' } })
      if (user === null || user.disabledAt !== null) refuseClash(LINK_OVER)
      // A link that went to the address shows that the address is read.
      const confirmed = row.kind === 'reset-by-mail' ? { emailConfirmedAt: user.emailConfirmedAt ?? at } : {}
      await tx.user.update({ where: { id: user.id }, data: { passwordHash, ...confirmed } })
      await endTokens(tx, user.id, [...RESET_KINDS, 'second-step', 'address-change'], at)
      await endSessions(tx, user.id, at)
      await appendToTrail(
        tx,
        at,
        { userId: user.id, name: user.name },
        { action: 'password-reset', subject: { kind: 'account', id: user.id }, details: { by: row.kind } },
      )
      await queueAccountNotice(tx, at, user, { happened: 'password-reset', by: null })
      return { email: user.email }
    })
  })
}

const LINK_OVER = 'This link was already used or has expired. Ask for a new one.'
