import 'server-only'
import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { enterRequest, log } from '@/lib/config'
import { getMetrics } from './metrics'
import { nameAddress } from './request-address'
import { getStopSignal } from './stopping'

/** An answer that takes longer is worth a line of its own. */
const SLOW_MS = 1_000

/**
 * Gives a request its id, which its log lines carry and its answer names (`x-request-id`), and counts it. Called when the request comes in,
 * before anything of it is read.
 */
export function followRequest(request: IncomingMessage, response: ServerResponse): void {
  const requestId = randomBytes(8).toString('hex')
  enterRequest(requestId)
  response.setHeader('x-request-id', requestId)
  const startedAt = performance.now()
  const method = request.method ?? ''
  const address = nameAddress(request.url ?? '')
  const { requests, seconds, underWay } = getMetrics()
  underWay.inc()
  response.once('close', () => {
    underWay.dec()
    // Kept alive it would be waited for, although no further request is taken.
    if (getStopSignal().aborted) request.socket.end()
    const ms = performance.now() - startedAt
    const status = response.writableFinished ? response.statusCode : 499
    const isStream = /event-stream|x-ndjson/.test(String(response.getHeader('content-type') ?? ''))
    requests.inc({ method, status: String(status) })
    if (!isStream) seconds.observe({ method }, ms / 1000)
    const fields = { requestId, method, address, status, ms: Math.round(ms) }
    if (status >= 500) log.warn('request failed', fields)
    else if (ms > SLOW_MS && !isStream) log.info('slow request', fields)
    else if (status === 401 || status === 403 || status === 429) log.info('request refused', fields)
    else log.debug('request', fields)
  })
}
