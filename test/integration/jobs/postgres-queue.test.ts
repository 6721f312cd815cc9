import { describe, expect, inject, it } from 'vitest'
import { openPostgresQueue } from '@/lib/server/jobs/postgres-queue'
import { createTestDatabase } from '@/test/setup/created-databases'

const { postgres } = inject('baseDatabases')

describe.skipIf(!postgres.isUp && !postgres.isRequired)('queue of an installation (PostgreSQL)', () => {
  // The database ended one of two processes that made the queue's table at once, about one start in four.
  it.each([1, 2, 3])(
    'is opened by several processes that start at once on a new database, %i',
    async () => {
      const database = await createTestDatabase('postgresql')
      const heard: string[] = []
      const open = () =>
        openPostgresQueue(database.url, async (jobId) => {
          heard.push(jobId)
        })
      const queues = await Promise.all([open(), open(), open(), open()])
      await queues[3]?.announce('a job')
      await expect.poll(() => heard, { timeout: 20_000 }).toEqual(['a job'])
      await Promise.all(queues.map((queue) => queue.close()))
      await database.remove()
    },
    60_000,
  )
})
