import 'server-only'
import { setTimeout as sleep } from 'node:timers/promises'
import PgBoss from 'pg-boss'
import { log } from '@/lib/config'
import { type JobQueue, RUN_AT_ONCE, type RunJob } from './queue'

/** Beside the application's own tables: pg-boss keeps its own in order. */
const SCHEMA = 'bendworthy_queue'
const QUEUE = 'jobs'
/** The shortest that the library takes; an announcement of this very process is looked for at once. */
const POLL_SECONDS = 0.5
const MOST_CONNECTIONS = 3
const MOST_TRIES = 8
/** PostgreSQL ended the statement because two processes waited for each other's locks. */
const DEADLOCK = '40P01'

interface Announcement {
  readonly jobId: string
}

/** Processes that start at once on a new database lock each other out while the library makes the queue's table: one of them tries again. */
async function makeQueue(boss: PgBoss): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    try {
      // Of announcements that wait, one for each job.
      return await boss.createQueue(QUEUE, { name: QUEUE, policy: 'short', retryLimit: 0 })
    } catch (error) {
      if (tries === MOST_TRIES || (error as { code?: unknown }).code !== DEADLOCK) throw error
      await sleep(50 * tries + Math.random() * 100)
    }
  }
}

/**
 * A queue in the same database, which every process of the installation listens to: each announcement reaches one of them. What a
 * process took along when it died is announced again by anyone who looks for due jobs; so the queue itself repeats nothing.
 *
 * @throws what the database says where the queue's tables cannot be made
 */
export async function openPostgresQueue(databaseUrl: string, run: RunJob): Promise<JobQueue> {
  const boss = new PgBoss({ connectionString: databaseUrl, schema: SCHEMA, max: MOST_CONNECTIONS, schedule: false })
  boss.on('error', (error) => log.warn('queue of jobs', { error }))
  await boss.start()
  try {
    await makeQueue(boss)
  } catch (error) {
    await boss.stop({ graceful: false })
    throw error
  }
  const workers: string[] = []
  for (let at = 0; at < RUN_AT_ONCE; at += 1) {
    const options = { batchSize: 1, pollingIntervalSeconds: POLL_SECONDS }
    workers.push(
      await boss.work<Announcement>(QUEUE, options, async (announcements) => {
        for (const { data } of announcements) await run(data.jobId)
      }),
    )
  }
  return {
    announce: async (jobId) => {
      await boss.send(QUEUE, { jobId }, { singletonKey: jobId })
      for (const worker of workers) boss.notifyWorker(worker)
    },
    close: () => boss.stop({ graceful: true, wait: true }),
  }
}
