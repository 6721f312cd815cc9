import { setMaxListeners } from 'node:events'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { request as httpRequest } from 'node:http'
import path from 'node:path'
import type { APIRequestContext, APIResponse } from '@playwright/test'
import Database from 'better-sqlite3'
import { CAST } from '@/seed/sign-ins'
import { expect, type PersonName, test } from './fixtures'
import type { ServerUnderTest } from './server-under-test'

/** What comes over HTTP, from people and from programs: looked at as it comes, without a browser's kindness. */

let server: ServerUnderTest
test.beforeAll(({ server: ofThisWorker }) => {
  server = ofThisWorker
})

type Demo = Record<
  'skuaId' | 'skuaA' | 'skuaB' | 'pipitId' | 'pipitA' | 'brackenfoldId' | 'proposalId' | 'meetingId' | 'mailId',
  string
>

/** Every page of the application, as a path under `app`, from the folders themselves. */
const PAGES = readdirSync('app', { recursive: true })
  .map((entry) => `/${String(entry).split(path.sep).join('/')}`)
  .filter((file) => file.endsWith('/page.tsx'))
  // Folders in parentheses group pages and are no part of an address.
  .map((file) => file.slice(0, -'/page.tsx'.length).replace(/\/\([^/]+\)/g, '') || '/')
  .sort()

/** Pages that somebody may see who is not signed in. */
const OPEN_PAGES = /^\/(sign-in|setup|invitation|forgot-password|reset-password|confirm-address)/

function fill(page: string, demo: Demo, projectId: string, revisionId: string): string {
  const values: Record<string, string> = {
    projectId,
    revisionId,
    companyId: demo.brackenfoldId,
    proposalId: demo.proposalId,
    meetingId: demo.meetingId,
    mailId: demo.mailId,
    token: 'A'.repeat(43),
  }
  return page.replaceAll(/\[(\w+)\]/g, (_all, name: string) => values[name] ?? 'nothing')
}

