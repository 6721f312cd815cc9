import 'server-only'
import { paths } from '@/lib/addresses'
import { getSettings, log, now } from '@/lib/config'
import { composeMail } from '@/lib/mail'
import { loadForeignNames, withoutForeignNames } from '../../consequences/mail/readers'
import { workOutStandings } from '../../reads/standings'
import { listOutdatedOf, listWaitsOfPeople } from '../../reads/waits'
import { toRights } from '../../records/authorization'
import { readMailOff } from '../../records/mail-off'
import { type QueuedMail, queueMails } from '../../records/outbox'
import { db, inReadTransaction, inTransaction, type TransactionClient } from '../../store/client'
import type { WaitView } from '../../views'

/** Before the working day begins in Europe, after it ended in the Americas. */
const DIGEST_HOUR_UTC = 6
/** So that no transaction lasts long: our choice. */
const MOST_PEOPLE_AT_ONCE = 25

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
    select: { id: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const open = users.map(({ id }) => id).filter((id) => !done.has(id))
  for (let from = 0; from < open.length; from += MOST_PEOPLE_AT_ONCE) {
    const userIds = open.slice(from, from + MOST_PEOPLE_AT_ONCE)
    // Outside of the transaction that queues, which would hold everybody up meanwhile.
    await workOutStandings(await inReadTransaction((tx) => listOutdatedOf(tx, userIds)))
    await queueSafely(userIds, day)
  }
  return open.length
}

/** Together; where that fails one by one, so that one person's failing ends nobody else's digest. The next round tries again. */
async function queueSafely(userIds: readonly string[], day: string): Promise<void> {
  try {
    await inTransaction((tx) => queueDigestsOf(tx, userIds, day))
  } catch (error) {
    if (userIds.length > 1) {
      for (const userId of userIds) await queueSafely([userId], day)
      return
    }
    log.error('unexpected error', { doing: 'queueing the digest of a person', userId: userIds[0], error })
  }
}

/** What is asked of the database does not grow with the number of people. */
async function queueDigestsOf(tx: TransactionClient, userIds: readonly string[], day: string): Promise<void> {
  const noted = await tx.digestDay.findMany({ where: { day, userId: { in: [...userIds] } } })
  const done = new Set(noted.map(({ userId }) => userId))
  const rest = userIds.filter((userId) => !done.has(userId))
  if (rest.length === 0) return
  await tx.digestDay.createMany({ data: rest.map((userId) => ({ userId, day })) })
  const users = await tx.user.findMany({
    where: { id: { in: rest }, disabledAt: null },
    include: { memberships: true, companies: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const readers = users.filter(({ mailOffJson }) => !readMailOff(mailOffJson).has('digest'))
  const rightsOfReaders = readers.map(toRights)
  const waitsByPerson = await listWaitsOfPeople(tx, rightsOfReaders)
  const foreignNamesOf = await loadForeignNames(tx)
  const mails = readers.flatMap(({ id, name, email }, index): QueuedMail[] => {
    const waits = waitsByPerson.get(id) ?? []
    const companyId = rightsOfReaders[index]?.memberships.find(({ role }) => role === 'fabricator')?.companyId ?? null
    return waits.length === 0
      ? []
      : [
          {
            kind: 'digest',
            dedupeKey: `digest:${day}:${id}`,
            recipient: { userId: id, name, address: email },
            text: writeDigest(waits, foreignNamesOf(companyId)),
          },
        ]
  })
  await queueMails(tx, now(), mails)
}

function writeDigest(waits: readonly WaitView[], foreignNames: readonly string[]): QueuedMail['text'] {
  const { publicUrl } = getSettings()
  return composeMail({
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
  })
}
