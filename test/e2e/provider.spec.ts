import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import type { APIRequestContext } from '@playwright/test'
import { expect, test } from './fixtures'
import { FOUNDER, findFreePort, leave, setUp, startOwnServer } from './own-server'

/** Sign-in by a real OpenID Connect provider in a process of its own, over HTTP as a browser goes. */

const PROVIDER = fileURLToPath(new URL('../setup/oidc-provider.mjs', import.meta.url))

async function startProvider(port: number, redirectUri: string): Promise<ChildProcess> {
  const child = spawn(process.execPath, [PROVIDER, String(port), redirectUri])
  let output = ''
  child.stdout.on('data', (part: Buffer) => {
    output += part.toString()
  })
  await expect.poll(() => output, { timeout: 60_000 }).toContain('listening')
  return child
}

/** To the provider: what the button of the sign-in page does. */
async function beginAtProvider(request: APIRequestContext, address: string, callbackUrl: string): Promise<URL> {
  const { csrfToken } = await (await request.get(`${address}/api/auth/csrf`)).json()
  const response = await request.post(`${address}/api/auth/signin/oidc`, {
    form: { csrfToken, callbackUrl, json: 'true' },
  })
  return new URL((await response.json()).url)
}

/** At the provider, as somebody, and back: the address where it ends. */
async function passProvider(request: APIRequestContext, start: URL, login: string): Promise<URL> {
  let page = await request.get(start.href)
  const forms: Record<string, string>[] = [{ prompt: 'login', login, password: 'anything' }, { prompt: 'consent' }]
  for (const form of forms) {
    const action = /action="([^"]+)"/.exec(await page.text())?.[1]
    if (action === undefined) break
    page = await request.post(new URL(action, page.url()).href, { form })
  }
  return new URL(page.url())
}

test('an account is opened by a provider only after it was joined, by its owner or by an admin’s word', async ({
  openAsVisitor,
  consoleWatch,
}) => {
  test.setTimeout(900_000)
  consoleWatch.expect(/status of 40/)
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'bendworthy-oidc-'))
  const [port, providerPort] = [await findFreePort(), await findFreePort()]
  const address = `http://localhost:${port}`
  const provider = await startProvider(providerPort, `${address}/api/auth/callback/oidc`)
  const server = await startOwnServer({
    dataFolder,
    port,
    args: ['--empty'],
    environment: {
      BENDWORTHY_PUBLIC_URL: address,
      BENDWORTHY_OIDC_ISSUER: `http://localhost:${providerPort}`,
      BENDWORTHY_OIDC_CLIENT_ID: 'review',
      BENDWORTHY_OIDC_CLIENT_SECRET: 'a secret of the tests, long enough',
      BENDWORTHY_OIDC_NAME: 'Turnstone sign-in',
    },
  })
  try {
    const page = await openAsVisitor()
    await setUp(page, server)

    await test.step('the same address opens nothing, vouched for or not', async () => {
      for (const login of [FOUNDER.email, `unverified.${FOUNDER.email}`]) {
        const stranger = await openAsVisitor()
        const start = await beginAtProvider(stranger.request, address, address)
        expect(start.searchParams.get('code_challenge_method')).toBe('S256')
        expect(start.searchParams.get('state')).toBeTruthy()
        expect(start.searchParams.get('nonce')).toBeTruthy()
        const end = await passProvider(stranger.request, start, login)
        expect(end.pathname + end.search).toBe('/sign-in?problem=not-joined')
        expect(await (await stranger.request.get(`${address}/api/auth/session`)).json()).toEqual({})
      }
    })

    await test.step('an answer without the browser that asked, or a forged one, opens nothing', async () => {
      const [asker, other] = [await openAsVisitor(), await openAsVisitor()]
      const start = await beginAtProvider(asker.request, address, address)
      start.searchParams.set('state', 'forged')
      expect((await passProvider(asker.request, start, FOUNDER.email)).search).toContain('error')
      const forged = await other.request.get(`${address}/api/auth/callback/oidc?code=x&state=y`)
      expect(new URL(forged.url()).pathname).toBe('/sign-in')
    })

    await test.step('its owner joins it, with the password', async () => {
      await page.goto(`${address}/account`)
      const form = page.getByRole('form', { name: 'Link to Turnstone sign-in' })
      await form.getByLabel('Your password').fill('a wrong guess')
      await form.getByRole('button').click()
      await expect(form.getByText('is not your password')).toBeVisible()
      await form.getByLabel('Your password').fill(FOUNDER.password)
      // What follows is the provider's own page, which is gone through below.
      await page.route(`http://localhost:${providerPort}/**`, (route) => route.fulfill({ body: 'the provider' }))
      await form.getByRole('button').click()
      await page.waitForURL(`http://localhost:${providerPort}/**`)
      const end = await passProvider(page.request, new URL(page.url()), 'aldith.elsewhere@identity.example')
      expect(end.pathname + end.search).toBe('/account?linked=yes')
      await page.goto(`${address}/account`)
      await expect(page.getByText('Linked to aldith.elsewhere@identity.example')).toBeVisible()
    })

    await test.step('and signs in by it from then on', async () => {
      const elsewhere = await openAsVisitor()
      const start = await beginAtProvider(elsewhere.request, address, `${address}/account`)
      const end = await passProvider(elsewhere.request, start, 'aldith.elsewhere@identity.example')
      expect(end.pathname).toBe('/account')
      await elsewhere.goto(`${address}/account`)
      await expect(elsewhere.getByRole('heading', { name: FOUNDER.name })).toBeVisible()
      await leave(elsewhere)
    })
    await leave(page)
  } finally {
    await server.stop()
    provider.kill()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})
