import { mkdirSync, rmSync } from 'node:fs'
import path from 'node:path'
import { buildApplication } from './build-application.mjs'
import { provideBrowser } from './find-browser.mjs'
import { generateClients } from './generate-clients.mjs'
import { installPackages } from './install-packages.mjs'
import { cacheFolder, inRoot } from './places.mjs'
import { runForOutput, runInTheOpen, StepError, say } from './run-program.mjs'
import { formatFailures, readPlaywrightFailures, readVitestFailures } from './test-failures.mjs'
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

/** What one step came to. @typedef {{ tally: import('./test-tally.mjs').Tally, failures: import('./test-failures.mjs').Failure[] }} StepResult */

/**
 * Bring what the tests need, run them, and end with what failed and one line that adds them up. The exit status is 1 when anything failed.
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
  await installPackages({ withTestTools: true })
  await generateClients()
  mkdirSync(cacheFolder, { recursive: true })

  /** @type {StepResult[]} */
  const results = []
  if (suite === undefined) {
    results.push(...(await checkAndBuild()))
  }
  const vitestSuites = VITEST_SUITES.filter(isWanted)
  if (vitestSuites.length > 0) results.push(await runVitest(vitestSuites, rest))
  if (isWanted(BROWSER_SUITE))
    results.push(await runPlaywright(suite === undefined ? [] : rest, mayInstallSystemPackages))

  const total = addTallies(results.map(({ tally }) => tally))
  if (total.failed > 0) process.exitCode = 1
  const failed = formatFailures(results.flatMap(({ failures }) => failures))
  if (failed !== '') say(`\n${failed}`)
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
 * What works on one processor goes two at a time: types and then the build, whose types of routes must not be half written while types are
 * checked, beside the rest.
 * @returns {Promise<StepResult[]>}
 */
async function checkAndBuild() {
  say('\nChecks, and the build for the browser tests')
  const knip = ['--no-progress', '--no-config-hints']
  const typesAndBuild = async () => {
    const types = await checkStep('Types', 'tsc', ['--noEmit'])
    await buildApplication()
    return [types]
  }
  const rules = async () => [
    await checkStep('Style and lint rules', 'biome', ['check', '--error-on-warnings', '.']),
    await checkStep('Files and exports that nothing uses', 'knip', knip),
    await checkStep('Parts of the engine that only tests reach', 'knip', ['--config', 'knip.shipped.json', ...knip]),
  ]
  return (await Promise.all([typesAndBuild(), rules()])).flat()
}

/**
 * A check that counts as one failure when it fails and as nothing when it passes: the line at the end counts tests. What it prints is shown
 * when it ends, since another runs beside it.
 * @param {string} title
 * @param {keyof typeof PROGRAMS} name
 * @param {string[]} args
 * @returns {Promise<StepResult>}
 */
async function checkStep(title, name, args) {
  const { status, output } = await runForOutput(process.execPath, [inRoot('node_modules', ...PROGRAMS[name]), ...args])
  say(`\n${title}${output.trim() === '' ? '' : `\n${output.trim()}`}`)
  if (status === 0) return { tally: addTallies([]), failures: [] }
  return { tally: FAILED_STEP, failures: [{ name: title, why: `${name} found something: see its output above` }] }
}

/**
 * @param {string[]} suites
 * @param {string[]} rest
 * @returns {Promise<StepResult>}
 */
async function runVitest(suites, rest) {
  say(`\nTests: ${suites.join(', ')}`)
  const report = path.join(cacheFolder, `vitest-${process.pid}.json`)
  try {
    const status = await run('vitest', [
      'run',
      '--config',
      'test/vitest.config.ts',
      // Integration tests that need a process of their own are a project beside the others.
      ...suites.flatMap((suite) => ['--project', `${suite}*`]),
      '--passWithNoTests',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...rest,
    ])
    return { tally: readVitestTally(report, status), failures: readVitestFailures(report, status) }
  } finally {
    rmSync(report, { force: true })
  }
}

/**
 * @param {string[]} rest
 * @param {boolean} mayInstallSystemPackages
 * @returns {Promise<StepResult>}
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
    return { tally: readPlaywrightTally(report, status), failures: readPlaywrightFailures(report, status) }
  } finally {
    rmSync(report, { force: true })
  }
}
