import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'

/** What a stranger tries at the sign-in page and its routes, over HTTP as a program sends it. */

const WRONG = 'a wrong guess'

async function signInByForm(page: Page, email: string, password: string): Promise<void> {
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
}

test('after signing in nobody is led to another site, however its address is written', async ({ openAs }) => {
  const page = await openAs('observer')
  for (const next of [
    '/%09/host.example',
    '/%0A/host.example',
    '/%0D/host.example',
    '/%5Chost.example',
    '//host.example',
    '%5C%5Chost.example',
    '/.//host.example',
    'https://host.example/',
    '%09//host.example',
  ]) {
    // Anyone who is signed in already is led on at once.
    const response = await page.request.get(`/sign-in?next=${next}`, { maxRedirects: 0 })
    const location = response.headers().location ?? ''
    // An address with a control character in it is no address here at all.
    if (response.status() === 404) continue
    expect([next, response.status()]).toEqual([next, 307])
    const base = new URL(response.url())
    expect([next, new URL(location, base).origin]).toEqual([next, base.origin])
  }
  // One that stays within is followed.
  const response = await page.request.get('/sign-in?next=%2Faccount%3Fa%3D1', { maxRedirects: 0 })
  expect(response.headers().location).toMatch(/\/account\?a=1$/)
})

test('signing in with such an address ends on a page of ours', async ({ openAsVisitor, demo }) => {
  expect(demo.skuaId).not.toBe('')
  const page = await openAsVisitor()
  const asked: string[] = []
  page.on('request', (request) => asked.push(new URL(request.url()).hostname))
  await page.goto('/sign-in?next=/%5Chost.example')
  await signInByForm(page, CAST.observer.email, CAST.observer.password)
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
  expect(new URL(page.url()).hostname).toBe('127.0.0.1')
  expect(asked).not.toContain('host.example')
})

/** A sign-in as a program sends it: the session library's token against forged forms first. */
async function postSignIn(page: Page, email: string, password: string, headers: Record<string, string> = {}) {
  const csrf = await page.request.get('/api/auth/csrf')
  const { csrfToken } = await csrf.json()
  return page.request.post('/api/auth/callback/credentials', {
    form: { csrfToken, email, password, json: 'true' },
    headers,
    maxRedirects: 0,
  })
}

test('demo accounts are refused to whatever comes through something that forwards, or by another name', async ({
  openAsVisitor,
  openAs,
  consoleWatch,
}) => {
  consoleWatch.expect(/status of 40/)
  const { email, password } = CAST.observer
  const unwelcome: Record<string, string>[] = [
    { 'x-forwarded-for': '203.0.113.9' },
    { 'x-forwarded-host': 'review.example.org' },
    { forwarded: 'for=203.0.113.9' },
    { via: '1.1 proxy' },
    { 'x-real-ip': '127.0.0.1' },
    { host: 'review.example.org' },
    // Nobody but the server can write this one.
    { 'x-forwarded-proto': 'https', 'x-bendworthy-connection': 'x eyJwZWVyIjoiMTI3LjAuMC4xIn0' },
  ]
  for (const headers of unwelcome) {
    const visitor = await openAsVisitor()
    const response = await postSignIn(visitor, email, password, headers)
    expect([headers, response.status()]).toEqual([headers, 401])
    expect((await response.json()).url).toContain('Demo')
    const page = await visitor.request.get('/sign-in', { headers })
    expect(await page.text()).not.toContain(email)
    // A session that was opened here does not count there.
    const member = await openAs('observer')
    expect((await member.request.get('/api/design-schema')).status()).toBe(200)
    const account = await member.request.get('/account', { headers, maxRedirects: 0 })
    expect([headers, account.status()]).toEqual([headers, 307])
  }
  const plain = await openAsVisitor()
  expect((await postSignIn(plain, email, password)).status()).toBe(200)
})

test('eight wrong passwords by a stranger lock the owner out nowhere', async ({ backstage, openAs, openAsVisitor }) => {
  test.setTimeout(600_000)
  const lead = CAST.lead.email
  const projectId = await backstage.act('makeProject', { name: `Doors ${Date.now()}`, lead })
  const email = `runa.${Date.now()}@quillmoor.example`
  const password = 'godwit-turning-tide'
  await backstage.act('makeAccount', { projectId, lead, name: 'Runa Feddersen', email, password })
  // Her own device: she signed in there once.
  const own = await openAsVisitor()
  expect((await postSignIn(own, email, password)).status()).toBe(200)

  const stranger = await openAsVisitor()
  const statuses: number[] = []
  for (let index = 0; index < 10; index += 1) statuses.push((await postSignIn(stranger, email, WRONG)).status())
  expect(statuses.slice(0, 8)).toEqual(Array.from({ length: 8 }, () => 401))
  expect(statuses.slice(8)).toEqual([429, 429])
  await stranger.goto('/sign-in')
  // Even with the right password, and the page says when to try again.
  expect((await postSignIn(stranger, email, password)).status()).toBe(429)

  expect((await postSignIn(own, email, password)).status()).toBe(200)
  // And the password still counts where she confirms with it.
  const here = await openAs({ email })
  await here.goto('/account')
  await here.getByLabel('Current password').fill(password)
  await here.getByLabel('New password', { exact: true }).fill('godwit-slack-water')
  await here.getByLabel('New password again').fill('godwit-slack-water')
  await here.getByRole('button', { name: 'Change the password' }).click()
  await expect(here.getByText('Changed. Your other devices have been signed out.')).toBeVisible()
})

test('twenty-four wrong sign-ins at once: most are told at once that the server is busy, an honest one is soon in', async ({
  openAsVisitor,
}) => {
  const known = await openAsVisitor()
  const { email, password } = CAST.quality
  expect((await postSignIn(known, email, password)).status()).toBe(200)
  const time = async (run: () => Promise<{ status: () => number }>) => {
    const startedAt = performance.now()
    const status = (await run()).status()
    return { status, ms: Math.round(performance.now() - startedAt) }
  }
  const alone = await time(() => postSignIn(known, email, password))
  const stranger = await openAsVisitor()
  const { csrfToken } = await (await stranger.request.get('/api/auth/csrf')).json()
  const crowd = Array.from({ length: 24 }, (_, index) =>
    time(() =>
      stranger.request.post('/api/auth/callback/credentials', {
        form: { csrfToken, email: `nobody.${index % 3}@nowhere.example`, password: WRONG, json: 'true' },
      }),
    ),
  )
  const honest = await time(() => postSignIn(known, email, password))
  const answers = await Promise.all(crowd)
  const busy = answers.filter(({ status }) => status === 503)
  const slowest = Math.max(...answers.map(({ ms }) => ms))
  test.info().annotations.push({
    type: 'figures',
    description: `alone ${alone.ms} ms, beside the crowd ${honest.ms} ms; ${busy.length} of 24 refused as busy; slowest ${slowest} ms`,
  })
  expect(honest.status).toBe(200)
  expect(busy.length).toBeGreaterThanOrEqual(12)
  expect(answers.every(({ status }) => status === 503 || status === 401 || status === 429)).toBe(true)
  // One hash of a stranger's at a time runs beside it.
  expect(honest.ms).toBeLessThan(alone.ms * 4 + 2_000)
})
