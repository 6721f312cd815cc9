import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addTallies, formatTally, readPlaywrightTally, readVitestTally } from '../../../scripts/steps/test-tally.mjs'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-tally-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function report(content: object): string {
  const file = path.join(folder, 'report.json')
  writeFileSync(file, JSON.stringify(content))
  return file
}

describe('the line that adds the tests up', () => {
  it('adds both runners', () => {
    const vitest = readVitestTally(
      report({ numPassedTests: 7, numFailedTests: 1, numPendingTests: 2, numTodoTests: 0, testResults: [] }),
      1,
    )
    const playwright = readPlaywrightTally(report({ stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 0 } }), 1)
    expect(formatTally(addTallies([vitest, playwright]))).toBe('10 passed, 3 failed, 2 skipped')
    expect(formatTally({ passed: 4, failed: 0, skipped: 0 })).toBe('4 passed, 0 failed')
  })

  it('counts a file that did not load as a failure', () => {
    const tally = readVitestTally(
      report({
        numPassedTests: 5,
        numFailedTests: 0,
        numPendingTests: 0,
        numTodoTests: 0,
        testResults: [
          { status: 'passed', assertionResults: [{}] },
          { status: 'failed', assertionResults: [] },
        ],
      }),
      1,
    )
    expect(tally).toEqual({ passed: 5, failed: 1, skipped: 0 })
  })

  it('never claims success for a run that ended badly or left no report', () => {
    expect(readVitestTally(path.join(folder, 'none.json'), 1).failed).toBe(1)
    expect(readPlaywrightTally(path.join(folder, 'none.json'), 1).failed).toBe(1)
    expect(readPlaywrightTally(report({ stats: { expected: 3, unexpected: 0, flaky: 0, skipped: 0 } }), 1).failed).toBe(
      1,
    )
  })
})
