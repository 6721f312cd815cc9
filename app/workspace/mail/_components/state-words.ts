import type { MailState } from '@/lib/mail'

export const MAIL_STATE_WORDS: Readonly<Record<MailState, string>> = {
  waiting: 'waiting',
  claimed: 'on its way',
  sending: 'on its way',
  sent: 'sent',
  uncertain: 'delivery unknown',
  'given-up': 'failed',
  'left-out': 'not sent',
}
