import type { NextApiRequest, NextApiResponse } from 'next'
import NextAuth from 'next-auth'
import { afterEach, beforeAll, expect, it, vi } from 'vitest'
import { db } from '@/lib/data/store/client'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'

const jar = vi.hoisted(() => ({
  kept: new Map<string, string>(),
  set: [] as { name: string; value: string; options: Record<string, unknown> }[],
}))
vi.mock('next/headers', () => ({
  cookies: async () => ({
    get: (name: string) => (jar.kept.has(name) ? { name, value: jar.kept.get(name) } : undefined),
    set: (name: string, value: string, options: Record<string, unknown>) => jar.set.push({ name, value, options }),
  }),
  headers: async () => new Headers(),
}))

afterEach(() => {
  vi.unstubAllEnvs()
  jar.set.length = 0
  jar.kept.clear()
})

/** The session's code as a server at this address has it: settings are read once a process. */
async function loadAt(publicUrl: string) {
  vi.stubEnv('BENDWORTHY_PUBLIC_URL', publicUrl)
  vi.stubEnv('NEXTAUTH_URL', publicUrl)
  vi.resetModules()
  return import('@/lib/server/session')
}

type Session = Awaited<ReturnType<typeof loadAt>>

/** A request to the session library; answers with the cookies that the browser is to keep. */
async function ask(
  { getAuthOptions }: Session,
  request: { action: string[]; method: string; body?: object; cookies?: Record<string, string> },
): Promise<string[]> {
  const cookies: string[] = []
  const response = {
    getHeader: () => cookies,
    setHeader: (name: string, value: string | string[]) => {
      if (name.toLowerCase() === 'set-cookie') cookies.splice(0, cookies.length, ...[value].flat())
      return response
    },
    status: () => response,
    json: () => {},
    send: () => {},
    end: () => {},
    redirect: () => response,
  }
  const { action, method, body = {}, cookies: sent = {} } = request
  const asked = { query: { nextauth: action, json: 'true' }, method, body, cookies: sent, headers: {} }
  await NextAuth(asked as unknown as NextApiRequest, response as unknown as NextApiResponse, getAuthOptions())
  return cookies
}

describeOnBothDatabases('the cookie of a session', () => {
  let team: Team
  beforeAll(async () => {
    team = await makeTeam()
  })

  /** Signs in as the browser does: the token against forged forms first. */
  async function signIn(session: Session): Promise<string[]> {
    const first = await ask(session, { action: ['csrf'], method: 'GET' })
    const pairs = first.map((cookie) => cookie.split(';')[0]?.split('=') ?? [])
    const cookies = Object.fromEntries(pairs.map(([name = '', value = '']) => [name, decodeURIComponent(value)]))
    const [csrfToken] = (cookies['next-auth.csrf-token'] ?? cookies['__Host-next-auth.csrf-token'] ?? '').split('|')
    const body = { csrfToken, email: team.lead.email, password: PASSWORD, json: 'true' }
    const second = await ask(session, { action: ['callback', 'credentials'], method: 'POST', body, cookies })
    return second.filter((cookie) => cookie.includes('session='))
  }

  it('is out of reach of scripts and of other sites’ forms, and lasts half a day', async () => {
    const [cookie, ...others] = await signIn(await loadAt('http://127.0.0.1:3000'))
    expect(others).toEqual([])
    expect(cookie).toMatch(/^bendworthy-session=\S+;/)
    expect(cookie).toMatch(/; HttpOnly/)
    expect(cookie).toMatch(/; SameSite=Lax/i)
    expect(cookie).toMatch(/; Path=\//)
    expect(cookie).not.toMatch(/; Secure/)
    const expires = /Expires=([^;]+)/.exec(cookie ?? '')?.[1] ?? ''
    expect((Date.parse(expires) - Date.now()) / 3_600_000).toBeCloseTo(12, 1)
  })

  it('goes over TLS alone where the address is https, under a name that says so (RFC 6265bis, 4.1.3)', async () => {
    const [cookie] = await signIn(await loadAt('https://review.example.org'))
    expect(cookie).toMatch(/^__Secure-bendworthy-session=\S+;/)
    for (const attribute of [/; HttpOnly/, /; Secure/, /; SameSite=Lax/i]) expect(cookie).toMatch(attribute)
  })

  it.each([
    ['http://127.0.0.1:3000', 'bendworthy-session', false],
    ['https://review.example.org', '__Secure-bendworthy-session', true],
  ])(
    'is set with the same care by an action, and the note of the device with it, at %s',
    async (publicUrl, name, secure) => {
      const { keepSession } = await loadAt(publicUrl)
      await keepSession({ ...team.lead, sessionId: 'a session' })
      const options = { httpOnly: true, sameSite: 'lax', secure, path: '/' }
      expect(jar.set).toMatchObject([
        { name, options: { ...options, maxAge: 12 * 3600 } },
        { name: name.replace('session', 'device'), options },
      ])
    },
  )

  it('is a new one at each sign-in, and the one that the browser had before, or was given, opens nothing more', async () => {
    const session = await loadAt('http://127.0.0.1:3000')
    const readCookie = (cookie = '') => decodeURIComponent(/^bendworthy-session=([^;]+)/.exec(cookie)?.[1] ?? '')
    const listOpen = async () =>
      (await db().session.findMany({ where: { userId: team.lead.userId, endedAt: null } })).map(({ id }) => id)
    await db().session.deleteMany({ where: { userId: team.lead.userId } })
    const [first] = await signIn(session)
    const [firstId] = await listOpen()
    // Anyone who planted this cookie, or copied it, holds nothing once its owner signs in again.
    jar.kept.set('bendworthy-session', readCookie(first))
    const [second] = await signIn(session)
    expect(readCookie(second)).not.toBe(readCookie(first))
    const open = await listOpen()
    expect(open).toHaveLength(1)
    expect(open).not.toContain(firstId)
    // A cookie that is not sealed by this installation ends nobody's session, and is no way in.
    jar.kept.set('bendworthy-session', 'made up')
    await signIn(session)
    expect(await listOpen()).toHaveLength(2)
  })
})
