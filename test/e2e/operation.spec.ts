import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { CAST } from '@/seed/sign-ins'
import { makeShortLivedFolder } from '../setup/short-lived-folder.mjs'
import { openBackstage } from './backstage'
import { expect, signIn, test } from './fixtures'
import { findFreePort, startOwnServer } from './own-server'
import { startServerUnderTest } from './server-under-test'

const TOKEN = 'a-token-for-the-monitoring-of-tests'

test('a server says how it is, names its requests, counts them, and warns of settings', async () => {
  const dataFolder = makeShortLivedFolder('bendworthy-operation-')
  const server = await startOwnServer({
    dataFolder,
    args: ['--empty'],
    environment: { BENDWORTHY_METRICS_TOKEN: TOKEN, BENDWORTHY_PROXYCOUNT: '1' },
  })
  const ask = (path: string, headers: Record<string, string> = {}) => fetch(`${server.address}${path}`, { headers })
  try {
    expect(server.printed()).toContain('BENDWORTHY_PROXYCOUNT is not a setting of this version')
    const health = await ask('/api/health')
    expect([health.status, await health.json()]).toEqual([200, { status: 'alive' }])
    expect(health.headers.get('x-request-id')).toMatch(/^[0-9a-f]{16}$/)
    expect(health.headers.get('strict-transport-security'), 'plain HTTP').toBeNull()
    const ready = await ask('/api/ready')
    expect([ready.status, await ready.json()]).toEqual([
      200,
      { status: 'ready', checks: { database: true, dataFolder: true, notStopping: true } },
    ])
    const metrics = await ask('/api/metrics')
    expect(metrics.headers.get('content-type')).toContain('text/plain; version=0.0.4')
    await ask('/api/revisions/none/trail?format=csv')
    expect(await (await ask('/api/metrics')).text()).toMatch(/^bendworthy_refusals_total\{kind="[a-z-]+"\} [1-9]/m)
    expect(await metrics.text()).toMatch(/^bendworthy_requests_total\{method="GET",status="200"\} [1-9]/m)
    // A request that something forwarded is not from this machine, whoever sends it on.
    const forwarded = { 'x-forwarded-for': '203.0.113.9' }
    expect((await ask('/api/metrics', forwarded)).status).toBe(404)
    expect((await ask('/api/metrics', { ...forwarded, authorization: `Bearer ${TOKEN}` })).status).toBe(200)
    expect((await ask('/api/metrics', { ...forwarded, authorization: 'Bearer something-else' })).status).toBe(404)
    // The optimiser of pictures is off.
    expect((await ask('/_next/image?url=%2Ficon.svg&w=64&q=75')).status).not.toBe(200)
  } finally {
    await server.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})

test('behind TLS a browser is told to stay with it', async () => {
  const dataFolder = makeShortLivedFolder('bendworthy-operation-')
  const port = await findFreePort()
  const server = await startOwnServer({
    dataFolder,
    port,
    args: ['--empty'],
    environment: { BENDWORTHY_PUBLIC_URL: 'https://review.example.org', BENDWORTHY_PROXY_COUNT: '1' },
  })
  try {
    for (const path of ['/setup', '/api/health']) {
      const { headers } = await fetch(`http://127.0.0.1:${port}${path}`)
      expect(headers.get('strict-transport-security'), path).toBe('max-age=31536000')
    }
    expect(server.printed()).not.toContain('plain HTTP')
  } finally {
    await server.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})

test('a server that is told to stop ends open streams, and is gone within ten seconds', async ({ browser }) => {
  const server = await startServerUnderTest('test-results/stopping-server.log')
  const context = await browser.newContext({ baseURL: server.address })
  let isStopped = false
  try {
    const backstage = openBackstage(server.dataFolder, server.address)
    const { skuaId, skuaB } = await backstage.act('findDemo')
    await signIn(context, server, backstage, CAST.lead.email)
    backstage.close()
    const page = await context.newPage()
    // The page of threads listens for as long as it is open.
    const streaming = page.waitForRequest(/\/events/)
    await page.goto(`/projects/${skuaId}/revisions/${skuaB}/threads`)
    await streaming
    await sleep(500)
    const startedAt = performance.now()
    await server.stop()
    isStopped = true
    expect(performance.now() - startedAt).toBeLessThan(10_000)
  } finally {
    await context.close()
    if (!isStopped) await server.stop()
  }
})

test('a server whose start program is killed is no orphan', async () => {
  const dataFolder = makeShortLivedFolder('bendworthy-operation-')
  const port = await findFreePort()
  const start = fileURLToPath(new URL('../../scripts/start.mjs', import.meta.url))
  const wrapper: ChildProcess = spawn(process.execPath, [start, '--empty', '--port', String(port)], {
    env: { ...process.env, BENDWORTHY_DATA_FOLDER: dataFolder, DATABASE_URL: '', HOST: '', BENDWORTHY_PUBLIC_URL: '' },
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  await new Promise<void>((resolve) => {
    wrapper.stdout?.on('data', (part: Buffer) => {
      if (part.toString().includes('Bendworthy is at')) resolve()
    })
  })
  const [child = ''] = execFileSync('pgrep', ['-P', String(wrapper.pid)], { encoding: 'utf8' })
    .trim()
    .split('\n')
  expect(child).not.toBe('')
  wrapper.kill('SIGKILL')
  const isThere = (): boolean => {
    try {
      process.kill(Number(child), 0)
      return true
    } catch {
      return false
    }
  }
  await expect.poll(isThere, { timeout: 15_000 }).toBe(false)
  rmSync(dataFolder, { recursive: true, force: true })
})
