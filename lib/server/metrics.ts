import 'server-only'
import { createHash, timingSafeEqual } from 'node:crypto'
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import { getSettings } from '@/lib/config'
import { readConnection } from './connection'
import type { ServerRefusal } from './refusal'
import { isFromThisMachine } from './visit'

/** Text format 0.0.4 of the open exposition format, which common monitoring reads. Names carry their unit. */
interface Metrics {
  readonly registry: Registry
  readonly requests: Counter<'method' | 'status'>
  readonly seconds: Histogram<'method'>
  readonly underWay: Gauge
  readonly refusals: Counter<'kind'>
}

/** One per process, however often a bundle holds this module. */
const PLACE = Symbol.for('bendworthy.metrics')
const process_ = globalThis as { [PLACE]?: Metrics }

export function getMetrics(): Metrics {
  process_[PLACE] ??= makeMetrics()
  return process_[PLACE]
}

function makeMetrics(): Metrics {
  const registry = new Registry()
  collectDefaultMetrics({ register: registry })
  const registers = [registry]
  return {
    registry,
    requests: new Counter({
      name: 'bendworthy_requests_total',
      help: 'Requests that were answered',
      labelNames: ['method', 'status'],
      registers,
    }),
    seconds: new Histogram({
      name: 'bendworthy_request_seconds',
      help: 'From the first byte of a request to the last of its answer; streams are left out',
      labelNames: ['method'],
      buckets: [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30],
      registers,
    }),
    underWay: new Gauge({ name: 'bendworthy_requests_under_way', help: 'Requests not answered yet', registers }),
    refusals: new Counter({
      name: 'bendworthy_refusals_total',
      help: 'Answers by kind of refusal',
      labelNames: ['kind'],
      registers,
    }),
  }
}

export const countRefusal = (kind: ServerRefusal['kind']): void => getMetrics().refusals.inc({ kind })

/**
 * To this machine itself, or with the token. Anybody else gets the answer for an address that there is not: how busy a server is, is not
 * everybody's business.
 */
export async function answerMetrics(request: Request): Promise<Response> {
  if (!mayRead(request)) return Response.json({ error: { kind: 'not-found' } }, { status: 404 })
  const { registry } = getMetrics()
  return new Response(await registry.metrics(), {
    headers: { 'content-type': registry.contentType, 'cache-control': 'no-store' },
  })
}

function mayRead(request: Request): boolean {
  const { metricsToken } = getSettings()
  const sent = /^Bearer (.+)$/.exec(request.headers.get('authorization') ?? '')?.[1]
  if (metricsToken !== null && sent !== undefined) return isSame(sent, metricsToken)
  const connection = readConnection(request.headers)
  return connection !== null && isFromThisMachine(connection)
}

function isSame(one: string, other: string): boolean {
  const hash = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(hash(one), hash(other))
}
