import { visitorRoute } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** The process answers. Whether it has what it needs is asked at `/api/ready`. */
export const GET = visitorRoute(async () =>
  Response.json({ status: 'alive' }, { headers: { 'cache-control': 'no-store' } }),
)
