import 'server-only'
import { log } from '@/lib/config'
import { type JobQueue, RUN_AT_ONCE, type RunJob } from './queue'

/** Jobs of this one process, first come, first served: SQLite has no other. */
export function openProcessQueue(run: RunJob): JobQueue {
  const waiting = new Set<string>()
  const running = new Map<string, Promise<void>>()
  let isClosed = false
  const runOne = async (jobId: string): Promise<void> => {
    try {
      await run(jobId)
    } catch (error) {
      log.error('unexpected error', { doing: 'running a job', jobId, error })
    } finally {
      running.delete(jobId)
      startNext()
    }
  }
  const startNext = (): void => {
    for (const jobId of waiting) {
      if (isClosed || running.size >= RUN_AT_ONCE) return
      waiting.delete(jobId)
      running.set(jobId, runOne(jobId))
    }
  }
  return {
    announce: async (jobId) => {
      if (isClosed || running.has(jobId)) return
      waiting.add(jobId)
      startNext()
    },
    close: async () => {
      isClosed = true
      await Promise.all(running.values())
    },
  }
}
