import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { stripVTControlCharacters } from 'node:util'
import { rootFolder } from './places.mjs'

/** One thing that failed, and the first line of why. @typedef {{ name: string, why: string }} Failure */

/** The end of the output is what people see first of a run elsewhere: a long list would push itself out of it. */
const MOST_SHOWN = 50
const LONGEST_LINE = 300

/** @param {string | undefined} message */
function firstLine(message) {
  const lines = stripVTControlCharacters(message ?? '').split('\n')
  return (lines.find((line) => line.trim() !== '') ?? 'no message').trim().slice(0, LONGEST_LINE)
}

/** @param {string} file */
const fromRoot = (file) => path.relative(rootFolder, file).split(path.sep).join('/')

/**
 * A runner that ended badly without saying which test it was must not look as if it had succeeded.
 * @param {Failure[]} failures
 * @param {string} runner
 * @param {number} status
 * @returns {Failure[]}
 */
function withStatus(failures, runner, status) {
  if (status === 0 || failures.length > 0) return failures
  return [{ name: runner, why: `ended with status ${status} and named no failed test: see its output above` }]
}

/**
 * @param {string} file  report of vitest's json reporter
 * @param {number} status  exit status of the run
 * @returns {Failure[]}
 */
export function readVitestFailures(file, status) {
  if (!existsSync(file)) return withStatus([], 'vitest', status)
  /** @type {{ testResults: { name: string, status: string, message?: string, assertionResults: { fullName: string, status: string, failureMessages?: string[] }[] }[] }} */
  const { testResults } = JSON.parse(readFileSync(file, 'utf8'))
  const failures = testResults.flatMap(({ name, status: outcome, message, assertionResults }) => {
    const failed = assertionResults
      .filter((test) => test.status === 'failed')
      .map((test) => ({ name: `${fromRoot(name)}: ${test.fullName}`, why: firstLine(test.failureMessages?.[0]) }))
    // A file that did not load, or a hook that failed, has no failed test of its own.
    return outcome === 'failed' && failed.length === 0 ? [{ name: fromRoot(name), why: firstLine(message) }] : failed
  })
  return withStatus(failures, 'vitest', status)
}

/**
 * @typedef {{ message?: string }} PlaywrightError
 * @typedef {{ title: string, file: string, line: number, tests: { projectName: string, status: string, results: { error?: PlaywrightError }[] }[] }} PlaywrightSpec
 * @typedef {{ title: string, specs?: PlaywrightSpec[], suites?: PlaywrightSuite[] }} PlaywrightSuite
 */

/**
 * @param {string} file  report of Playwright's json reporter
 * @param {number} status  exit status of the run
 * @returns {Failure[]}
 */
export function readPlaywrightFailures(file, status) {
  if (!existsSync(file)) return withStatus([], 'playwright', status)
  /** @type {{ suites: PlaywrightSuite[], errors?: PlaywrightError[] }} */
  const { suites, errors = [] } = JSON.parse(readFileSync(file, 'utf8'))
  /** @type {Failure[]} */
  const failures = errors.map(({ message }) => ({ name: 'playwright', why: firstLine(message) }))
  /** @param {PlaywrightSuite} suite */
  const visit = (suite) => {
    for (const spec of suite.specs ?? []) {
      for (const { projectName, status: outcome, results } of spec.tests) {
        if (outcome !== 'unexpected' && outcome !== 'flaky') continue
        const error = results.find((result) => result.error !== undefined)?.error
        const name = `${spec.file}:${spec.line} [${projectName}]: ${spec.title}${outcome === 'flaky' ? ' (flaky)' : ''}`
        failures.push({ name, why: firstLine(error?.message) })
      }
    }
    for (const inner of suite.suites ?? []) visit(inner)
  }
  for (const suite of suites) visit(suite)
  return withStatus(failures, 'playwright', status)
}

/** Printed last, before the tally. @param {Failure[]} failures */
export function formatFailures(failures) {
  if (failures.length === 0) return ''
  const shown = failures.slice(0, MOST_SHOWN).map(({ name, why }) => `  ${name}\n    ${why}`)
  const more = failures.length > MOST_SHOWN ? [`  and ${failures.length - MOST_SHOWN} more`] : []
  return ['Failed:', ...shown, ...more].join('\n')
}
