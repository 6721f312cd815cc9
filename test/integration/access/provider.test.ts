import { type ChildProcess, spawn } from 'node:child_process'
import { createServer } from 'node:net'
import type { NextApiRequest, NextApiResponse } from 'next'
import NextAuth from 'next-auth'
import { afterAll, beforeAll, beforeEach, expect, it, vi } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** Sign-in through the session library at a real OpenID Connect provider in a process of its own. */

const jar = vi.hoisted(() => new Map<string, string>())
vi.mock('next/headers', () => ({
  cookies: async () => ({
    get: (name: string) => (jar.has(name) ? { name, value: jar.get(name) } : undefined),
    set: (name: string, value: string, { maxAge }: { maxAge?: number }) =>
      maxAge === 0 ? jar.delete(name) : jar.set(name, value),
  }),
  headers: async () => new Headers(),
}))

const ADDRESS = 'http://localhost:3900'
let provider: ChildProcess
let issuer = ''

async function findFreePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no port')
  return address.port
}

beforeAll(async () => {
  const port = await findFreePort()
  issuer = `http://localhost:${port}`
  provider = spawn(process.execPath, [
    'test/setup/oidc-provider.mjs',
    String(port),
    `${ADDRESS}/api/auth/callback/oidc`,
  ])
  await new Promise<void>((resolve, reject) => {
    provider.stdout?.on('data', () => resolve())
    provider.once('exit', () => reject(new Error('the provider ended')))
  })
  // Read with the first use of the settings.
  process.env.BENDWORTHY_PUBLIC_URL = ADDRESS
  process.env.NEXTAUTH_URL = ADDRESS
  process.env.BENDWORTHY_OIDC_ISSUER = issuer
  process.env.BENDWORTHY_OIDC_CLIENT_ID = 'review'
  process.env.BENDWORTHY_OIDC_CLIENT_SECRET = 'a secret of the tests, long enough'
}, 120_000)
afterAll(() => {
  provider.kill()
})
beforeEach(() => jar.clear())

interface Asked {
  readonly action: string[]
  readonly method?: string
  readonly query?: Record<string, string>
  readonly body?: Record<string, string>
}

/** A request to the session library by the browser whose cookies are in the jar; where it leads. */
async function ask({ action, method = 'GET', query = {}, body = {} }: Asked): Promise<string> {
  const { getAuthOptions } = await import('@/lib/server/session')
  const set: string[] = []
  let leadsTo = ''
  const response = {
    getHeader: () => set,
    setHeader: (name: string, value: string | string[]) => {
      if (name.toLowerCase() === 'set-cookie') set.splice(0, set.length, ...[value].flat())
      if (name.toLowerCase() === 'location') leadsTo = String(value)
      return response
    },
    status: () => response,
    json: (answer: { url?: string }) => {
      leadsTo = answer.url ?? ''
    },
    send: () => {},
    end: () => {},
  }
  const cookies = Object.fromEntries(jar)
  const asked = { query: { nextauth: action, ...query }, method, body, cookies, headers: {} }
  await NextAuth(asked as unknown as NextApiRequest, response as unknown as NextApiResponse, getAuthOptions())
  for (const line of set) {
    const [name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line)?.slice(1) ?? []
    if (value === '' || /Max-Age=0/i.test(line)) jar.delete(name)
    else jar.set(name, decodeURIComponent(value))
  }
  return leadsTo
}

/** To the provider: its address, with what the session library asks for. */
async function begin(): Promise<URL> {
  await ask({ action: ['csrf'] })
  const csrfToken = (jar.get('next-auth.csrf-token') ?? '').split('|')[0] ?? ''
  const body = { csrfToken, callbackUrl: `${ADDRESS}/account`, json: 'true' }
  return new URL(await ask({ action: ['signin', 'oidc'], method: 'POST', body }))
}

