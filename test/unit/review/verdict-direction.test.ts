import { expect, test } from 'vitest'
import { findVerdictDirection } from '@/lib/review'

test('a verdict gets worse, better, or changes otherwise', () => {
  expect(findVerdictDirection('meets', 'fails')).toBe('worse')
  expect(findVerdictDirection('meets', 'thin-margin')).toBe('worse')
  expect(findVerdictDirection('thin-margin', 'cannot-tell')).toBe('worse')
  expect(findVerdictDirection('fails', 'thin-margin')).toBe('better')
  expect(findVerdictDirection('not-computed', 'meets')).toBe('better')
  expect(findVerdictDirection('fails', 'not-applicable')).toBe('better')
  expect(findVerdictDirection('fails', 'needs-judgment')).toBe('better')
  expect(findVerdictDirection('needs-judgment', 'fails')).toBe('worse')
})

test('what is not in both checklists, or is left to people, is neither', () => {
  expect(findVerdictDirection(null, 'fails')).toBe('otherwise')
  expect(findVerdictDirection('fails', null)).toBe('otherwise')
  expect(findVerdictDirection('meets', 'needs-judgment')).toBe('otherwise')
  expect(findVerdictDirection('meets', 'not-applicable')).toBe('otherwise')
  expect(findVerdictDirection('meets', 'meets')).toBe('otherwise')
})
