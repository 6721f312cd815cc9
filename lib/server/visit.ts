import 'server-only'
import { createHmac } from 'node:crypto'
import { isIPv6 } from 'node:net'
import { headers } from 'next/headers'
import { cache } from 'react'
import { getSecrets, getSettings, isLoopbackHost, isLoopbackOnly, log } from '@/lib/config'
import type { Visit } from '@/lib/data'
import { type Connection, readConnection } from './connection'
import { nameDevice } from './device-name'
import { readKnownDevice } from './known-device'

/** Where the present request comes from. */
export const getVisit = cache(async (): Promise<Visit> => {
  const sent = await headers()
  const connection = readConnection(sent)
  return {
    sourceKey: hashSource(findSource(connection, getSettings().proxyCount)),
    isThisMachine: connection !== null && isFromThisMachine(connection) && isLoopbackOnly(),
    device: nameDevice(sent.get('user-agent') ?? ''),
    known: await readKnownDevice(),
  }
})

/** The other end of the socket is this machine, it was asked for as this machine, and nothing says that it forwards. */
export function isFromThisMachine({ peer, host, isForwarded }: Connection): boolean {
  const hostName = URL.canParse(`http://${host}`) ? new URL(`http://${host}`).hostname : ''
  return !isForwarded && isLoopbackHost(peer.replace(/^::ffff:/i, '')) && isLoopbackHost(hostName)
}

/**
 * The address that a request came from. A forwarding header is believed only as far as the settings name proxies: each
 * appends the address that it saw, so the one that counts stands as many places from the end.
 */
export function findSource(connection: Connection | null, proxyCount: number): string {
  if (connection === null) return 'unknown'
  const { peer, forwardedFor } = connection
  if (proxyCount === 0) {
    if (connection.isForwarded) warnOfProxy()
    return foldSource(peer)
  }
  const chain = forwardedFor
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
  return foldSource(chain.at(-proxyCount) ?? chain[0] ?? peer)
}

/** Anyone who has one IPv6 address has a whole network of 64 bits (RFC 4291, 2.5.4); IPv4 may come written as IPv6. */
function foldSource(address: string): string {
  const plain = address.replace(/^\[|\](:\d+)?$/g, '').replace(/^::ffff:(?=\d+\.)/i, '')
  if (!isIPv6(plain)) return plain.replace(/:\d+$/, '')
  const [head = '', tail = ''] = plain.split('::')
  const before = head === '' ? [] : head.split(':')
  const after = tail === '' ? [] : tail.split(':')
  const gap = plain.includes('::') ? Array.from({ length: 8 - before.length - after.length }, () => '0') : []
  const network = [...before, ...gap, ...after].slice(0, 4).map((part) => Number.parseInt(part, 16).toString(16))
  return `${network.join(':')}::/64`
}

/** Addresses of people are kept as hashes that only this installation can make. */
function hashSource(source: string): string {
  return createHmac('sha256', getSecrets().sessionSecret).update(`source\n${source}`).digest('base64url')
}

let hasWarned = false

function warnOfProxy(): void {
  if (hasWarned) return
  hasWarned = true
  log.warn('requests come through a proxy that the settings do not name', {
    meaning: 'everybody counts as one source when failed sign-ins are counted; set BENDWORTHY_PROXY_COUNT',
  })
}
