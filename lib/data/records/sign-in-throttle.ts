import 'server-only'
import { sha256Hex } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { Visit } from './visit'

/**
 * Guesses are slowed down by what is guessed at and where from, so that a stranger never locks out the owner: who signs in
 * on a device of theirs, and who confirms with the password while signed in, is counted apart from everybody else.
 */

const MINUTE_MS = 60_000
const SHORT_MS = 15 * MINUTE_MS
const DAY_MS = 24 * 60 * MINUTE_MS

interface Limit {
  readonly windowMs: number
  readonly most: number
}

/** One subject from one source, or from one known device. */
const PER_PAIR: Limit = { windowMs: SHORT_MS, most: 8 }
/** One source at anything: a whole office may sit behind it, and only failures count. */
const PER_SOURCE: Limit = { windowMs: DAY_MS, most: 200 }
/** Different addresses that one source fails at: slow guessing over many accounts. */
const PER_SOURCE_SUBJECTS: Limit = { windowMs: DAY_MS, most: 20 }
/** One subject from all strange devices together, for guesses that come from many sources. */
const PER_SUBJECT: Limit = { windowMs: 60 * MINUTE_MS, most: 100 }

/** Who tries what. */
export interface Attempt {
  /** Hashed here: what was typed as an address may be a password in the wrong field. */
  readonly subject: string
  readonly visit: Visit
  /** Set where it is counted apart: a known device, a session. */
  readonly apart: string | null
}

const keyOf = ({ subject, apart, visit }: Attempt) => ({
  subjectKey: sha256Hex(subject),
  sourceKey: visit.sourceKey,
  deviceKey: apart,
})

/**
 * Takes one of the attempts that are left, before anything is compared: guesses sent at the same moment are counted one
 * by one.
 *
 * @returns null, or the minutes to wait when none is left
 */
export async function takeAttempt(tx: TransactionClient, attempt: Attempt, at: Date): Promise<number | null> {
  await tx.signInAttempt.deleteMany({ where: { at: { lt: new Date(at.getTime() - DAY_MS) } } })
  const key = keyOf(attempt)
  const waits =
    attempt.apart === null ? await findWaits(tx, key, at) : [await waitFor(tx, ownRows(attempt), PER_PAIR, at)]
  const waitMs = Math.max(...waits)
  if (waitMs > 0) return Math.max(1, Math.ceil(waitMs / MINUTE_MS))
  await tx.signInAttempt.create({ data: { ...key, at } })
  return null
}

type Key = ReturnType<typeof keyOf>

/** A device is the same one wherever it is carried; anybody else is told apart by where they come from. */
function ownRows(attempt: Attempt): Partial<Key> {
  const { subjectKey, sourceKey, deviceKey } = keyOf(attempt)
  return deviceKey === null ? { subjectKey, sourceKey, deviceKey } : { subjectKey, deviceKey }
}

async function findWaits(tx: TransactionClient, { subjectKey, sourceKey }: Key, at: Date): Promise<number[]> {
  const strange = { deviceKey: null }
  return [
    await waitFor(tx, { subjectKey, sourceKey, ...strange }, PER_PAIR, at),
    await waitFor(tx, { sourceKey, ...strange }, PER_SOURCE, at),
    await waitFor(tx, { subjectKey, ...strange }, PER_SUBJECT, at),
    await waitForSubjects(tx, { subjectKey, sourceKey }, at),
  ]
}

/** How long until the oldest of the last `most` attempts leaves the window. */
async function waitFor(tx: TransactionClient, where: Partial<Key>, limit: Limit, at: Date): Promise<number> {
  const since = new Date(at.getTime() - limit.windowMs)
  const newest = await tx.signInAttempt.findMany({
    where: { ...where, at: { gte: since } },
    orderBy: { at: 'desc' },
    take: limit.most,
    select: { at: true },
  })
  const oldest = newest.at(-1)
  if (newest.length < limit.most || oldest === undefined) return 0
  return oldest.at.getTime() + limit.windowMs - at.getTime()
}

async function waitForSubjects(
  tx: TransactionClient,
  { subjectKey, sourceKey }: Pick<Key, 'subjectKey' | 'sourceKey'>,
  at: Date,
): Promise<number> {
  const since = new Date(at.getTime() - PER_SOURCE_SUBJECTS.windowMs)
  const subjects = await tx.signInAttempt.groupBy({
    by: ['subjectKey'],
    where: { sourceKey, deviceKey: null, at: { gte: since } },
    _max: { at: true },
  })
  if (subjects.length < PER_SOURCE_SUBJECTS.most || subjects.some((row) => row.subjectKey === subjectKey)) return 0
  const lastTimes = subjects.map((row) => row._max.at?.getTime() ?? 0)
  return Math.min(...lastTimes) + PER_SOURCE_SUBJECTS.windowMs - at.getTime()
}

/** Somebody who knows the password is not slowed down by earlier failures of theirs. */
export async function forgetAttempts(tx: TransactionClient, attempt: Attempt): Promise<void> {
  await tx.signInAttempt.deleteMany({ where: ownRows(attempt) })
}
