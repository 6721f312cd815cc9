import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeNonce, makeTimeStampQuery, readTimeStamp } from '@/lib/package/time-stamp'
import { type LocalAuthority, makeLocalAuthority } from '@/test/factories/time-stamp-authority'

/** RFC 3161 (2001), by a second implementation: OpenSSL is the authority, and reads what we write. */
let folder = ''
let authority: LocalAuthority
const data = new TextEncoder().encode('a signature of a release')
const inFolder = (name: string) => path.join(folder, name)

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-stamp-'))
  authority = makeLocalAuthority(folder)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('a trusted time stamp', () => {
  it('is asked for in a form that an authority reads, and its answer is read and verified', () => {
    const nonce = makeNonce()
    const query = makeTimeStampQuery(data, nonce)
    writeFileSync(inFolder('query.tsq'), query)
    const shown = execFileSync('openssl', ['ts', '-query', '-in', inFolder('query.tsq'), '-text'], { encoding: 'utf8' })
    expect(shown).toMatch(/Hash Algorithm: sha256/i)
    expect(shown).toMatch(/Certificate required: yes/i)
    const before = Date.now()
    const response = authority.reply(query)
    const read = readTimeStamp(response, data, authority.caPem, nonce)
    if (!read.ok) throw new Error(read.issues[0]?.message)
    expect(read.value).toMatchObject({ authority: expect.stringContaining('Time stamps of a test'), isTrusted: true })
    expect(Math.abs(Date.parse(read.value.at) - before)).toBeLessThan(60_000)
    // What we accept, OpenSSL accepts.
    writeFileSync(inFolder('data'), data)
    writeFileSync(inFolder('answer.tsr'), response)
    const files = ['-data', inFolder('data'), '-in', inFolder('answer.tsr'), '-CAfile', inFolder('ca.pem')]
    expect(execFileSync('openssl', ['ts', '-verify', ...files], { encoding: 'utf8', stdio: 'pipe' })).toContain('OK')
  })

  it('is of these bytes and no others, and trusted by the right root alone', () => {
    const response = authority.reply(makeTimeStampQuery(data, makeNonce()))
    const messageOf = (own: Uint8Array, of: Uint8Array) => {
      const read = readTimeStamp(own, of, authority.caPem)
      return read.ok ? 'ok' : (read.issues[0]?.message ?? '')
    }
    expect(messageOf(response, new TextEncoder().encode('another'))).toContain('of something else')
    const other = makeLocalAuthority(mkdtempSync(inFolder('other-')))
    for (const trusted of [null, other.caPem]) {
      const read = readTimeStamp(response, data, trusted)
      expect(read.ok && read.value.isTrusted).toBe(false)
    }
    // Any byte of the token that is changed.
    let acceptedCount = 0
    for (let at = 0; at < response.length; at += 7) {
      const changed = Uint8Array.from(response, (byte, index) => (index === at ? byte ^ 0x01 : byte))
      const read = readTimeStamp(changed, data, authority.caPem)
      if (!read.ok || !read.value.isTrusted) continue
      acceptedCount += 1
      const original = readTimeStamp(response, data, authority.caPem)
      // What is not signed (names of algorithms, the order of certificates) may differ; time and name may not.
      expect(read.value).toEqual(original.ok ? original.value : null)
    }
    expect(acceptedCount).toBeLessThan(response.length / 7 / 3)
    expect(messageOf(new Uint8Array([1, 2, 3]), data)).not.toBe('ok')
    expect(messageOf(new Uint8Array(readFileSync(inFolder('ca.pem'))), data)).not.toBe('ok')
  })

  it('answers its own query and no other', () => {
    const [own, another] = [makeNonce(), makeNonce()]
    const response = authority.reply(makeTimeStampQuery(data, own))
    expect(readTimeStamp(response, data, authority.caPem, own).ok).toBe(true)
    const read = readTimeStamp(response, data, authority.caPem, another)
    expect(read.ok ? '' : read.issues[0]?.message).toContain('answers another query')
  })

  /** RFC 3161, 2.4.2; the attribute's first version is of RFC 2634, the second of RFC 5035. */
  it.each(['sha1', 'sha256'] as const)(
    'is of the certificate that it names by %s, and of no twin with the same key',
    (hash) => {
      const own = makeLocalAuthority(mkdtempSync(inFolder(`${hash}-`)), hash)
      const response = Buffer.from(own.reply(makeTimeStampQuery(data, makeNonce())))
      expect(readTimeStamp(response, data, own.caPem)).toMatchObject({ ok: true, value: { isTrusted: true } })
      const at = response.indexOf(own.certificate())
      expect(at).toBeGreaterThan(0)
      response.set(own.makeTwin(), at)
      const read = readTimeStamp(response, data, own.caPem)
      expect(read.ok ? '' : read.issues[0]?.message).toContain('does not bear the signature of a certificate in it')
    },
  )

  /** RFC 8017, A.2.3 and RFC 4055, 3.1: OpenSSL's CMS signs; a salt as long as the hash is what RFC 8017 suggests. */
  it('is read where the authority signs by RSA, in either scheme and with any salt', () => {
    const own = makeLocalAuthority(mkdtempSync(inFolder('rsa-')), 'sha256', 'rsa')
    const query = makeTimeStampQuery(data, makeNonce())
    const answers = [
      own.reply(query),
      own.replyByPss(query),
      own.replyByPss(query, 'rsa_pss_saltlen:32'),
      own.replyByPss(query, 'rsa_pss_saltlen:20'),
      own.replyByPss(query, 'rsa_pss_saltlen:0'),
    ]
    for (const answer of answers) {
      expect(readTimeStamp(answer, data, own.caPem)).toMatchObject({ ok: true, value: { isTrusted: true } })
      // The signature is the last thing in the token.
      const changed = Uint8Array.from(answer, (byte, at) => (at === answer.length - 9 ? byte ^ 1 : byte))
      expect(readTimeStamp(changed, data, own.caPem).ok).toBe(false)
      expect(readTimeStamp(answer, new TextEncoder().encode('another'), own.caPem).ok).toBe(false)
    }
  })

  it('is refused where RSA-PSS mixes hashes, or one of them is SHA-1', () => {
    const own = makeLocalAuthority(mkdtempSync(inFolder('mixed-')), 'sha256', 'rsa')
    const query = makeTimeStampQuery(data, makeNonce())
    for (const mask of ['sha1', 'sha512']) {
      const read = readTimeStamp(own.replyByPss(query, `rsa_mgf1_md:${mask}`), data, own.caPem)
      expect(read.ok ? 'ok' : read.issues[0]?.message).toContain('hashes that differ or are not understood')
    }
  })
})
