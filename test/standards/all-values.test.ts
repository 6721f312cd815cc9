import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { SOURCES } from '@/lib/engine'
import { CHECK_CASES } from './check-values'
import { findWaiting, WAITING, WAITS_FOR, WITHOUT_CHECK } from './waiting'

/** Topics that a test here goes through, as its source says. */
function listTopics(): Set<string> {
  const folder = 'test/standards'
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.test.ts'))
  return new Set(
    files.flatMap((file) =>
      [...readFileSync(path.join(folder, file), 'utf8').matchAll(/checkTopic\('([^']+)'/g)].map(
        ([, topic]) => topic ?? '',
      ),
    ),
  )
}

describe('the 288 check values', () => {
  test('each has an id of its own', () => {
    expect(CHECK_CASES).toHaveLength(288)
    expect(new Set(CHECK_CASES.map(({ id }) => id)).size).toBe(288)
  })

  test('each is gone through by a test of its topic, or waits with a reason', () => {
    const topics = listTopics()
    const left = CHECK_CASES.filter(({ id, topic }) => findWaiting(id) === null && !topics.has(topic))
    expect(left.map(({ id }) => id)).toEqual([])
  })

  test('those that wait are counted, and say for what', () => {
    for (const { ids, for: what, reason, count } of WAITING) {
      expect(CHECK_CASES.filter(({ id }) => ids.test(id)).length, String(ids)).toBe(count)
      expect(WAITS_FOR[what]).not.toBe('')
      expect(reason).not.toBe('')
    }
    const waiting = CHECK_CASES.filter(({ id }) => findWaiting(id) !== null)
    expect(waiting).toHaveLength(WAITING.reduce((sum, { count }) => sum + count, 0))
  })

  test('a source that no check value can be held against is one that is cited, and says what it lacks', () => {
    for (const [key, reason] of Object.entries(WITHOUT_CHECK)) {
      expect(Object.keys(SOURCES)).toContain(key)
      expect(reason).toMatch(/neither|without|no /)
      const { note } = SOURCES[key as keyof typeof WITHOUT_CHECK]
      // As soon as it states a strain or a radius, it can be checked.
      expect(note).not.toMatch(/\d (%|mm)/)
    }
  })

  test('cite their source, and none claims a standard that only a guide quotes', () => {
    const kinds = ['standard', 'quoted', 'paper', 'handbook', 'common practice', 'memory', 'exact mathematics']
    for (const { id, source, sourceKind } of CHECK_CASES) {
      expect(source, id).not.toBe('')
      expect(kinds, id).toContain(sourceKind)
    }
    expect(CHECK_CASES.filter(({ sourceKind }) => sourceKind === 'standard').map(({ id }) => id)).toEqual([
      'fat-endurance-loop',
    ])
  })
})
