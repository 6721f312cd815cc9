import 'server-only'
import { now } from '@/lib/config'
import type { SendMailAgainInput } from '@/lib/inputs'
import { isMailKind, MAIL_STATES, type MailKind, type MailState, TOKEN_PLACE } from '@/lib/mail'
import { type Actor, requireInWorkspace } from './authorization'
import { NotFoundError, refuseClash } from './errors'
import type { MailMessage } from './generated/sqlite/client'
import { read } from './read'
import { readWord } from './snapshot'
import type { Outcome } from './views'
import { write } from './write'

/** A message as the page of an admin lists it. */
export interface MailEntryView {
  readonly id: string
  readonly kind: MailKind
  readonly to: string
  readonly subject: string
  readonly state: MailState
  readonly attempts: number
  readonly createdAt: string
  readonly sentAt: string | null
  readonly nextAttemptAt: string | null
  readonly lastError: string | null
}

export interface MailView extends MailEntryView {
  readonly messageId: string
  /** Without the token of an invitation: whoever reads the page must not join in somebody's place. */
  readonly text: string
  readonly maySendAgain: boolean
}

export interface MailboxView {
  readonly entries: readonly MailEntryView[]
  readonly counts: Readonly<Record<MailState, number>>
}

const MOST_LISTED = 200

/** The newest messages, for an admin. @param state  only these */
export function listMail(actor: Actor, state?: MailState): Promise<MailboxView> {
  return read(actor, async ({ tx, standing }) => {
    requireInWorkspace(standing, 'mail:view')
    const rows = await tx.mailMessage.findMany({
      where: state === undefined ? {} : { state },
      orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
      take: MOST_LISTED,
    })
    const groups = await tx.mailMessage.groupBy({ by: ['state'], _count: true })
    const counts = Object.fromEntries(
      MAIL_STATES.map((known) => [known, groups.find((group) => group.state === known)?._count ?? 0]),
    ) as Record<MailState, number>
    return { entries: rows.map(toEntry), counts }
  })
}

/** The text of a message. It may quote what the admin has no other right to, so each opening is recorded. */
export async function getMail(actor: Actor, mailId: string): Promise<MailView> {
  const opened = await write(actor, 'open-mail', {}, async ({ tx, standing, record }) => {
    requireInWorkspace(standing, 'mail:view')
    const row = await tx.mailMessage.findUnique({ where: { id: mailId } })
    if (row === null) throw new NotFoundError('message')
    await record({
      action: 'mail-opened',
      subject: { kind: 'mail', id: row.id },
      details: { to: row.address, kind: row.kind, subject: row.subject },
    })
    const entry = toEntry(row)
    return {
      ...entry,
      messageId: row.messageId,
      text: row.bodyText.replaceAll(TOKEN_PLACE, '(the link is in the message itself)'),
      maySendAgain: isStuck(entry.state),
    }
  })
  if (!opened.ok) throw new NotFoundError('message')
  return opened.value
}

/** A message that was given up, or of which nobody knows whether it went out, is due again. An admin's decision. */
export function sendMailAgain(actor: Actor, input: SendMailAgainInput): Promise<Outcome<null>> {
  return write(actor, 'send-mail-again', input, async ({ tx, standing, record }) => {
    requireInWorkspace(standing, 'mail:view')
    const row = await tx.mailMessage.findUnique({ where: { id: input.mailId } })
    if (row === null) throw new NotFoundError('message')
    if (!isStuck(toEntry(row).state)) refuseClash('The message is not one that was given up.')
    await tx.mailMessage.update({
      where: { id: row.id },
      data: { state: 'waiting', attempts: 0, nextAttemptAt: now(), claimToken: null, claimedUntil: null },
    })
    await record({
      action: 'mail-sent-again',
      subject: { kind: 'mail', id: row.id },
      details: { to: row.address, kind: row.kind, was: row.state },
    })
    return null
  })
}

function isStuck(state: MailState): boolean {
  return state === 'uncertain' || state === 'given-up'
}

function toEntry(row: MailMessage): MailEntryView {
  const state = readWord(row.state, MAIL_STATES, 'state of a message')
  if (!isMailKind(row.kind)) throw new Error(`"${row.kind}" is not a known kind of message`)
  return {
    id: row.id,
    kind: row.kind,
    to: row.recipientName === '' ? row.address : `${row.recipientName} <${row.address}>`,
    subject: row.subject,
    state,
    attempts: row.attempts,
    createdAt: row.createdAt.toISOString(),
    sentAt: row.sentAt?.toISOString() ?? null,
    nextAttemptAt: state === 'waiting' && row.attempts > 0 ? row.nextAttemptAt.toISOString() : null,
    lastError: row.lastError,
  }
}
