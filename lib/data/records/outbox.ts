import 'server-only'
import { randomUUID } from 'node:crypto'
import { getSettings, now } from '@/lib/config'
import { type MailKind, TOKEN_PLACE } from '@/lib/mail'
import type { MailMessage } from '../generated/sqlite/client'
import { inTransaction, type TransactionClient } from '../store/client'
import { deriveToken, hashToken } from './invitation-token'

/**
 * The outbox. A message is written in the transaction of the act that causes it, and the server's worker takes it from
 * there: claims the row, says so before it passes the message on, and notes what came of it.
 *
 * A process that dies between handing over and noting leaves a message of which nobody knows whether it went out. By SMTP such a
 * one is never tried again by itself: it is `uncertain`, and an admin decides. In the folder a second attempt writes the
 * same file again.
 */

/** How a message goes: by SMTP, or into the folder `mail` of the data folder. */
export type MailWay = 'smtp' | 'folder'

export interface MailAddress {
  readonly name: string
  readonly address: string
}

export interface QueuedMail {
  readonly kind: MailKind
  /** Two messages with the same key are one: the second is not written. */
  readonly dedupeKey: string
  readonly recipient: { readonly userId: string | null; readonly name: string; readonly address: string }
  readonly text: { readonly subject: string; readonly text: string; readonly html: string }
  readonly tokenSeed?: string
  /** What it is about; messages about one thing to one person follow one another in the reader's list. */
  readonly subjectKey?: string
  /** Null where nobody in particular acted. */
  readonly replyTo?: MailAddress | null
}

export function queueMail(tx: TransactionClient, at: Date, mail: QueuedMail): Promise<void> {
  return queueMails(tx, at, [mail])
}

/** Messages about one act to several people. What is asked of the database does not grow with their number. */
export async function queueMails(tx: TransactionClient, at: Date, mails: readonly QueuedMail[]): Promise<void> {
  if (mails.length === 0) return
  const there = await tx.mailMessage.findMany({
    where: { dedupeKey: { in: mails.map(({ dedupeKey }) => dedupeKey) } },
    select: { dedupeKey: true },
  })
  const known = new Set(there.map(({ dedupeKey }) => dedupeKey))
  const fresh = mails.filter(({ dedupeKey }) => !known.has(dedupeKey))
  if (fresh.length === 0) return
  const findEarlierIds = await loadEarlierIds(tx, fresh)
  const host = new URL(getSettings().publicUrl).hostname.replaceAll(/[[\]]/g, '')
  await tx.mailMessage.createMany({
    data: fresh.map((mail) => {
      const id = randomUUID()
      return {
        id,
        dedupeKey: mail.dedupeKey,
        kind: mail.kind,
        recipientId: mail.recipient.userId,
        recipientName: mail.recipient.name,
        address: mail.recipient.address,
        subject: mail.text.subject,
        bodyText: mail.text.text,
        bodyHtml: mail.text.html,
        messageId: `<${id}@${host}>`,
        subjectKey: mail.subjectKey ?? null,
        referenceIds: findEarlierIds(mail).join(' '),
        replyToName: mail.replyTo?.name ?? null,
        replyToAddress: mail.replyTo?.address ?? null,
        tokenSeed: mail.tokenSeed ?? null,
        state: 'waiting',
        nextAttemptAt: at,
        createdAt: at,
      }
    }),
  })
}

/**
 * Headers stay short: the first message of the thread and the newest ones are enough for a reader to put it together.
 * RFC 5322 (2008), 3.6.4.
 */
const MOST_REFERENCES = 10

