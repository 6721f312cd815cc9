import 'server-only'
import MailComposer from 'nodemailer/lib/mail-composer'
import type { ClaimedMail } from '@/lib/data'

/**
 * The message as it goes out: text and HTML side by side (RFC 2046, 5.1.4), date and Message-ID as they were fixed when
 * it was written, marked as sent by a machine (RFC 3834, 5) so that nobody's absence note answers it.
 */
export function makeMessageOptions(mail: ClaimedMail, from: string) {
  return {
    from: { name: 'Bendworthy', address: from },
    to: { name: mail.recipientName, address: mail.address },
    ...(mail.replyTo === null ? {} : { replyTo: mail.replyTo }),
    ...makeThreadHeaders(mail),
    subject: mail.subject,
    text: mail.text,
    html: mail.html,
    messageId: mail.messageId,
    date: mail.createdAt,
    headers: { 'Auto-Submitted': 'auto-generated', 'X-Auto-Response-Suppress': 'All' },
    // Nothing in a message is fetched from anywhere while it is put together.
    disableFileAccess: true,
    disableUrlAccess: true,
  }
}

/** RFC 5322 (2008), 3.6.4: the message before it, and all that are known of the thread. */
function makeThreadHeaders({ referenceIds }: ClaimedMail) {
  const last = referenceIds.at(-1)
  return last === undefined ? {} : { inReplyTo: last, references: [...referenceIds] }
}

export function buildMessage(mail: ClaimedMail, from: string): Promise<Buffer> {
  return new MailComposer(makeMessageOptions(mail, from)).compile().build()
}
