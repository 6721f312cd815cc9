import * as data from '@/lib/data'
import { type AccessRow, EVERYBODY } from './row'

/** Mail. */
export const MAIL_ROWS: readonly AccessRow[] = [
  { name: 'getMailChoices', run: (a) => data.getMailChoices(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'setMailChoices',
    run: (a) => data.setMailChoices(a, { kinds: ['query', 'answer', 'digest'] }),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'listMail', run: (a) => data.listMail(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  {
    name: 'getMail',
    run: async (a, s) => data.getMail(a, s.mailId),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'sendMailAgain',
    // One that waits is not sent again.
    run: async (a, s) => data.sendMailAgain(a, { mailId: s.mailId }),
    reached: 'clash',
    may: ['admin'],
    seenBy: 'workspace',
  },
]