/** What a database, its library or a stack would say. */
const RAW_ERRORS = /prisma|sqlite_|\binvocation\b|SELECT [`"*]|node_modules|constraint failed|invalid byte sequence/i

async function get(request: APIRequestContext, url: string): Promise<APIResponse> {
  return request.get(url, { maxRedirects: 0, failOnStatusCode: false })
}

test('a page that is denied has its own status, for every page and kind of person', async ({
  openAs,
  openAsVisitor,
  backstage,
  demo,
}) => {
  const outsider = 'hesper.lull@example.org'
  const password = 'whimbrel-tideline-7'
  const projectId = await backstage.act('makeProject', { name: 'Elsewhere', lead: 'dewi.marrable@quillmoor.example' })
  const account = { projectId, lead: 'dewi.marrable@quillmoor.example', name: 'Hesper Lull', email: outsider, password }
  await backstage.act('makeAccount', account)
  const asked: readonly (PersonName | { email: string } | null)[] = [
    null,
    { email: outsider },
    'lead',
    'observer',
    'admin',
    'ostrel',
  ]
  const wrong: string[] = []
  let deniedCount = 0
  for (const person of asked) {
    const page = person === null ? await openAsVisitor() : await openAs(person)
    const who = person === null ? 'visitor' : typeof person === 'string' ? person : 'outsider'
    for (const pattern of PAGES) {
      const url = fill(pattern, demo, demo.skuaId, demo.skuaB)
      const response = await get(page.context().request, url)
      const status = response.status()
      const text = await response.text()
      const says = `${who} ${pattern}: ${status}`
      // The words also stand in the code of every page, for a client that goes there later; the heading does not.
      const isNotHere = />Page not found<\/h1>/.test(text)
      if (RAW_ERRORS.test(text)) wrong.push(`${says} with a raw error`)
      if (![200, 303, 307, 308, 404].includes(status)) wrong.push(says)
      if (isNotHere && status !== 404) wrong.push(`${says}, while the page says that it is not here`)
      if (person === null && !OPEN_PAGES.test(pattern) && ![307, 303].includes(status)) wrong.push(says)
      // The catalogue of the workspace is for every team to read, and its flex tests, materials and constructions with it.
      const isClosed = /\[projectId\]|\[companyId\]|^\/workspace(?!\/(?:catalogue|flex-tests|library))/.test(pattern)
      if (who === 'outsider' && isClosed && status !== 404) wrong.push(says)
      if (status === 404) deniedCount += 1
    }
  }
  expect(wrong).toEqual([])
  expect(deniedCount).toBeGreaterThan(40)
})

test('scripts run by a nonce of their one answer, and a script that is slipped in does not run', async ({
  openAs,
  demo,
  consoleWatch,
}) => {
  const page = await openAs('lead')
  const nonces = new Set<string>()
  const urls = ['/', '/projects', '/workspace-that-is-not', `/projects/${demo.skuaId}`]
  for (const pattern of PAGES) {
    if (pattern.includes('/revisions/[revisionId]') && !pattern.includes('[proposalId]')) {
      urls.push(fill(pattern, demo, demo.skuaId, demo.skuaB))
    }
  }
  for (const url of urls) {
    const response = await get(page.context().request, url)
    const policy = response.headers()['content-security-policy'] ?? ''
    const nonce = /script-src [^;]*'nonce-([^']+)'/.exec(policy)?.[1] ?? ''
    expect(nonce, url).not.toBe('')
    expect(/script-src [^;]*/.exec(policy)?.[0]).not.toContain('unsafe')
    expect(/style-src [^;]*/.exec(policy)?.[0]).not.toContain('unsafe')
    nonces.add(nonce)
    const text = await response.text()
    for (const [tag] of text.matchAll(/<(script|style|link rel="stylesheet")[^>]*>/g)) {
      expect(tag, url).toContain(`nonce="${nonce}"`)
    }
  }
  expect(nonces.size).toBe(urls.length)

  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/construction`)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  consoleWatch.expect(/Content Security Policy/)
  const ran = await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.slippedIn = true'
    document.body.append(script)
    document.body.insertAdjacentHTML('beforeend', '<img src="data:," onerror="window.slippedIn = true">')
    return new Promise((resolve) => {
      setTimeout(() => resolve('slippedIn' in window), 300)
    })
  })
  expect(ran).toBe(false)
})

test('downloads keep the policy of their own, under which nothing runs', async ({ openAs, demo }) => {
  const { request } = (await openAs('lead')).context()
  const revision =
    (await (await get(request, `/projects/${demo.pipitId}/revisions/${demo.pipitA}/artwork`)).text()) ?? ''
  const artwork = /\/api\/artwork\/[\w-]+/.exec(revision)?.[0] ?? ''
  expect(artwork).not.toBe('')
  const urls = [
    artwork,
    `/api/revisions/${demo.skuaB}/drawing?format=svg&sheet=1`,
    `/api/revisions/${demo.pipitA}/package`,
    `/api/revisions/${demo.skuaB}/design`,
  ]
  for (const url of urls) {
    const response = await get(request, url)
    expect(response.status(), url).toBe(200)
    expect(response.headers()['content-security-policy'], url).toBe("default-src 'none'; sandbox")
    expect(response.headers()['x-content-type-options']).toBe('nosniff')
  }
})

/** Sends a body as it is, with no library's help; answers status and text. */
function send(
  url: string,
  options: {
    method?: string
    headers: Record<string, string>
    body?: string | Buffer
    isChunked?: boolean
    signal?: AbortSignal
  },
): Promise<{ status: number; text: string; headers: Record<string, unknown> }> {
  return new Promise((resolve, reject) => {
    const { body = '', isChunked = false, signal } = options
    const length = isChunked
      ? { 'transfer-encoding': 'chunked' }
      : { 'content-length': String(Buffer.byteLength(body)) }
    const sent = httpRequest(
      new URL(url, server.address),
      { method: options.method ?? 'POST', headers: { ...options.headers, ...length }, signal },
      (response) => {
        let text = ''
        response.setEncoding('utf8')
        response.on('data', (part) => {
          text += part
        })
        response.on('end', () => resolve({ status: response.statusCode ?? 0, text, headers: response.headers }))
      },
    )
    sent.on('error', reject)
    sent.end(body)
  })
}

