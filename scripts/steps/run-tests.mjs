import { mkdirSync, rmSync } from 'node:fs'
import path from 'node:path'
import { buildApplication } from './build-application.mjs'
import { provideBrowser } from './find-browser.mjs'
import { generateClients } from './generate-clients.mjs'
import { installPackages } from './install-packages.mjs'
import { cacheFolder, inRoot } from './places.mjs'
import { runInTheOpen, StepError, say } from './run-program.mjs'
import { addTallies, FAILED_STEP, formatTally, readPlaywrightTally, readVitestTally } from './test-tally.mjs'

const VITEST_SUITES = ['unit', 'standards', 'integration']
const BROWSER_SUITE = 'e2e'
/** Without it nothing is installed outside of this folder and the test runner's own cache. */
export const SYSTEM_PACKAGES_FLAG = '--install-system-packages'
const PROGRAMS = /** @type {const} */ ({
  biome: ['@biomejs', 'biome', 'bin', 'biome'],
  knip: ['knip', 'bin', 'knip.js'],
  tsc: ['typescript', 'bin', 'tsc'],
  vitest: ['vitest', 'vitest.mjs'],
  playwright: ['@playwright', 'test', 'cli.js'],
})

/**
 * Bring what the tests need, run them, and end with one line that adds them up. The exit status is 1 when anything failed.
 * @param {string[]} args  a suite and arguments for its runner; none for everything. `--install-system-packages` lets a missing browser be
 * installed as a package of the system.
 * @throws {StepError} when something that the tests need cannot be had
 */
export async function runTests(args) {
  const mayInstallSystemPackages = args.includes(SYSTEM_PACKAGES_FLAG)
  const [suite, ...rest] = args.filter((arg) => arg !== SYSTEM_PACKAGES_FLAG)
  if (suite !== undefined && ![...VITEST_SUITES, BROWSER_SUITE].includes(suite)) {
    throw new StepError(`There is no suite "${suite}"; there are ${VITEST_SUITES.join(', ')} and ${BROWSER_SUITE}.`)
  }
  const isWanted = (/** @type {string} */ name) => suite === undefined || suite === name
  await installPackages()
  await generateClients()
  mkdirSync(cacheFolder, { recursive: true })

  const tallies = []
  if (suite === undefined) {
    tallies.push(await checkStep('Style and lint rules', 'biome', ['check', '--error-on-warnings', '.']))
    tallies.push(await checkStep('Files and exports that nothing uses', 'knip', ['--no-progress', '--no-config-hints']))
    const shipped = ['--config', 'knip.shipped.json', '--no-progress', '--no-config-hints']
    tallies.push(await checkStep('Parts of the engine that only tests reach', 'knip', shipped))
    tallies.push(await checkStep('Types', 'tsc', ['--noEmit']))
  }
  const vitestSuites = VITEST_SUITES.filter(isWanted)
  if (vitestSuites.length > 0) tallies.push(await runVitest(vitestSuites, rest))
  if (isWanted(BROWSER_SUITE))
    tallies.push(await runPlaywright(suite === undefined ? [] : rest, mayInstallSystemPackages))

  const total = addTallies(tallies)
  if (total.failed > 0) process.exitCode = 1
  say(`\n${formatTally(total)}`)
}

/**
 * @param {keyof typeof PROGRAMS} name
 * @param {string[]} args
 * @param {Record<string, string>} [env]
 */
const run = (name, args, env) =>
  runInTheOpen(process.execPath, [inRoot('node_modules', ...PROGRAMS[name]), ...args], { env })

/**
 * A check that counts as one failure when it fails and as nothing when it passes: the line at the end counts tests.
 * @param {string} title
 * @param {keyof typeof PROGRAMS} name
 * @param {string[]} args
 */
async function checkStep(title, name, args) {
  say(`\n${title}`)
  return (await run(name, args)) === 0 ? addTallies([]) : FAILED_STEP
}

/**
 * @param {string[]} suites
 * @param {string[]} rest
 */
async function runVitest(suites, rest) {
  say(`\nTests: ${suites.join(', ')}`)
  const report = path.join(cacheFolder, `vitest-${process.pid}.json`)
  try {
    const status = await run('vitest', [
      'run',
      '--config',
      'test/vitest.config.ts',
      ...suites.flatMap((suite) => ['--project', suite]),
      '--passWithNoTests',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...rest,
    ])
    return readVitestTally(report, status)
  } finally {
    rmSync(report, { force: true })
  }
}

/**
 * @param {string[]} rest
 * @param {boolean} mayInstallSystemPackages
 */
async function runPlaywright(rest, mayInstallSystemPackages) {
  say('\nBrowser tests')
  const browser = await provideBrowser({ mayInstallSystemPackages })
  await buildApplication()
  const report = path.join(cacheFolder, `playwright-${process.pid}.json`)
  try {
    const status = await run('playwright', ['test', '--config', 'test/e2e/playwright.config.ts', ...rest], {
      CHROMIUM_PATH: browser,
      BENDWORTHY_E2E_REPORT: report,
    })
    return readPlaywrightTally(report, status)
  } finally {
    rmSync(report, { force: true })
  }
}
