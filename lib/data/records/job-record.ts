import 'server-only'
import { randomUUID } from 'node:crypto'
import { now } from '@/lib/config'
import { db } from '../store/client'
import { NotFoundError, refuseTooMany } from '../store/errors'

/** A job that somebody asked for. */
export interface AskedJob {
  readonly kind: string
  /** What it comes to, as a hash: the same key is the same job. */
  readonly key: string
  readonly askedById: string
  readonly revisionId: string
  readonly inputJson: string
}

/** A job that this process runs, for as long as it shows signs of life. */
export interface ClaimedJob extends AskedJob {
  readonly id: string
  readonly claimToken: string
}

export type JobEnd =
  /** Not whole where it ended by its time with what it had found until then. */
  | { readonly state: 'done'; readonly resultJson: string; readonly isWhole: boolean }
  | { readonly state: 'failed'; readonly failure: string; readonly resultJson: null }
  /** With what was found until then, where the kind can say. */
  | { readonly state: 'stopped'; readonly resultJson: string | null }

/** Several times the pause between two signs of life: a busy process keeps its jobs, a killed one loses them soon. */
const CLAIM_MS = 15_000
/** A job that took its process down this often is not tried again. */
const MOST_ATTEMPTS = 3
const MOST_OPEN_OF_ONE = 8
const OPEN = ['waiting', 'running']
/** A result is found again for as long as what it rests on is the same; nobody comes back to it after this. */
const KEPT_MS = 7 * 86_400_000

/** What is written where a job that came to an end begins again. */
export const makeBeginning = (at: Date) => ({
  state: 'waiting',
  attempts: 0,
  progress: 0,
  failure: null,
  resultJson: null,
  isStopAsked: false,
  createdAt: at,
})

/**
 * Puts a job down, or finds the one that is there under its key: on its way, or done. One that failed or was stopped begins again, and so does one
 * that ended before it was through, whose progress says so: a busy hour must not leave its half result for days.
 *
 * @returns its id
 */
export async function askForJob(asked: AskedJob): Promise<string> {
  const { key, askedById } = asked
  const open = await db().job.count({ where: { askedById, state: { in: OPEN }, key: { not: key } } })
  if (open >= MOST_OPEN_OF_ONE) {
    refuseTooMany('Your earlier requests are still being processed. Try again in half a minute.')
  }
  const { id } = await db().job.upsert({
    where: { key },
    create: { ...asked, state: 'waiting', createdAt: now() },
    update: {},
    select: { id: true },
  })
  await db().job.updateMany({
    where: { id, OR: [{ state: { in: ['failed', 'stopped'] } }, { state: 'done', progress: { lt: 1 } }] },
    data: makeBeginning(now()),
  })
  // Asked for again before it noticed that it was to stop.
  await db().job.updateMany({ where: { id, state: 'running', isStopAsked: true }, data: { isStopAsked: false } })
  return id
}

/** Jobs that wait, and those whose process gave no sign of life for too long; oldest first. */
export async function listDueJobs(limit = 20): Promise<readonly string[]> {
  const rows = await db().job.findMany({
    where: isDue(now()),
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: { id: true },
    take: limit,
  })
  return rows.map(({ id }) => id)
}

const isDue = (at: Date) => ({ OR: [{ state: 'waiting' }, { state: 'running', claimedUntil: { lt: at } }] })

/** Takes a job that is due, so that no other process runs it; null where it is not due, or another one was first. */
export async function claimJob(id: string): Promise<ClaimedJob | null> {
  const at = now()
  const claimToken = randomUUID()
  await db().job.updateMany({
    where: { id, ...isDue(at), attempts: { gte: MOST_ATTEMPTS } },
    data: { state: 'failed', failure: 'The server stopped several times while it worked on this.', finishedAt: at },
  })
  const { count } = await db().job.updateMany({
    where: { id, ...isDue(at) },
    data: {
      state: 'running',
      resultJson: null,
      claimToken,
      claimedUntil: new Date(at.getTime() + CLAIM_MS),
      attempts: { increment: 1 },
    },
  })
  if (count === 0) return null
  const row = await db().job.findFirst({ where: { id, claimToken } })
  return row === null ? null : { ...row, claimToken }
}

export interface SignOfLife {
  /** 0 to 1. */
  readonly progress: number
  /** What is certain already, of the shape of the result; null for nothing. */
  readonly firstJson: string | null
}

/**
 * A sign of life.
 * @returns whether the job goes on; `lost` where it is another process's by now
 */
export async function keepClaim(
  { id, claimToken }: ClaimedJob,
  { progress, firstJson }: SignOfLife,
): Promise<'goes-on' | 'stop-asked' | 'lost'> {
  const where = { id, claimToken, state: 'running' }
  const { count } = await db().job.updateMany({
    where,
    data: {
      progress,
      ...(firstJson === null ? {} : { resultJson: firstJson }),
      claimedUntil: new Date(now().getTime() + CLAIM_MS),
    },
  })
  if (count === 0) return 'lost'
  return (await db().job.count({ where: { ...where, isStopAsked: true } })) === 0 ? 'goes-on' : 'stop-asked'
}

/**
 * Writes what came of a job, in one statement with its state: anyone who lost the claim meanwhile writes nothing.
 * @returns whether this was written
 */
export async function endJob({ id, claimToken }: ClaimedJob, end: JobEnd): Promise<boolean> {
  const { state, resultJson } = end
  const { count } = await db().job.updateMany({
    where: { id, claimToken, state: 'running' },
    data: {
      state,
      resultJson,
      ...(end.state === 'failed' ? { failure: end.failure } : {}),
      ...(end.state === 'done' && end.isWhole ? { progress: 1 } : {}),
      claimToken: null,
      finishedAt: now(),
    },
  })
  return count === 1
}

/**
 * A job that is not on its way any more stays as it is.
 * @throws NotFoundError  for a job that somebody else asked for
 */
export async function stopJobOf(askedById: string, id: string): Promise<void> {
  await findJobOf(askedById, id)
  await db().job.updateMany({
    where: { id, askedById, state: 'waiting' },
    data: { state: 'stopped', finishedAt: now() },
  })
  await db().job.updateMany({ where: { id, askedById, state: 'running' }, data: { isStopAsked: true } })
}

/** @throws NotFoundError  for a job that somebody else asked for */
export async function findJobOf(askedById: string, id: string) {
  const row = await db().job.findFirst({
    where: { id, askedById },
    select: { state: true, progress: true, failure: true, resultJson: true },
  })
  if (row === null) throw new NotFoundError('job')
  return row
}

/** Takes results away that nobody comes back to. */
export async function forgetOldJobs(): Promise<void> {
  const before = new Date(now().getTime() - KEPT_MS)
  await db().job.deleteMany({ where: { state: { notIn: OPEN }, finishedAt: { lt: before } } })
}
