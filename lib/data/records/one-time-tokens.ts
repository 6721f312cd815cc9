import 'server-only'
import { randomBytes } from 'node:crypto'
import type { z } from 'zod'
import { readStoredJson } from '@/lib/engine'
import type { OneTimeToken } from '../generated/sqlite/client'
import type { TransactionClient } from '../store/client'
import { refuseClash } from '../store/errors'
import { hashToken } from './invitation-token'

/**
 * What works once, for a while. The token is in a link or a cookie and nowhere else; the database holds its hash.
 */
const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS

const LIFE_MS = {
  /** A link to set a new password, by mail. */
  'reset-by-mail': HOUR_MS,
  /** The same, handed over by an admin or made by the command. */
  'reset-by-hand': 24 * HOUR_MS,
  /** A link to confirm a new address. */
  'address-change': 24 * HOUR_MS,
  /** Between the password and the one-time code. */
  'second-step': 10 * MINUTE_MS,
  /** A secret that was shown and waits for its first code. */
  'code-set-up': 30 * MINUTE_MS,
  'passkey-set-up': 10 * MINUTE_MS,
  'passkey-sign-in': 10 * MINUTE_MS,
  /** Before an act that binds others, by somebody who is signed in. */
  'passkey-confirm': 10 * MINUTE_MS,
  /** An admin's word that an account may be joined to an identity. */
  'identity-allowed': 7 * 24 * HOUR_MS,
  /** Between "join my account" and the provider's answer. */
  'identity-link': 10 * MINUTE_MS,
} as const

export type TokenKind = keyof typeof LIFE_MS

interface TokenOrder {
  readonly kind: TokenKind
  readonly userId: string | null
  readonly createdById?: string | null
  readonly data?: object
  /** Where it is derived from something that is kept; otherwise it is drawn. */
  readonly token?: string
  readonly at: Date
}

/** What is kept beside a token, by what reads it. @throws StoredDocumentError for what is damaged */
export function readTokenData<T>(schema: z.ZodType<T>, { dataJson }: Pick<OneTimeToken, 'dataJson'>): T {
  return readStoredJson('what is kept beside a link', schema, dataJson)
}

export interface MadeToken {
  readonly token: string
  readonly expiresAt: Date
}

/** Makes one; others of the same kind for the same person stop working. */
export async function makeOneTimeToken(tx: TransactionClient, order: TokenOrder): Promise<MadeToken> {
  const { kind, userId, at } = order
  await tx.oneTimeToken.deleteMany({ where: { expiresAt: { lt: new Date(at.getTime() - 24 * HOUR_MS) } } })
  if (userId !== null) await endTokens(tx, userId, [kind], at)
  const token = order.token ?? randomBytes(32).toString('base64url')
  const expiresAt = new Date(at.getTime() + LIFE_MS[kind])
  await tx.oneTimeToken.create({
    data: {
      kind,
      tokenHash: hashToken(token),
      userId,
      dataJson: JSON.stringify(order.data ?? {}),
      createdById: order.createdById ?? null,
      createdAt: at,
      expiresAt,
    },
  })
  return { token, expiresAt }
}

/** What has not been used yet stops working. */
export async function endTokens(
  tx: TransactionClient,
  userId: string,
  kinds: readonly TokenKind[],
  at: Date,
): Promise<void> {
  await tx.oneTimeToken.updateMany({ where: { userId, kind: { in: [...kinds] }, usedAt: null }, data: { usedAt: at } })
}

/** Null where it is unknown, used or over: nobody is told which. */
export async function findOpenToken(
  tx: Pick<TransactionClient, 'oneTimeToken'>,
  kinds: readonly TokenKind[],
  token: string,
  at: Date,
): Promise<OneTimeToken | null> {
  const row = await tx.oneTimeToken.findUnique({ where: { tokenHash: hashToken(token) } })
  if (row === null || !(kinds as readonly string[]).includes(row.kind)) return null
  return row.usedAt === null && row.expiresAt > at ? row : null
}

/** The second half of what a signed-in person began; refused where it is somebody else's, used or over. */
export async function requireOwnToken(
  tx: Pick<TransactionClient, 'oneTimeToken'>,
  kind: TokenKind,
  token: string,
  userId: string,
  at: Date,
): Promise<OneTimeToken> {
  const row = await findOpenToken(tx, [kind], token, at)
  if (row === null || row.userId !== userId) refuseClash('This took too long. Start again.')
  return row
}

/** Uses it up, within the transaction of what it is used for: of two that come together one succeeds. */
export async function useToken(
  tx: TransactionClient,
  kinds: readonly TokenKind[],
  token: string,
  at: Date,
  over = LINK_OVER,
): Promise<OneTimeToken> {
  const row = await findOpenToken(tx, kinds, token, at)
  if (row === null) refuseClash(over)
  const { count } = await tx.oneTimeToken.updateMany({ where: { id: row.id, usedAt: null }, data: { usedAt: at } })
  if (count !== 1) refuseClash(over)
  return row
}

const LINK_OVER = 'This link was already used or has expired. Ask for a new one.'
