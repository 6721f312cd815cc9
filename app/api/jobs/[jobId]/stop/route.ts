import { stopJob } from '@/lib/data'
import { route } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** Stops a job of one's own: anyone who follows it is told what it had found so far. */
export const POST = route(async (actor, { jobId = '' }) => {
  await stopJob(actor, jobId)
  return new Response(null, { status: 204 })
})
