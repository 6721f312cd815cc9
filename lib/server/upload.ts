import 'server-only'
import type { z } from 'zod'
import type { Actor, ActResult } from '@/lib/data'
import type { ActionResult } from './action'
import { explainError, explainInput, SIGNED_OUT } from './expected-errors'
import { getPlaces } from './places'
import type { ServerRefusal } from './refusal'
import { getRefusalHeaders, inTurn, type Queued, type RouteContext, STATUS } from './route'
import { getActor } from './session'

/** Header with what is sent beside the file: JSON, percent-encoded, since a header holds no other letters. */
export const UPLOAD_HEADER = 'x-upload'
const MOST_HEADER_CHARACTERS = 4000
const MIB = 1024 * 1024

/** What a file may be sent for. */
export interface UploadPurpose {
  readonly handle: (actor: Actor, said: object, body: AsyncIterable<Uint8Array>) => Promise<ActionResult<unknown>>
}

/** A file that goes to disk as it arrives: `run` takes it as an iterable, and bounds it. */
export function streamed<S extends z.ZodType, T>(
  schema: S,
  run: (actor: Actor, input: z.infer<S>) => Promise<ActResult<T>>,
): UploadPurpose {
  return {
    handle: async (actor, said, bytes) => {
      const parsed = schema.safeParse({ ...said, bytes })
      return parsed.success ? run(actor, parsed.data) : { ok: false, refusal: explainInput(parsed.error.issues) }
    },
  }
}

/** A file that is read as a whole, and so has to be small. */
export function whole<S extends z.ZodType, T>(
  schema: S,
  mostBytes: number,
  run: (actor: Actor, input: z.infer<S>) => Promise<ActResult<T>>,
  queued: Queued = {},
): UploadPurpose {
  return {
    handle: async (actor, said, body) => {
      const bytes = await collect(body, mostBytes)
      if (bytes === null) {
        const issue = { code: 'too-large', path: ['bytes'], message: `has more than ${mostBytes / MIB} MiB` }
        return refused({ kind: 'invalid', message: 'The file is too large.', issues: [issue] })
      }
      const parsed = schema.safeParse({ ...said, bytes })
      if (!parsed.success) return refused(explainInput(parsed.error.issues))
      return inTurn(queued, actor, () => run(actor, parsed.data))
    },
  }
}

/**
 * The way in for files: `POST` with the file as the body and the rest in a header. Who is sending is asked before anything is
 * read; the answer is what an action would give.
 */
export function uploadRoute(
  purposes: Readonly<Record<string, UploadPurpose>>,
): (request: Request, context: RouteContext) => Promise<Response> {
  return async (request, context) => {
    const name = String((await context.params)?.purpose ?? '')
    const result = await receive(request, Object.hasOwn(purposes, name) ? purposes[name] : undefined, name)
    if (result.ok) return Response.json(result, { headers: { 'cache-control': 'no-store' } })
    if (result.refusal.kind !== 'signed-out') await drain(request)
    return Response.json(result, { status: STATUS[result.refusal.kind], headers: getRefusalHeaders(result.refusal) })
  }
}

async function receive(
  request: Request,
  purpose: UploadPurpose | undefined,
  name: string,
): Promise<ActionResult<unknown>> {
  let leave = (): void => {}
  try {
    const actor = await getActor()
    if (actor === null) return refused(SIGNED_OUT)
    if (purpose === undefined) return refused({ kind: 'not-found', message: 'There is no such address.' })
    // No page of another site can send this type with our cookie without asking first (Fetch, "CORS-safelisted").
    if (request.headers.get('content-type') !== 'application/octet-stream') {
      return refused(invalid('The file must be sent as application/octet-stream.'))
    }
    const said = readSaid(request.headers.get(UPLOAD_HEADER))
    if (said === null) return refused(invalid(`The header ${UPLOAD_HEADER} cannot be read.`))
    leave = getPlaces('uploads').take(actor.userId)
    return await purpose.handle(actor, said, readBody(request))
  } catch (error) {
    if (request.signal.aborted) return refused(invalid('The connection ended before the file had arrived.'))
    return refused(explainError(error, `upload ${name}`))
  } finally {
    leave()
  }
}

/** Enough for the rest of a file that was just too large. */
const MOST_DRAINED_BYTES = 32 * MIB

/**
 * Reads on past what was refused and throws it away: a connection that ends while the other side still sends takes the answer
 * with it.
 */
async function drain({ body }: Request): Promise<void> {
  if (body === null || body.locked) return
  const reader = body.getReader()
  try {
    for (let size = 0; size < MOST_DRAINED_BYTES; ) {
      const { done, value } = await reader.read()
      if (done) return
      size += value.length
    }
  } catch {
    // Anyone who went away needs no answer.
  } finally {
    reader.releaseLock()
  }
}

/**
 * The body in its pieces. Anyone who stops in between leaves the rest unread: ending the stream would end the connection, and the
 * answer that says why with it.
 */
async function* readBody({ body }: Request): AsyncGenerator<Uint8Array> {
  if (body === null) return
  const reader = body.getReader()
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) return
      yield value
    }
  } finally {
    reader.releaseLock()
  }
}

function readSaid(header: string | null): object | null {
  if (header === null || header.length > MOST_HEADER_CHARACTERS) return null
  try {
    const said: unknown = JSON.parse(decodeURIComponent(header))
    return typeof said === 'object' && said !== null && !Array.isArray(said) ? said : null
  } catch {
    return null
  }
}

/** Null where there is more than may be. */
async function collect(body: AsyncIterable<Uint8Array>, mostBytes: number): Promise<Uint8Array<ArrayBuffer> | null> {
  const parts: Uint8Array[] = []
  let size = 0
  for await (const part of body) {
    size += part.length
    if (size > mostBytes) return null
    parts.push(part)
  }
  return new Uint8Array(Buffer.concat(parts))
}

function refused(refusal: ServerRefusal): ActionResult<never> {
  return { ok: false, refusal }
}

function invalid(message: string): ServerRefusal {
  return { kind: 'invalid', message, issues: [] }
}
