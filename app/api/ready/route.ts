import { getReadiness, visitorRoute } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** Whether a proxy should send requests to this process: 200, or 503 with what is missing. */
export const GET = visitorRoute(async () => {
  const { isReady, checks } = await getReadiness()
  const status = isReady ? 200 : 503
  return Response.json(
    { status: isReady ? 'ready' : 'not ready', checks },
    { status, headers: { 'cache-control': 'no-store' } },
  )
})
