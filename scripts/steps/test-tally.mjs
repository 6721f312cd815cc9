import { existsSync, readFileSync } from 'node:fs'

/** @typedef {{ passed: number, failed: number, skipped: number }} Tally */

/** What a step that failed as a whole counts for. @type {Tally} */
export const FAILED_STEP = { passed: 0, failed: 1, skipped: 0 }

/** @param {Tally[]} tallies @returns {Tally} */
export const addTallies = (tallies) =>
  tallies.reduce(
    (sum, { passed, failed, skipped }) => ({
      passed: sum.passed + passed,
      failed: sum.failed + failed,
      skipped: sum.skipped + skipped,
    }),
    { passed: 0, failed: 0, skipped: 0 },
  )

/** @param {Tally} tally */
export function formatTally({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
}

/**
 * A runner that fails without a failed test (a file that does not load, an error after the last test) counts as one failure,
 * so that the line never claims success for a run that was none.
 * @param {Tally} tally
 * @param {number} status
 * @returns {Tally}
 */
function withStatus(tally, status) {
  return status !== 0 && tally.failed === 0 ? addTallies([tally, FAILED_STEP]) : tally
}

/**
 * @param {string} file  report of vitest's json reporter
 * @param {number} status  exit status of the run
 */
export function readVitestTally(file, status) {
  if (!existsSync(file)) return withStatus(addTallies([]), status)
  const report = JSON.parse(readFileSync(file, 'utf8'))
  /** @type {{ status: string, assertionResults: unknown[] }[]} */
  const files = report.testResults
  const unloaded = files.filter((entry) => entry.status === 'failed' && entry.assertionResults.length === 0)
  return withStatus(
    {
      passed: report.numPassedTests,
      failed: report.numFailedTests + unloaded.length,
      skipped: report.numPendingTests + report.numTodoTests,
    },
    status,
  )
}

/**
 * @param {string} file  report of Playwright's json reporter
 * @param {number} status  exit status of the run
 */
export function readPlaywrightTally(file, status) {
  if (!existsSync(file)) return withStatus(addTallies([]), status)
  const { stats } = JSON.parse(readFileSync(file, 'utf8'))
  return withStatus({ passed: stats.expected, failed: stats.unexpected + stats.flaky, skipped: stats.skipped }, status)
}