/** At the provider, as somebody: the answer that the browser is sent back with. */
async function passProvider(start: URL, login: string): Promise<URL> {
  const own = new Map<string, string>()
  const go = async (url: URL, form?: Record<string, string>): Promise<Response> => {
    const response = await fetch(url, {
      redirect: 'manual',
      headers: { cookie: [...own].map(([name, value]) => `${name}=${value}`).join('; ') },
      ...(form === undefined ? {} : { method: 'POST', body: new URLSearchParams(form) }),
    })
    for (const line of response.headers.getSetCookie()) {
      const [name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line)?.slice(1) ?? []
      if (value === '') own.delete(name)
      else own.set(name, value)
    }
    return response
  }
  const forms: Record<string, string>[] = [{ prompt: 'login', login, password: 'anything' }, { prompt: 'consent' }]
  let url = start
  let response = await go(url)
  for (let step = 0; step < 12; step += 1) {
    const location = response.headers.get('location')
    if (location !== null) {
      url = new URL(location, url)
      if (url.origin === ADDRESS) return url
      response = await go(url)
      continue
    }
    const action = /action="([^"]+)"/.exec(await response.text())?.[1]
    const form = forms.shift()
    if (action === undefined || form === undefined) throw new Error(`the provider answered ${response.status}`)
    url = new URL(action, url)
    response = await go(url, form)
  }
  throw new Error('the provider leads round in circles')
}

const comeBack = (answer: URL) => ask({ action: ['callback', 'oidc'], query: Object.fromEntries(answer.searchParams) })

describeOnBothDatabases('signing in by a provider', () => {
  let team: Team
  beforeAll(async () => {
    team = await makeTeam()
  })

  it('is asked for with proof key, state and nonce', async () => {
    const start = await begin()
    expect(start.origin).toBe(issuer)
    expect(Object.fromEntries(start.searchParams)).toMatchObject({
      response_type: 'code',
      code_challenge_method: 'S256',
      state: expect.stringMatching(/.{20,}/),
      nonce: expect.stringMatching(/.{20,}/),
    })
  }, 120_000)

  it('opens no account by an address that happens to be the same', async () => {
    for (const login of [team.lead.email, `unverified.${team.lead.email}`]) {
      jar.clear()
      expect(await comeBack(await passProvider(await begin(), login))).toContain('/sign-in?problem=not-joined')
      expect(jar.has('bendworthy-session')).toBe(false)
    }
    expect(await db().session.count({ where: { userId: team.lead.userId } })).toBe(0)
  }, 120_000)

  it('opens the account that was joined to the identity, by its row of a session', async () => {
    const { token } = await expectDone(data.beginIdentityLink(team.lead, { password: PASSWORD }))
    const identity = {
      issuer,
      subject: 'halka@identity.example',
      email: 'halka@identity.example',
      isEmailVerified: true,
    }
    await expectDone(data.finishIdentityLink(team.lead, { token, identity }))
    expect(await comeBack(await passProvider(await begin(), 'halka@identity.example'))).toBe(`${ADDRESS}/account`)
    expect(jar.has('bendworthy-session')).toBe(true)
    expect(await db().session.findMany({ where: { userId: team.lead.userId } })).toMatchObject([
      { method: 'provider', endedAt: null },
    ])
  }, 120_000)

  it('joins by an admin’s word the account whose address the provider vouches for', async () => {
    const { admin, member } = team
    await expectDone(data.allowIdentity(admin, { userId: member.userId }))
    const unverified = await comeBack(await passProvider(await begin(), `unverified.${member.email}`))
    expect(unverified).toContain('not-joined')
    jar.clear()
    expect(await comeBack(await passProvider(await begin(), member.email))).toBe(`${ADDRESS}/account`)
    expect(await db().identity.findMany({ where: { userId: member.userId } })).toMatchObject([
      { subject: member.email, linkedById: admin.userId },
    ])
    // Another identity with the same address finds the word used up.
    jar.clear()
    expect(await comeBack(await passProvider(await begin(), `second.${member.email}`))).toContain('not-joined')
  }, 120_000)

  it('is refused with a forged state, in another browser, and a second time', async () => {
    const answer = await passProvider(await begin(), 'halka@identity.example')
    const forged = new URL(answer)
    forged.searchParams.set('state', 'forged')
    const kept = new Map(jar)
    const restore = () => {
      jar.clear()
      for (const [name, value] of kept) jar.set(name, value)
    }
    expect(await comeBack(forged)).toContain('error=')
    jar.clear()
    expect(await comeBack(answer)).toContain('error=')
    restore()
    expect(await comeBack(answer)).toBe(`${ADDRESS}/account`)
    restore()
    // The code was used: the provider takes it once.
    expect(await comeBack(answer)).toContain('error=')
  }, 120_000)
})
