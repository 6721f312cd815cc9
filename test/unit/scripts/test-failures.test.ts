import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { inRoot } from '../../../scripts/steps/places.mjs'
import { formatFailures, readPlaywrightFailures, readVitestFailures } from '../../../scripts/steps/test-failures.mjs'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-failures-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function report(content: object): string {
  const file = path.join(folder, 'report.json')
  writeFileSync(file, JSON.stringify(content))
  return file
}

describe('what the end of a run says of what failed', () => {
  it('names each failed test of vitest by file and title, with the first line of its error, without colours', () => {
    const failures = readVitestFailures(
      report({
        testResults: [
          {
            name: inRoot('test/unit/fine.test.ts'),
            status: 'passed',
            assertionResults: [{ fullName: 'fine', status: 'passed' }],
          },
          {
            name: inRoot('test/unit/odd.test.ts'),
            status: 'failed',
            assertionResults: [
              { fullName: 'a sum is right', status: 'passed' },
              {
                fullName: 'a sum is wrong',
                status: 'failed',
                failureMessages: ['\n\u001b[31mAssertionError: expected 3 to be 4\u001b[39m\n    at odd.test.ts:7:3'],
              },
            ],
          },
          {
            name: inRoot('test/unit/unloaded.test.ts'),
            status: 'failed',
            message: 'Cannot find module "./gone"\n    at nowhere',
            assertionResults: [],
          },
          {
            name: inRoot('test/unit/hook.test.ts'),
            status: 'failed',
            message: 'the hook failed',
            assertionResults: [{ fullName: 'never ran', status: 'skipped' }],
          },
        ],
      }),
      1,
    )
    expect(failures).toEqual([
      { name: 'test/unit/odd.test.ts: a sum is wrong', why: 'AssertionError: expected 3 to be 4' },
      { name: 'test/unit/unloaded.test.ts', why: 'Cannot find module "./gone"' },
      { name: 'test/unit/hook.test.ts', why: 'the hook failed' },
    ])
  })

  it('names each failed and each flaky test of the browser, at whatever depth, and errors outside of tests', () => {
    const test = (status: string, error?: string) => ({
      projectName: 'journeys',
      status,
      results: [{ ...(error === undefined ? {} : { error: { message: error } }) }, {}],
    })
    const spec = (title: string, tests: object[]) => ({ title, file: 'main-job.spec.ts', line: 12, tests })
    const failures = readPlaywrightFailures(
      report({
        errors: [{ message: 'The server did not start\nat own-server' }],
        suites: [
          {
            title: 'main-job.spec.ts',
            specs: [spec('opens', [test('expected')]), spec('signs', [test('unexpected', 'Timed out waiting\nmore')])],
            suites: [{ title: 'inner', specs: [spec('releases', [test('flaky', 'too slow')])] }],
          },
        ],
      }),
      1,
    )
    expect(failures).toEqual([
      { name: 'playwright', why: 'The server did not start' },
      { name: 'main-job.spec.ts:12 [journeys]: signs', why: 'Timed out waiting' },
      { name: 'main-job.spec.ts:12 [journeys]: releases (flaky)', why: 'too slow' },
    ])
  })

  it('says so where a run ended badly and named nothing, and nothing where all passed', () => {
    for (const read of [readVitestFailures, readPlaywrightFailures]) {
      const [failure] = read(path.join(folder, 'none.json'), 137)
      expect(failure?.why).toContain('status 137')
      expect(read(path.join(folder, 'none.json'), 0)).toEqual([])
    }
    expect(readVitestFailures(report({ testResults: [] }), 1)).toHaveLength(1)
    expect(formatFailures([])).toBe('')
  })

  it('stays short enough to be seen', () => {
    const many = Array.from({ length: 80 }, (_, index) => ({ name: `test ${index}`, why: 'no' }))
    const text = formatFailures(many)
    expect(text.split('\n')).toHaveLength(102)
    expect(text).toMatch(/^Failed:\n {2}test 0\n {4}no\n/)
    expect(text).toMatch(/and 30 more$/)
  })
})
