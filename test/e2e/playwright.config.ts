import { mkdtempSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { defineConfig, devices, type ReporterDescription } from '@playwright/test'
import { findBrowser } from '../../scripts/steps/find-browser.mjs'

/** A port that was free a moment ago. */
async function findFreePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no port could be had')
  return address.port
}

/**
 * The server under test and its data folder. While tests are written, BENDWORTHY_E2E_ADDRESS and _DATA may name a server that already
 * runs, which saves its start. Worker processes read this file again and must come to the same; they inherit the
 * environment.
 */
process.env.BENDWORTHY_E2E_GIVEN ??= process.env.BENDWORTHY_E2E_ADDRESS === undefined ? 'no' : 'yes'
process.env.BENDWORTHY_E2E_ADDRESS ??= `http://127.0.0.1:${await findFreePort()}`
process.env.BENDWORTHY_E2E_DATA ??= mkdtempSync(path.join(tmpdir(), 'bendworthy-e2e-'))
const baseURL = process.env.BENDWORTHY_E2E_ADDRESS
const { port } = new URL(baseURL)

const browser = await findBrowser()
if (browser === null) throw new Error('No Chromium browser was found; npm run test:e2e brings one.')

const reporters: ReporterDescription[] = [['list']]
if (process.env.BENDWORTHY_E2E_REPORT) reporters.push(['json', { outputFile: process.env.BENDWORTHY_E2E_REPORT }])

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  // One server and one database: journeys that change the same records would trip over each other.
  workers: 1,
  fullyParallel: false,
  forbidOnly: process.env.CI === 'true',
  retries: 0,
  timeout: 300_000,
  // Generous: a slow machine must not look like a defect.
  expect: { timeout: 30_000 },
  reporter: reporters,
  use: {
    ...devices['Desktop Chrome'],
    baseURL,
    // A step that cannot go on says so, rather than using up the whole test.
    actionTimeout: 60_000,
    navigationTimeout: 90_000,
    trace: 'retain-on-failure',
    launchOptions: {
      executablePath: browser,
      // A browser run by root has no sandbox; the rest keeps it from calling home.
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  ...(process.env.BENDWORTHY_E2E_GIVEN === 'yes'
    ? {}
    : {
        webServer: {
          command: `node serve-fresh.mjs --port ${port}`,
          url: `${baseURL}/sign-in`,
          timeout: 300_000,
          reuseExistingServer: false,
          stdout: 'pipe',
          gracefulShutdown: { signal: 'SIGTERM', timeout: 10_000 },
        },
      }),
})
