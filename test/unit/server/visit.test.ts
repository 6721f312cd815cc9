import { describe, expect, it, vi } from 'vitest'
import type { Connection } from '@/lib/server/connection'
import { findSource, isFromThisMachine } from '@/lib/server/visit'

vi.mock('next/headers', () => ({ headers: async () => new Headers(), cookies: async () => ({ get: () => undefined }) }))

const HERE: Connection = { peer: '127.0.0.1', host: '127.0.0.1:3000', isForwarded: false, forwardedFor: '' }

describe('whether a request was made on this machine', () => {
  it.each<Partial<Connection>>([
    {},
    { host: 'localhost:3000' },
    { host: '[::1]:3000', peer: '::1' },
    { peer: '::ffff:127.0.0.1' },
  ])('yes: %o', (part) => expect(isFromThisMachine({ ...HERE, ...part })).toBe(true))

  it.each<Partial<Connection>>([
    { isForwarded: true },
    { host: 'review.example.org' },
    { host: '127.0.0.1.example.org' },
    { host: '127.0.0.1@host.example' },
    { host: '' },
    { peer: '192.0.2.7' },
    { peer: '' },
    { peer: '::ffff:192.0.2.7' },
  ])('no: %o', (part) => expect(isFromThisMachine({ ...HERE, ...part })).toBe(false))
})

describe('where a request comes from', () => {
  const forwarded = { ...HERE, isForwarded: true, forwardedFor: '203.0.113.9, 198.51.100.4' }

  it('is the other end of the socket, whatever a header says, unless the settings name a proxy', () => {
    expect(findSource(HERE, 0)).toBe('127.0.0.1')
    expect(findSource(forwarded, 0)).toBe('127.0.0.1')
  })

  it('is what the outermost proxy of ours saw: what stands before it may be invented', () => {
    expect(findSource(forwarded, 1)).toBe('198.51.100.4')
    expect(findSource(forwarded, 2)).toBe('203.0.113.9')
    expect(findSource({ ...forwarded, forwardedFor: `6.6.6.6, ${forwarded.forwardedFor}` }, 1)).toBe('198.51.100.4')
  })

  it('counts one IPv6 network as one', () => {
    const at = (peer: string) => findSource({ ...HERE, peer }, 0)
    expect(at('2001:db8:1:2:3:4:5:6')).toBe(at('2001:db8:1:2::77'))
    expect(at('2001:db8:1:2::1')).not.toBe(at('2001:db8:1:3::1'))
    expect(at('::ffff:192.0.2.7')).toBe('192.0.2.7')
  })
})