const ACTION = { 'next-action': '7f'.padEnd(42, '0'), 'content-type': 'text/plain;charset=UTF-8' }
const nest = (depth: number) => '['.repeat(depth) + ']'.repeat(depth)
const cookieOf = async (page: { context(): { cookies(): Promise<{ name: string; value: string }[]> } }) =>
  (await page.context().cookies()).map(({ name, value }) => `${name}=${value}`).join('; ')

test('a large body without a session is turned away unread, and the server answers others meanwhile', async () => {
  let slowestMs = 0
  let isDone = false
  const others = (async () => {
    while (!isDone) {
      const startedAt = performance.now()
      await send('/icon.svg', { method: 'GET', headers: {} })
      slowestMs = Math.max(slowestMs, performance.now() - startedAt)
      await new Promise((resolve) => setTimeout(resolve, 25))
    }
  })()
  const body = nest(14_000_000)
  for (const url of ['/sign-in', '/api/auth/callback/credentials', '/api/revisions/none/design']) {
    const answered = await send(url, { headers: ACTION, body })
    expect(answered.status, url).toBe(401)
    expect(answered.text).toContain('You are signed out')
  }
  isDone = true
  await others
  // Parsing this body held everybody up for five seconds and took more than a gigabyte.
  expect(slowestMs).toBeLessThan(4_000)
})

test('bodies are bounded by size, depth and kind, in words', async ({ openAs }) => {
  const cookie = await cookieOf(await openAs('designer'))
  const headers = { ...ACTION, cookie }
  const large = await send('/projects', { headers, body: 'x'.repeat(1024 * 1024 + 1) })
  expect([large.status, large.text]).toEqual([413, 'This is 1.0 MiB; at most 1.0 MiB can be sent at once.'])
  const deep = await send('/projects', { headers, body: nest(65) })
  expect([deep.status, deep.text]).toEqual([400, 'The request is nested more than 64 levels deep.'])
  const quoted = await send('/projects', { headers, body: JSON.stringify(['['.repeat(1000), '\\"[[[']) })
  // Let in: that there is no such action is said by what comes after the door.
  expect([404, 409]).toContain(quoted.status)
  const endless = await send('/sign-in', { headers: ACTION, body: 'x', isChunked: true })
  expect(endless.status).toBe(411)
  const api = await send('/api/revisions/none/design', { headers: { cookie }, body: nest(70) })
  expect([api.status, JSON.parse(api.text).error.kind]).toEqual([400, 'invalid'])
})

