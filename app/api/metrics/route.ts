import { answerMetrics, visitorRoute } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** Figures of this process for monitoring: to this machine, or to who has the token of the settings. */
export const GET = visitorRoute(answerMetrics)
