import { stopJob } from '@/lib/data'
import { route } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** Stops a job of one's own: whoever follows it is told what it had found until then. */
export const POST = route(async (actor, { jobId = '' }) => {
  await stopJob(actor, jobId)
  return new Response(null, { status: 204 })
})