/** Message-IDs of what the same person was sent about the same thing, oldest first; those that never went out are left out. */
async function loadEarlierIds(
  tx: TransactionClient,
  mails: readonly QueuedMail[],
): Promise<(mail: QueuedMail) => readonly string[]> {
  const threaded = mails.flatMap(({ subjectKey, recipient }) =>
    subjectKey === undefined || recipient.userId === null ? [] : [{ subjectKey, recipientId: recipient.userId }],
  )
  if (threaded.length === 0) return () => []
  const earlier = await tx.mailMessage.findMany({
    where: {
      recipientId: { in: threaded.map(({ recipientId }) => recipientId) },
      subjectKey: { in: threaded.map(({ subjectKey }) => subjectKey) },
      state: { notIn: ['given-up', 'left-out'] },
    },
    select: { messageId: true, recipientId: true, subjectKey: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  return ({ subjectKey, recipient }) => {
    if (subjectKey === undefined || recipient.userId === null) return []
    const ids = earlier
      .filter((row) => row.recipientId === recipient.userId && row.subjectKey === subjectKey)
      .map(({ messageId }) => messageId)
    return ids.length <= MOST_REFERENCES ? ids : [...ids.slice(0, 1), ...ids.slice(1 - MOST_REFERENCES)]
  }
}

/** A message that the caller alone may send, until its claim runs out. */
export interface ClaimedMail {
  readonly id: string
  readonly claimToken: string
  readonly via: MailWay
  readonly kind: string
  readonly messageId: string
  /** Of earlier messages in the same thread, oldest first. */
  readonly referenceIds: readonly string[]
  readonly replyTo: MailAddress | null
  readonly recipientName: string
  readonly address: string
  readonly subject: string
  readonly text: string
  readonly html: string
  readonly createdAt: Date
}

/** Longer than the longest hand-over that the mail library allows before it gives up. */
const CLAIM_MS = 5 * 60_000

/**
 * Takes messages that are due, oldest first, so that no other worker takes them. Claims that ran out are sorted first.
 * @param way  how this installation sends; messages to demo accounts, whose addresses are invented, stay in the folder
 */
export function claimMail(way: MailWay, limit = 10): Promise<readonly ClaimedMail[]> {
  return inTransaction(async (tx) => {
    const at = now()
    await sortAbandoned(tx, at)
    const due = await tx.mailMessage.findMany({
      where: { state: 'waiting', nextAttemptAt: { lte: at } },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      take: limit,
    })
    const claimed: ClaimedMail[] = []
    for (const row of due) {
      const recipient = row.recipientId === null ? null : await tx.user.findUnique({ where: { id: row.recipientId } })
      const obstacle = recipient !== null && recipient.disabledAt !== null ? 'the account is disabled' : null
      const link = await findLink(tx, row, at)
      const reason = obstacle ?? link.obstacle
      if (reason !== null) {
        await tx.mailMessage.update({
          where: { id: row.id },
          data: { state: 'left-out', lastError: reason, tokenSeed: null },
        })
        continue
      }
      const via = recipient?.isDemo === true ? 'folder' : way
      const claimToken = randomUUID()
      const { count } = await tx.mailMessage.updateMany({
        where: { id: row.id, state: 'waiting' },
        data: { state: 'claimed', claimToken, via, claimedUntil: new Date(at.getTime() + CLAIM_MS) },
      })
      if (count === 1) claimed.push(toClaimed(row, { via, claimToken, token: link.token }))
    }
    return claimed
  })
}

async function sortAbandoned(tx: TransactionClient, at: Date): Promise<void> {
  const isOver = { claimedUntil: { lt: at } }
  const again = { state: 'waiting', claimToken: null, claimedUntil: null }
  await tx.mailMessage.updateMany({ where: { state: 'claimed', ...isOver }, data: again })
  await tx.mailMessage.updateMany({ where: { state: 'sending', via: 'folder', ...isOver }, data: again })
  await tx.mailMessage.updateMany({
    where: { state: 'sending', ...isOver },
    data: {
      state: 'uncertain',
      lastError: 'the server stopped while sending the message: it may have been delivered',
    },
  })
}

/** A link that cannot be used any more is not worth a message; one that can gets its token here. */
async function findLink(tx: TransactionClient, row: MailMessage, at: Date) {
  if (row.tokenSeed === null) return { token: null, obstacle: null }
  const token = deriveToken(row.tokenSeed)
  const invitation = await tx.invitation.findUnique({ where: { tokenHash: hashToken(token) } })
  const link = invitation ?? (await tx.oneTimeToken.findUnique({ where: { tokenHash: hashToken(token) } }))
  const isRevoked = invitation !== null && invitation.revokedAt !== null
  const isOpen = link !== null && link.usedAt === null && link.expiresAt > at && !isRevoked
  const name = row.kind === 'invitation' ? 'invitation' : 'link'
  return isOpen ? { token, obstacle: null } : { token: null, obstacle: `the ${name} is no longer open` }
}

function toClaimed(
  row: MailMessage,
  { via, claimToken, token }: { via: MailWay; claimToken: string; token: string | null },
): ClaimedMail {
  const withToken = (text: string) => (token === null ? text : text.replaceAll(TOKEN_PLACE, token))
  return {
    id: row.id,
    claimToken,
    via,
    kind: row.kind,
    messageId: row.messageId,
    referenceIds: row.referenceIds === '' ? [] : row.referenceIds.split(' '),
    replyTo: row.replyToAddress === null ? null : { name: row.replyToName ?? '', address: row.replyToAddress },
    recipientName: row.recipientName,
    address: row.address,
    subject: row.subject,
    text: withToken(row.bodyText),
    html: withToken(row.bodyHtml),
    createdAt: row.createdAt,
  }
}

type Claim = Pick<ClaimedMail, 'id' | 'claimToken'>

/** Just before the message is handed over. False: the claim ran out, and the message is not the caller's any more. */
export function beginSending({ id, claimToken }: Claim): Promise<boolean> {
  return inTransaction(async (tx) => {
    const { count } = await tx.mailMessage.updateMany({
      where: { id, claimToken, state: 'claimed' },
      data: { state: 'sending', attempts: { increment: 1 }, claimedUntil: new Date(now().getTime() + CLAIM_MS) },
    })
    return count === 1
  })
}

export function noteSent({ id, claimToken }: Claim): Promise<void> {
  return inTransaction(async (tx) => {
    await tx.mailMessage.updateMany({
      where: { id, claimToken },
      data: { state: 'sent', sentAt: now(), lastError: null, tokenSeed: null, claimedUntil: null },
    })
  })
}

/** `later`: it did not go out and may be tried again; `refused`: it never will; `uncertain`: it may have gone out. */
export type MailFailure = 'later' | 'refused' | 'uncertain'

const MINUTE_MS = 60_000
/** With pauses of 1, 2, 4 ... 128, then 240 min, the last attempt comes about a day after the first. */
const MOST_ATTEMPTS = 14
const LONGEST_PAUSE_MIN = 240

export function noteFailed({ id, claimToken }: Claim, failure: MailFailure, reason: string): Promise<void> {
  return inTransaction(async (tx) => {
    const row = await tx.mailMessage.findFirst({ where: { id, claimToken } })
    if (row === null) return
    // Nothing was handed over yet: the attempt counts all the same, or an unreachable server would be asked for ever.
    const attempts = row.state === 'claimed' ? row.attempts + 1 : row.attempts
    const isOver = failure === 'later' && attempts >= MOST_ATTEMPTS
    const pauseMin = Math.min(2 ** (attempts - 1), LONGEST_PAUSE_MIN)
    await tx.mailMessage.update({
      where: { id },
      data: {
        state: failure === 'uncertain' ? 'uncertain' : failure === 'refused' || isOver ? 'given-up' : 'waiting',
        attempts,
        nextAttemptAt: new Date(now().getTime() + pauseMin * MINUTE_MS),
        claimToken: null,
        claimedUntil: null,
        lastError: reason.slice(0, 500),
      },
    })
  })
}
