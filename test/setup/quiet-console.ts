import { afterEach, beforeEach, expect, vi } from 'vitest'

/**
 * A stray console error or warning fails the test that caused it: such lines are how frameworks report a broken
 * promise, and nobody reads them in a passing run. A test that expects one says so with
 * `vi.spyOn(console, 'error').mockImplementation(...)` of its own.
 */
const strayLines: string[] = []

function record(kind: string) {
  return (...parts: unknown[]) => {
    strayLines.push(`${kind}: ${parts.map(String).join(' ')}`)
  }
}

beforeEach(() => {
  strayLines.length = 0
  vi.spyOn(console, 'error').mockImplementation(record('error'))
  vi.spyOn(console, 'warn').mockImplementation(record('warn'))
})

afterEach(() => {
  vi.restoreAllMocks()
  expect(strayLines, 'the console stayed quiet').toEqual([])
})
