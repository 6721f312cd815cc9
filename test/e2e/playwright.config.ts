import { defineConfig, devices, type ReporterDescription } from '@playwright/test'
import { findBrowser } from '../../scripts/steps/find-browser.mjs'

const browser = await findBrowser()
if (browser === null) throw new Error('No Chromium browser was found; npm run test:e2e brings one.')

const reporters: ReporterDescription[] = [['list']]
if (process.env.BENDWORTHY_E2E_REPORT) reporters.push(['json', { outputFile: process.env.BENDWORTHY_E2E_REPORT }])

/** Many short tests: they go last, so that both workers are busy until the end. */
const SCREENS = 'accessibility.spec.ts'

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  globalSetup: './demo-data.ts',
  // Each worker has its own server on its own copy of the demo data (server-under-test.ts); the tests of one file run one after the other.
  workers: 2,
  fullyParallel: false,
  forbidOnly: process.env.CI === 'true',
  retries: 0,
  timeout: 300_000,
  // Generous: a slow machine must not look like a defect.
  expect: { timeout: 30_000 },
  reporter: reporters,
  use: {
    ...devices['Desktop Chrome'],
    // A step that cannot go on says so, rather than using up the whole test.
    actionTimeout: 60_000,
    navigationTimeout: 90_000,
    // A recording takes a good part of the time, and nobody fetches it from a machine that checks a change.
    trace: process.env.CI === 'true' ? 'off' : 'retain-on-failure',
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
  // In this order. A worker that comes to the screens gets a new server, so that they are seen before anybody has changed anything.
  projects: [
    { name: 'journeys', testIgnore: SCREENS },
    { name: 'screens', testMatch: SCREENS },
  ],
})
