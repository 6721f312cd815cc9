import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type RequestListener, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { askForTimeStamp } from '@/lib/data/records/time-stamps'
import {
  buildPackage,
  getKeyFingerprint,
  readArchive,
  readVerifyingKey,
  signStatement,
  verifyFiles,
} from '@/lib/package'
import { type LocalAuthority, makeLocalAuthority } from '@/test/factories/time-stamp-authority'
import { makeContent, makeKeys } from '@/test/integration/package/content-factory'

/** RFC 3161 (2001) and, for its transport, 3.4; the authority is OpenSSL on this machine. */
const keys = makeKeys()
let folder = ''
let caFile = ''
let authority: LocalAuthority
const servers: Server[] = []

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-stamps-'))
  authority = makeLocalAuthority(folder)
  caFile = path.join(folder, 'ca.pem')
})
afterAll(() => {
  for (const server of servers) server.close()
  rmSync(folder, { recursive: true, force: true })
})

async function serve(listen: RequestListener): Promise<string> {
  const server = createServer(listen)
  servers.push(server)
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
}

const answer: RequestListener = (request, response) => {
  const parts: Buffer[] = []
  request.on('data', (part) => parts.push(part))
  request.on('end', () => {
    const isQuery = request.headers['content-type'] === 'application/timestamp-query'
    response.writeHead(isQuery ? 200 : 415, { 'content-type': 'application/timestamp-reply' })
    response.end(isQuery ? authority.reply(new Uint8Array(Buffer.concat(parts))) : '')
  })
}

function signReleased() {
  const content = makeContent()
  const key = readVerifyingKey(keys.verifyingKeyPem)
  if (key === null) throw new Error('no key')
  const live = content.snapshot.signatures.find(({ voided }) => voided === null)
  const stamped = {
    revisionId: content.snapshot.revisionId,
    contentHash: live?.contentHash ?? '',
    keyFingerprint: getKeyFingerprint(key),
  }
  return { content, stamped, signed: signStatement(stamped, keys.signingKeyPem) }
}

async function build(token: Awaited<ReturnType<typeof askForTimeStamp>>) {
  const { content, signed } = signReleased()
  const release = { ...content.release, stamped: { ...signed, token } }
  const read = readArchive(await buildPackage({ ...content, release }, keys))
  if (!read.ok) throw new Error(read.issues[0]?.message)
  return read.value
}

type Files = Awaited<ReturnType<typeof build>>
const textOf = (files: Files, name: string) =>
  new TextDecoder().decode(files.find((file) => file.path === name)?.bytes ?? new Uint8Array())

describe('the time stamp of a release', () => {
  test('is in the package, is verified offline by the recipe that stands there, and is a witness against a stolen key', async () => {
    const { signed, content } = signReleased()
    const url = await serve(answer)
    const token = await askForTimeStamp(signed.signature, { timeStampUrl: url, timeStampCaFile: caFile })
    expect(token.because).toBe('')
    const files = await build(token)
    const trusted = verifyFiles(files, 'unpacked', { timeStampCaPem: authority.caPem })
    expect(trusted.ok ? trusted.value.timeStamp : trusted.issues).toMatchObject({ isTrusted: true })
    expect(verifyFiles(files, 'unpacked')).toMatchObject({ ok: true, value: { timeStamp: { isTrusted: false } } })

    // The lines of README.txt, as they stand there.
    const unpacked = path.join(folder, 'unpacked')
    for (const file of files) {
      mkdirSync(path.dirname(path.join(unpacked, file.path)), { recursive: true })
      writeFileSync(path.join(unpacked, file.path), file.bytes)
    }
    writeFileSync(path.join(unpacked, 'ca.pem'), authority.caPem)
    const lines = textOf(files, 'README.txt')
      .split('\n')
      .filter((line) => line.includes('time-stamp/') && line.startsWith('  openssl'))
    expect(lines).toHaveLength(2)
    for (const line of lines) execFileSync('sh', ['-c', line], { cwd: unpacked, stdio: 'pipe' })

    // The key was stolen tomorrow: what is shown to be of today stands, and only with an authority that is trusted.
    const tomorrow = new Date(Date.now() + 86_400_000).toISOString()
    const entry = {
      fingerprint: (verifyFiles(files, 'unpacked') as { value: { keyFingerprint: string } }).value.keyFingerprint,
      verifyingKeyPem: keys.verifyingKeyPem,
      since: '2020-01-01T00:00:00.000Z',
      retiredAt: null,
      reason: 'a disk was lost',
      endorsement: '',
    }
    const stolen = (compromisedAt: string) => ({ keys: [{ ...entry, compromisedAt }] })
    const judge = (compromisedAt: string, timeStampCaPem?: string) =>
      verifyFiles(files, 'unpacked', { register: stolen(compromisedAt), timeStampCaPem }).ok
    expect(judge(tomorrow, authority.caPem)).toBe(true)
    expect(judge(tomorrow)).toBe(false)
    expect(judge('2026-01-01T00:00:00.000Z', authority.caPem)).toBe(false)

    // Of another release.
    const other = await askForTimeStamp(
      signStatement({ ...signReleased().stamped, revisionId: 'other' }, keys.signingKeyPem).signature,
      { timeStampUrl: url, timeStampCaFile: null },
    )
    expect(other.because).toBe('')
    const swapped = verifyFiles(await build(other), 'unpacked')
    expect(swapped.ok ? [] : swapped.issues.map(({ code }) => code)).toEqual(['time-stamp'])
    expect(content.release.stamped).toBeUndefined()
  }, 100_000)

  test.each([
    ['answers with an error', (_: unknown, response: Parameters<RequestListener>[1]) => response.writeHead(500).end()],
    ['answers with something else', (_: unknown, response: Parameters<RequestListener>[1]) => response.end('<html>')],
    [
      'sends elsewhere',
      (_: unknown, response: Parameters<RequestListener>[1]) =>
        response.writeHead(302, { location: 'http://127.0.0.1:1/' }).end(),
    ],
    ['breaks off', (_: unknown, response: Parameters<RequestListener>[1]) => response.destroy()],
  ] as const)(
    'is missing, and the package says so and verifies, where the authority %s',
    async (_, listen) => {
      const timeStampUrl = await serve(listen as RequestListener)
      const token = await askForTimeStamp(signReleased().signed.signature, { timeStampUrl, timeStampCaFile: caFile })
      expect(token.response).toBeNull()
      const files = await build(token)
      expect(verifyFiles(files, 'unpacked')).toMatchObject({ ok: true, value: { timeStamp: null } })
      expect(textOf(files, 'README.txt')).toContain(
        'This package has no trusted time stamp: the time-stamp authority gave none',
      )
      expect(JSON.parse(textOf(files, 'release.json')).timeStamp).toMatchObject({ isThere: false })
    },
    100_000,
  )

  test('is refused from an authority that is not trusted, and is not asked for where none is set', async () => {
    const { signed } = signReleased()
    const other = makeLocalAuthority(mkdtempSync(path.join(folder, 'other-')))
    writeFileSync(path.join(folder, 'other.pem'), other.caPem)
    const timeStampUrl = await serve(answer)
    const refused = await askForTimeStamp(signed.signature, {
      timeStampUrl,
      timeStampCaFile: path.join(folder, 'other.pem'),
    })
    expect(refused.response).toBeNull()
    expect(await askForTimeStamp(signed.signature, { timeStampUrl: null, timeStampCaFile: null })).toEqual({
      response: null,
      because: 'no time-stamp authority is set',
    })
  }, 100_000)
})
