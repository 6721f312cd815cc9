// Run by kept-jobs.test.ts in a process of its own, as a server's is: `hang` takes one job and never ends it; `work` listens to
// the installation's queue and tells which jobs it brought to an end. As on a server the work itself is not done by the process that keeps
// the claim, which would give no sign of life meanwhile: here it takes a moment.
import { setTimeout as sleep } from 'node:timers/promises'
import { runKeptJob } from '@/lib/data'
import { openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { replaceJobRunner } from '@/lib/jobs/runner'
import { openPostgresQueue } from '@/lib/server/jobs/postgres-queue'

const [url, mode] = process.argv.slice(2)
if (url === undefined) throw new Error('name the database')
replaceDatabase(openDatabase(url))

if (mode === 'hang') {
  replaceJobRunner((name) => {
    process.send?.({ running: name })
    return new Promise(() => {})
  })
  process.on('message', (jobId) => void runKeptJob(String(jobId)))
} else {
  replaceJobRunner(async (name) => {
    await sleep(700)
    return { madeFor: name } as never
  })
  const queue = await openPostgresQueue(url, async (jobId) => {
    if (await runKeptJob(jobId)) process.send?.({ ended: jobId })
  })
  process.on('message', (jobId) => void queue.announce(String(jobId)))
}
process.send?.({ ready: true })
