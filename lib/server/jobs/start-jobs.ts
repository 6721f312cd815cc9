import 'server-only'
import { getSettings, log } from '@/lib/config'
import { forgetOldJobs, listDueJobs, runKeptJob } from '@/lib/data'
import { openPostgresQueue } from './postgres-queue'
import { openProcessQueue } from './process-queue'
import type { JobQueue } from './queue'

/** Jobs that nobody announced, or whose process died, are found this often. */
const LOOK_MS = 5_000
const FORGET_MS = 3_600_000

/** One queue per process, however often a bundle holds this module. */
const PLACE = Symbol.for('bendworthy.job-queue')
const process_ = globalThis as { [PLACE]?: Promise<JobQueue> }

/** Runs kept jobs for as long as the process lives, those that an earlier process left behind first. */
export function startJobs(): void {
  if (process_[PLACE] !== undefined) return
  process_[PLACE] = openQueue()
  repeat('looking for due jobs', LOOK_MS, announceDueJobs)
  repeat('forgetting old jobs', FORGET_MS, forgetOldJobs)
}

/** A job that was just asked for; where this fails it is found as one that is due. */
export async function announceJob(jobId: string): Promise<void> {
  try {
    await (await process_[PLACE])?.announce(jobId)
  } catch (error) {
    log.warn('job not announced', { jobId, error })
  }
}

async function announceDueJobs(): Promise<void> {
  const queue = await process_[PLACE]
  for (const jobId of await listDueJobs()) await queue?.announce(jobId)
}

async function openQueue(): Promise<JobQueue> {
  const { databaseKind, databaseUrl } = getSettings()
  if (databaseKind === 'sqlite') return openProcessQueue(runKeptJob)
  try {
    return await openPostgresQueue(databaseUrl, runKeptJob)
  } catch (error) {
    // An account that may not make a schema. Every process then looks for due jobs itself, and claims keep them apart.
    log.warn('the queue of jobs could not be opened in the database; this process looks for jobs by itself', { error })
    return openProcessQueue(runKeptJob)
  }
}

function repeat(doing: string, pauseMs: number, run: () => Promise<unknown>): void {
  const tick = async (): Promise<void> => {
    try {
      await run()
    } catch (error) {
      log.error('unexpected error', { doing, error })
    }
    setTimeout(tick, pauseMs).unref()
  }
  setTimeout(tick, 0).unref()
}
