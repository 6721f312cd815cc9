import 'server-only'
import { unstable_rethrow } from 'next/navigation'
import type { z } from 'zod'
import type { Actor, FileDownload } from '@/lib/data'
import { noteFetched, notingRefusal } from './access-notes'
import { explainError, explainInput, SIGNED_OUT } from './expected-errors'
import { getFairTurns, type TurnKind } from './fair-turns'
import { countRefusal } from './metrics'
import type { ServerRefusal } from './refusal'
import { nameAddress } from './request-address'
import { getActor } from './session'

export const STATUS: Readonly<Record<ServerRefusal['kind'], number>> = {
  'signed-out': 401,
  'not-allowed': 403,
  'not-found': 404,
  invalid: 400,
  blocked: 409,
  stale: 409,
  clash: 409,
  busy: 503,
  'too-many': 429,
  unexpected: 500,
}

type Params = Readonly<Record<string, string | undefined>>

export interface RouteContext {
  /** Resolves to nothing on an address without a variable part. */
  readonly params: Promise<Record<string, string | string[] | undefined> | undefined>
}

export interface Queued {
  /** The queue in which it waits for the person's turn; none for what is quickly done. */
  readonly turn?: TurnKind
}

/** Runs at once, or in the person's turn. */
export function inTurn<T>(
  { turn }: Queued,
  actor: Actor,
  work: () => Promise<T>,
  signal?: AbortSignal | undefined,
): Promise<T> {
  return turn === undefined ? work() : getFairTurns(turn).run(actor.userId, work, signal)
}

/**
 * A route handler: finds who is asking, runs, and turns every failure into a JSON answer `{ error }` with its status.
 * @param run  a file to download, or a Response of its own
 */
export function route(
  run: (actor: Actor, params: Params, request: Request) => Promise<FileDownload | Response>,
  queued: Queued = {},
): (request: Request, context: RouteContext) => Promise<Response> {
  return async (request, context) =>
    respond(request, async () => {
      const actor = await getActor()
      if (actor === null) return refuse(SIGNED_OUT)
      const params = flatten((await context.params) ?? {})
      const asked = { place: params, what: `${request.method} ${nameAddress(request.url)}` }
      const result = await notingRefusal(actor, asked, () =>
        inTurn(queued, actor, () => run(actor, params, request), request.signal),
      )
      if (result instanceof Response) return result
      // Noted before the first byte leaves.
      await noteFetched(actor, params, result.fileName)
      return sendFile(result)
    })
}

/** As `route`, for what anybody may fetch: it takes no actor, so it reads nothing of anybody's. */
export function visitorRoute(
  run: (request: Request) => Promise<FileDownload | Response>,
): (request: Request) => Promise<Response> {
  return async (request) =>
    respond(request, async () => {
      const result = await run(request)
      return result instanceof Response ? result : sendFile(result)
    })
}

export async function respond(request: Request, run: () => Promise<Response>): Promise<Response> {
  try {
    return await run()
  } catch (error) {
    unstable_rethrow(error)
    // Anyone who went away gets no answer, and left no error behind.
    if (request.signal.aborted) return new Response(null, { status: 499 })
    return refuse(explainError(error, `${request.method} ${new URL(request.url).pathname}`))
  }
}

/**
 * What a request sends as JSON, with what its address says, checked.
 * @returns the input, or the answer that names each field and what is wrong with it
 */
export async function readInput<S extends z.ZodType>(
  request: Request,
  schema: S,
  ofAddress: Readonly<Record<string, unknown>>,
): Promise<z.infer<S> | Response> {
  let sent: unknown
  try {
    sent = await request.json()
  } catch {
    return refuse({ kind: 'invalid', message: 'The request is not JSON.', issues: [] })
  }
  const fields = typeof sent === 'object' && sent !== null ? sent : {}
  const parsed = schema.safeParse({ ...fields, ...ofAddress })
  return parsed.success ? parsed.data : refuse(explainInput(parsed.error.issues))
}

function refuse(refusal: ServerRefusal): Response {
  countRefusal(refusal.kind)
  return Response.json({ error: refusal }, { status: STATUS[refusal.kind], headers: getRefusalHeaders(refusal) })
}

const RETRY_SECONDS = 30

/** RFC 9110, 10.2.3: when it is worth asking again. */
export function getRefusalHeaders({ kind }: ServerRefusal): Record<string, string> {
  const isLater = kind === 'busy' || kind === 'too-many'
  return { 'cache-control': 'no-store', ...(isLater ? { 'retry-after': String(RETRY_SECONDS) } : {}) }
}

export function flatten(params: Record<string, string | string[] | undefined>): Params {
  return Object.fromEntries(
    Object.entries(params).map(([name, value]) => [name, Array.isArray(value) ? value.join('/') : value]),
  )
}

/** Always as a download, never rendered: what people uploaded must not run in our pages. */
function sendFile({ fileName, mediaType, bytes }: FileDownload): Response {
  const plainName = fileName.replaceAll(/[^\x20-\x7e]|["\\]/g, '_')
  return new Response(bytes, {
    headers: {
      'content-type': mediaType,
      'content-length': String(bytes.length),
      // RFC 6266 (2011): a plain name for old readers, and the real one in UTF-8.
      'content-disposition': `attachment; filename="${plainName}"; filename*=UTF-8''${encodeRfc5987(fileName)}`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
    },
  })
}

function encodeRfc5987(text: string): string {
  return encodeURIComponent(text).replaceAll(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`)
}
