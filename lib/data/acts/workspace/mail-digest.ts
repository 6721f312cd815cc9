import 'server-only'
import { paths } from '@/lib/addresses'
import { getSettings, now } from '@/lib/config'
import { composeMail } from '@/lib/mail'
import { loadForeignNames, withoutForeignNames } from '../../consequences/mail/readers'
import { listWaits } from '../../reads/waits'
import { type Actor, loadStanding } from '../../records/authorization'
import { readMailOff } from '../../records/mail-off'
import { queueMail } from '../../records/outbox'
import { db, inTransaction } from '../../store/client'
import type { WaitView } from '../../views'

/** Before the working day begins in Europe, after it ended in the Americas. */
const DIGEST_HOUR_UTC = 6

/**
 * Queues the day's digest for everybody for whom something waits, once a person and day however often it is called:
 * the day is noted in the transaction that queues the message.
 * @returns how many people were dealt with; 0 before the hour, and once all are done
 */
export async function queueDigests(): Promise<number> {
  const at = now()
  if (at.getUTCHours() < DIGEST_HOUR_UTC) return 0
  const day = at.toISOString().slice(0, 10)
  const done = new Set((await db().digestDay.findMany({ where: { day } })).map(({ userId }) => userId))
  const users = await db().user.findMany({
    where: { disabledAt: null, createdAt: { lt: at }, memberships: { some: {} } },
    include: { memberships: true, companies: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  let count = 0
  for (const user of users.filter(({ id }) => !done.has(id))) {
    const { id: userId, name, email, isAdmin, memberships, companies } = user
    const person: Actor = { userId, name, email, isAdmin, memberships, companies, sessionId: null }
    await queueDigest(person, day, await listWaits(person))
    count += 1
  }
  return count
}

async function queueDigest(person: Actor, day: string, waits: readonly WaitView[]): Promise<void> {
  const { userId, name, email } = person
  await inTransaction(async (tx) => {
    if ((await tx.digestDay.findUnique({ where: { userId_day: { userId, day } } })) !== null) return
    await tx.digestDay.create({ data: { userId, day } })
    const user = await tx.user.findUniqueOrThrow({ where: { id: userId } })
    if (waits.length === 0 || user.disabledAt !== null || readMailOff(user.mailOffJson).has('digest')) return
    const { memberships } = await loadStanding(tx, userId)
    const companyId = memberships.find(({ role }) => role === 'fabricator')?.companyId ?? null
    const foreignNames = (await loadForeignNames(tx))(companyId)
    const { publicUrl } = getSettings()
    await queueMail(tx, now(), {
      kind: 'digest',
      dedupeKey: `digest:${day}:${userId}`,
      recipient: { userId, name, address: email },
      text: composeMail({
        kind: 'digest',
        homeHref: `${publicUrl}${paths.home()}`,
        accountHref: `${publicUrl}${paths.account()}`,
        waits: waits.map((wait) => ({
          text:
            withoutForeignNames(
              `${wait.projectName} ${wait.revisionLabel}: ${wait.reason}. ${wait.nextAct}.`,
              foreignNames,
            ) ?? 'Something on a revision that is shared with you.',
          href: `${publicUrl}${paths.target(wait.projectId, wait.revisionId, wait.target)}`,
        })),
      }),
    })
  })
}
