import 'server-only'
import { DOOR_TEXTS } from '@/lib/inputs'
import { explainError, SIGNED_OUT } from './expected-errors'
import type { ServerRefusal } from './refusal'
import { getActor } from './session'

/**
 * What is looked at before anything of a request is parsed. Files come by the upload routes, which ask who is sending before
 * they read, and count while they read; everything else is small.
 */

/** Enough for a sign-in by password or passkey, an invitation and the first set-up with the longest names. */
export const MOST_VISITOR_BODY_BYTES = 32 * 1024
/** The largest action is a saved design, whose text is bounded below this. The same figure stands in next.config.js. */
export const MOST_BODY_BYTES = 1024 * 1024
/** Designs and sheets nest some ten deep. Readers of nested data use a frame of the stack for each level. */
export const DEEPEST_BODY = 64

/** The parts of a request that are asked about. */
export interface Knock {
  readonly method: string
  readonly url: string
  readonly headers: Headers
  readonly text: () => Promise<string>
}

/** The answer for a request that is not let in; null for one that is. */
export async function refuseAtDoor(request: Knock): Promise<Response | null> {
  const url = new URL(request.url)
  const isProgram = url.pathname.startsWith('/api/')
  const refuse = (status: number, refusal: ServerRefusal): Response => answer(isProgram, status, refusal)
  try {
    return await decide(request, url, refuse)
  } catch (error) {
    return refuse(500, explainError(error, `${request.method} ${url.pathname}`))
  }
}

type Refuse = (status: number, refusal: ServerRefusal) => Response

async function decide(request: Knock, url: URL, refuse: Refuse): Promise<Response | null> {
  if (isStrange(url)) return refuse(404, { kind: 'not-found', message: 'There is no such address.' })
  if (request.method === 'GET' || request.method === 'HEAD') return null

  const size = readSize(request.headers)
  if (size === null) return refuse(411, invalid('The request does not state its length.'))
  if (size > MOST_VISITOR_BODY_BYTES && (await getActor()) === null) return refuse(401, SIGNED_OUT)
  if (size > MOST_BODY_BYTES) {
    return refuse(413, invalid(DOOR_TEXTS.tooLarge(size, MOST_BODY_BYTES)))
  }
  if (mayNest(request.headers) && getDepth(await request.text()) > DEEPEST_BODY) {
    return refuse(400, invalid(DOOR_TEXTS.tooDeep(DEEPEST_BODY)))
  }
  return null
}

function invalid(message: string): ServerRefusal {
  return { kind: 'invalid', message, issues: [] }
}

/** Forms show the text of an answer of exactly this type; programs read JSON, as the routes answer. */
function answer(isProgram: boolean, status: number, refusal: ServerRefusal): Response {
  const headers = { 'cache-control': 'no-store' }
  return isProgram
    ? Response.json({ error: refusal }, { status, headers })
    : new Response(refusal.message, { status, headers: { ...headers, 'content-type': 'text/plain' } })
}

/** Bytes that will follow; null where nobody knows. */
function readSize(headers: Headers): number | null {
  if (headers.has('transfer-encoding')) return null
  const said = headers.get('content-length')
  if (said === null) return 0
  return /^\d{1,15}$/.test(said) ? Number(said) : null
}

/** Whether the body is of a type whose readers descend into it. */
function mayNest(headers: Headers): boolean {
  return !(headers.get('content-type') ?? '').startsWith('application/x-www-form-urlencoded')
}

/** How deep brackets nest in a text, outside its quoted parts. */
export function getDepth(text: string): number {
  let depth = 0
  let deepest = 0
  let isQuoted = false
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index)
    if (isQuoted) {
      if (code === BACKSLASH) index += 1
      else if (code === QUOTE) isQuoted = false
    } else if (code === QUOTE) isQuoted = true
    else if (code === OPEN_LIST || code === OPEN_RECORD) {
      depth += 1
      if (depth > deepest) deepest = depth
    } else if (code === CLOSE_LIST || code === CLOSE_RECORD) depth -= 1
  }
  return deepest
}

const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_RECORD, CLOSE_RECORD] = [0x22, 0x5c, 0x5b, 0x5d, 0x7b, 0x7d]

/**
 * Control characters stand in no address here, and PostgreSQL refuses to compare a NUL. A path must be text (RFC 3629: a
 * lone surrogate is none); in a query the platform's own reader replaces what is not.
 */
function isStrange({ pathname, searchParams }: URL): boolean {
  try {
    return [decodeURIComponent(pathname), ...[...searchParams].flat()].some((text) => CONTROL_CHARACTERS.test(text))
  } catch {
    return true
  }
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for; tab and line ends are text
const CONTROL_CHARACTERS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/
