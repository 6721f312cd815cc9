import 'server-only'
import { randomUUID } from 'node:crypto'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import { type AccountEvent, composeMail } from '@/lib/mail'
import { queueMail } from '../../records/outbox'
import type { TransactionClient } from '../../store/client'

/**
 * Tells the owner of an account what was done to it, at the address that it has (or had): the person who did it may not have been
 * them. Nobody can do without these.
 */
export async function queueAccountNotice(
  tx: TransactionClient,
  at: Date,
  user: { readonly id: string; readonly name: string; readonly email: string },
  accountEvent: { readonly happened: AccountEvent; readonly by: string | null },
): Promise<void> {
  await queueMail(tx, at, {
    kind: 'account',
    dedupeKey: `account:${randomUUID()}`,
    recipient: { userId: user.id, name: user.name, address: user.email },
    text: composeMail({
      kind: 'account',
      ...accountEvent,
      at: at.toISOString(),
      accountHref: `${getSettings().publicUrl}${paths.account()}`,
    }),
  })
}
