import 'server-only'
import { randomBytes } from 'node:crypto'
import { subscribe } from 'node:diagnostics_channel'
import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Socket } from 'node:net'
import { z } from 'zod'

/**
 * What the socket knows of a request, before the framework adds forwarding headers of its own: from where it came, and
 * whether something in between said that it forwards. It reaches the handlers in a header that only this process can write.
 */
export interface Connection {
  /** Address of the other end of the socket. */
  readonly peer: string
  /** The Host header as it came. */
  readonly host: string
  /** Whether any header was there that something in between adds. */
  readonly isForwarded: boolean
  /** X-Forwarded-For as it came. */
  readonly forwardedFor: string
}

const connectionSchema = z.object({
  peer: z.string(),
  host: z.string(),
  isForwarded: z.boolean(),
  forwardedFor: z.string(),
}) satisfies z.ZodType<Connection>

export const CONNECTION_HEADER = 'x-bendworthy-connection'

/** Common practice of proxies and gateways; Forwarded is RFC 7239, Via is RFC 9110, 7.6.3. */
const FORWARDING =
  /^(x-forwarded(-.+)?|forwarded(-for)?|via|x-real-ip|x-client-ip|x-cluster-client-ip|x-original-(for|host|proto|forwarded-for)|x-proxyuser-ip|true-client-ip|cf-connecting-ip|cf-ray|fastly-client-ip|x-envoy-.+|x-amzn-.+|x-azure-.+)$/

const PLACE = Symbol.for('bendworthy.connection')
const shared = globalThis as { [PLACE]?: { readonly secret: string } }

/**
 * Marks every request of this process. Called once, before the server listens; again it does nothing.
 * @param onRequest  called for each, before anything of it is read
 */
export function markConnections(onRequest: (request: IncomingMessage, response: ServerResponse) => void): void {
  if (shared[PLACE] !== undefined) return
  const secret = randomBytes(24).toString('base64url')
  shared[PLACE] = { secret }
  subscribe('http.server.request.start', (message) => {
    const { request, response, socket } = message as {
      request: IncomingMessage
      response: ServerResponse
      socket: Socket
    }
    onRequest(request, response)
    const { headers } = request
    const connection: Connection = {
      peer: socket.remoteAddress ?? '',
      host: headers.host ?? '',
      isForwarded: Object.keys(headers).some((name) => FORWARDING.test(name)),
      forwardedFor: [headers['x-forwarded-for'] ?? ''].flat().join(','),
    }
    // Whatever a client sent under this name is written over.
    headers[CONNECTION_HEADER] = `${secret} ${Buffer.from(JSON.stringify(connection)).toString('base64url')}`
  })
}

/** Null where the request was not marked, or by somebody else: nothing is known of it then. */
export function readConnection(headers: Pick<Headers, 'get'>): Connection | null {
  const [secret, text] = (headers.get(CONNECTION_HEADER) ?? '').split(' ')
  if (text === undefined || shared[PLACE] === undefined || secret !== shared[PLACE].secret) return null
  return connectionSchema.parse(JSON.parse(Buffer.from(text, 'base64url').toString()))
}