test('files come by their own way: who sends is asked first, and what is not kept leaves nothing', async ({
  openAs,
  demo,
  backstage,
}) => {
  const revisionId = await backstage.act('makeRevision', {
    projectId: demo.pipitId,
    by: 'ines.vantongeren@quillmoor.example',
    label: 'Upload',
    design: 'pipit-rev-a',
  })
  const listIncoming = () => {
    const folder = path.join(server.dataFolder, 'files', 'incoming')
    return existsSync(folder) ? readdirSync(folder) : []
  }
  const page = await openAs('designer')
  const cookie = await cookieOf(page)
  const say = (fileName: string) => encodeURIComponent(JSON.stringify({ revisionId, fileName }))
  const type = 'application/octet-stream'
  const file = { cookie, 'content-type': type, 'x-upload': say('größe <1>.gbr') }
  const text = 'G04 layer*\n'

  const unsigned = await send('/api/uploads/artwork', { headers: { ...file, cookie: '' }, body: 'x'.repeat(500) })
  expect(unsigned.status).toBe(401)
  const formed = await send('/api/uploads/artwork', { headers: { ...file, 'content-type': 'text/plain' }, body: text })
  expect(formed.status).toBe(400)
  const unknown = await send('/api/uploads/toString', { headers: file, body: text })
  expect(unknown.status).toBe(404)
  const observer = await cookieOf(await openAs('observer'))
  const denied = await send('/api/uploads/artwork', { headers: { ...file, cookie: observer }, body: text })
  expect(denied.status).toBe(403)
  const odd = await send('/api/uploads/artwork', {
    headers: { ...file, 'x-upload': encodeURIComponent(JSON.stringify({ revisionId: 'a\u0000b', fileName: 'a' })) },
    body: text,
  })
  expect([odd.status, JSON.parse(odd.text).refusal.kind]).toEqual([400, 'invalid'])
  const large = await send('/api/uploads/artwork', { headers: file, body: 'G'.repeat(26 * 1024 * 1024) })
  expect([large.status, JSON.parse(large.text).refusal.issues[0].code]).toEqual([400, 'too-large'])
  const kept = await send('/api/uploads/artwork', { headers: file, body: text })
  expect([kept.status, JSON.parse(kept.text).value?.fileName]).toEqual([200, 'größe 1.gbr'])
  const nothing = await send('/api/uploads/artwork', { headers: { ...file, 'x-upload': say('empty.gbr') } })
  expect(JSON.parse(nothing.text).refusal.issues[0].code).toBe('empty')

  await new Promise<void>((resolve) => {
    const cut = httpRequest(
      new URL('/api/uploads/artwork', server.address),
      { method: 'POST', headers: { ...file, 'content-length': '9000000' } },
      () => {},
    )
    cut.on('error', () => resolve())
    cut.write('G'.repeat(500_000))
    setTimeout(() => {
      expect(listIncoming().length).toBe(1)
      cut.destroy()
    }, 1500)
  })
  await expect.poll(listIncoming).toEqual([])

  await page.goto(`/projects/${demo.pipitId}/revisions/${revisionId}/artwork`)
  await expect(page.getByRole('link', { name: /größe 1\.gbr/ })).toBeVisible()
  await expect(page.getByText(/Files kept: the project .* of 2048 MiB/)).toBeVisible()
  // Several at once go one after the other.
  await page.getByLabel('Add an artwork file').setInputFiles(
    ['by-hand.gbr', 'by-hand-too.gbr'].map((name) => ({
      name,
      mimeType: 'text/plain',
      buffer: Buffer.from(`G04 ${name}*\n`),
    })),
  )
  await page.getByRole('button', { name: 'Add to the artwork' }).click()
  await expect(page.getByRole('link', { name: /by-hand\.gbr/ })).toBeVisible()
  await expect(page.getByRole('link', { name: /by-hand-too\.gbr/ })).toBeVisible()
})

test('one person opens so many streams and no more; a closed one makes room', async ({ openAs, demo }) => {
  const cookie = await cookieOf(await openAs('quality'))
  const open = () =>
    new Promise<{ status: number; retryAfter: unknown; close: () => void }>((resolve, reject) => {
      const asked = httpRequest(
        new URL(`/api/revisions/${demo.skuaB}/events`, server.address),
        { headers: { cookie } },
        (response) => {
          response.on('data', () => {})
          response.on('error', () => {})
          const close = () => asked.destroy()
          resolve({ status: response.statusCode ?? 0, retryAfter: response.headers['retry-after'], close })
        },
      )
      asked.on('error', reject)
      asked.end()
    })
  const streams: Awaited<ReturnType<typeof open>>[] = []
  for (let count = 0; count < 20; count++) streams.push(await open())
  expect(streams.every(({ status }) => status === 200)).toBe(true)
  const refused = await open()
  expect([refused.status, refused.retryAfter]).toEqual([429, '30'])
  streams.pop()?.close()
  await expect
    .poll(async () => {
      const { status, close } = await open()
      close()
      return status
    })
    .toBe(200)
  for (const { close } of streams) close()
})

