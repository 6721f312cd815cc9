import 'server-only'
import { now } from '@/lib/config'
import type { SendMailAgainInput } from '@/lib/inputs'
import { type MailState, TOKEN_PLACE } from '@/lib/mail'
import { write } from '../../consequences/write'
import { type MailView, toEntry } from '../../reads/mail'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { NotFoundError, refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'

/** The text of a message. It may quote what the admin has no other right to, so each opening is recorded. */
export async function getMail(actor: Actor, mailId: string): Promise<MailView> {
  const opened = await write(actor, 'open-mail', {}, async ({ tx, rights, record }) => {
    requireInWorkspace(rights, 'mail:view')
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
export function sendMailAgain(actor: Actor, input: SendMailAgainInput): Promise<ActResult<null>> {
  return write(actor, 'send-mail-again', input, async ({ tx, rights, record }) => {
    requireInWorkspace(rights, 'mail:view')
    const row = await tx.mailMessage.findUnique({ where: { id: input.mailId } })
    if (row === null) throw new NotFoundError('message')
    if (!isStuck(toEntry(row).state)) refuseClash('The message is not one that failed.')
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
