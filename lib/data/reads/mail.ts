import 'server-only'
import {
  isMailKind,
  MAIL_STATES,
  type MailKind,
  type MailState,
  OPTIONAL_MAIL_KINDS,
  type OptionalMailKind,
} from '@/lib/mail'
import type { MailMessage } from '../generated/sqlite/client'
import { type Actor, requireInWorkspace } from '../records/authorization'
import { readMailOff } from '../records/mail-off'
import { readWord } from '../records/stored-words'
import { read } from './read'

/** The kinds of mail that the person gets. */
export function getMailChoices(actor: Actor): Promise<readonly OptionalMailKind[]> {
  return read(actor, async ({ tx, rights }) => {
    const { mailOffJson } = await tx.user.findUniqueOrThrow({ where: { id: rights.userId } })
    const off = readMailOff(mailOffJson)
    return OPTIONAL_MAIL_KINDS.filter((kind) => !off.has(kind))
  })
}

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
  /** Without the token of an invitation: a reader of the page must not join in somebody's place. */
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
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'mail:view')
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

export function toEntry(row: MailMessage): MailEntryView {
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