test('one person’s many drawings do not hold up another’s', async ({ openAs, demo }) => {
  const [one, other] = [await cookieOf(await openAs('designer')), await cookieOf(await openAs('mechanical'))]
  const url = `/api/revisions/${demo.skuaB}/drawing?format=pdf`
  const finished: string[] = []
  const ask = async (who: string, cookie: string) => {
    const { status } = await send(url, { method: 'GET', headers: { cookie } })
    finished.push(who)
    return status
  }
  const many = Array.from({ length: 8 }, () => ask('one', one))
  await new Promise((resolve) => setTimeout(resolve, 500))
  expect(await ask('other', other)).toBe(200)
  // At most what was being drawn when the other asked, and what was asked for in that half second.
  expect(finished.indexOf('other')).toBeLessThan(4)
  expect(await Promise.all(many)).toEqual(Array(8).fill(200))
  // So many at once are refused, and those whose asker went away are not drawn.
  const gone = new AbortController()
  setMaxListeners(30, gone.signal)
  let refusedCount = 0
  const flood = Array.from({ length: 30 }, async () => {
    const headers = { cookie: one }
    const answered = await send(url, { method: 'GET', headers, signal: gone.signal }).catch(() => null)
    if (answered?.status === 429 && answered.headers['retry-after'] === '30') refusedCount += 1
  })
  await expect.poll(() => refusedCount).toBe(6)
  gone.abort()
  await Promise.all(flood)
  expect(await ask('other', other)).toBe(200)
})

test('one person’s many heavy pages do not hold up a light one of another’s', async ({ openAs, demo }) => {
  const [one, other] = [await cookieOf(await openAs('designer')), await cookieOf(await openAs('mechanical'))]
  const finished: string[] = []
  const ask = async (who: string, cookie: string, url: string) => {
    const { status } = await send(url, { method: 'GET', headers: { cookie } })
    finished.push(who)
    return status
  }
  const light = `/projects/${demo.pipitId}/revisions/${demo.pipitA}/brief`
  const heavy = `/projects/${demo.skuaId}/revisions/${demo.skuaA}/bends`
  await ask('warm', one, heavy)
  await ask('warm', other, light)
  finished.length = 0
  const many = Array.from({ length: 24 }, () => ask('one', one, heavy))
  await expect.poll(() => finished.length, { intervals: [20] }).toBeGreaterThan(0)
  const before = finished.length
  expect(await ask('other', other, light)).toBe(200)
  // The one that was being computed, and what began before the other's request had been read.
  expect(finished.indexOf('other') - before).toBeLessThanOrEqual(4)
  expect(finished.length).toBeLessThan(20)
  expect(await Promise.all(many)).toEqual(Array(24).fill(200))
})

test('addresses that are no addresses are not found, and no database says so', async ({ openAs, demo }) => {
  const cookie = await cookieOf(await openAs('lead'))
  const ids = ['%00', 'a%00b', '%ED%A0%80', '%F0%9F', 'x'.repeat(5000), '%27%3B--', '..%2f..%2f', '%7F', '0', 'null']
  const wrong: string[] = []
  for (const id of ids) {
    const urls = [
      `/projects/${id}`,
      `/projects/${demo.skuaId}/revisions/${id}`,
      `/companies/${id}`,
      `/invitation/${id}`,
      `/workspace/mail/${id}`,
      `/api/artwork/${id}`,
      `/api/attachments/${id}`,
      `/api/revisions/${id}/design`,
      `/api/revisions/${id}/events`,
      `/api/companies/${id}/sheets/matrix/csv`,
    ]
    for (const url of urls) {
      const { status, text } = await send(url, { method: 'GET', headers: { cookie } })
      const isFine = [400, 404].includes(status) || (url.startsWith('/invitation/') && status === 200)
      if (!isFine || RAW_ERRORS.test(text)) wrong.push(`${status} ${url}`.slice(0, 80))
    }
  }
  for (const query of ['?find=%00', '?find=%ED%A0%80', `?find=${'x'.repeat(4000)}`, '?project=%00', '?find=a%00b']) {
    const { status, text } = await send(`/${query}`, { method: 'GET', headers: { cookie } })
    if (![200, 404].includes(status) || RAW_ERRORS.test(text)) wrong.push(`${status} /${query}`.slice(0, 60))
  }
  const sides = [`from=revision:%00&to=revision:${demo.skuaB}`, `from=revision:x&to=revision:${'9'.repeat(900)}`]
  for (const side of sides) {
    const { status, text } = await send(`/projects/${demo.skuaId}/compare?${side}`, {
      method: 'GET',
      headers: { cookie },
    })
    if (![200, 404].includes(status) || RAW_ERRORS.test(text)) wrong.push(`${status} ${side}`.slice(0, 60))
  }
  expect(wrong).toEqual([])
})

test('a database that fails is not quoted to anybody', async ({ openAs, demo }) => {
  const cookie = await cookieOf(await openAs('lead'))
  const csrf = await send('/api/auth/csrf', { method: 'GET', headers: {} })
  const csrfCookie = String(csrf.headers['set-cookie']).split(';')[0] ?? ''
  const { csrfToken } = JSON.parse(csrf.text) as { csrfToken: string }
  const { email, password } = CAST.lead
  const database = new Database(path.join(server.dataFolder, 'bendworthy.db'))
  database.pragma('busy_timeout = 10000')
  const answers: (readonly [string, Awaited<ReturnType<typeof send>>])[] = []
  database.exec('ALTER TABLE "User" RENAME TO "UserAway"')
  try {
    const ask = async (url: string, options: Parameters<typeof send>[1]) => {
      answers.push([url, await send(url, options)])
    }
    await ask('/', { method: 'GET', headers: { cookie } })
    await ask(`/projects/${demo.skuaId}`, { method: 'GET', headers: { cookie } })
    await ask(`/api/revisions/${demo.skuaB}/design`, { method: 'GET', headers: { cookie } })
    await ask('/api/uploads/artwork', { headers: { cookie, 'content-type': 'application/octet-stream' }, body: 'x' })
    await ask('/projects', { headers: { ...ACTION, cookie }, body: 'x'.repeat(40_000) })
    await ask('/api/auth/callback/credentials', {
      headers: { cookie: csrfCookie, 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ csrfToken, email, password, json: 'true' }).toString(),
    })
  } finally {
    database.exec('ALTER TABLE "UserAway" RENAME TO "User"')
    database.close()
  }
  for (const [url, { status, text, headers }] of answers) {
    expect(status, url).toBeGreaterThanOrEqual(400)
    const said = `${text} ${JSON.stringify(headers)}`.replaceAll(/\+|%20/g, ' ')
    expect(said, url).not.toMatch(RAW_ERRORS)
    expect(said, url).not.toMatch(/no such table|UserAway/i)
  }
  expect((await send('/', { method: 'GET', headers: { cookie } })).status).toBe(200)
})

test('database and files are readable by their owner alone', () => {
  const modeOf = (...parts: string[]) => statSync(path.join(server.dataFolder, ...parts)).mode & 0o777
  expect(modeOf()).toBe(0o700)
  const entries = readdirSync(server.dataFolder, { recursive: true, withFileTypes: true })
  const open = entries
    .filter((entry) => (statSync(path.join(entry.parentPath, entry.name)).mode & 0o077) !== 0)
    .map((entry) => entry.name)
  expect(entries.map(({ name }) => name)).toContain('bendworthy.db')
  expect(open).toEqual([])
})
