import { describe, expect, test } from 'vitest'
import { CATALOGUE, getItem, SEVERITIES, USUAL_ITEMS } from '@/lib/engine/catalogue'
import { EXPECTED_QUESTIONS } from './expected-questions'

const RANKS = Object.keys(SEVERITIES)
const isInCatalogue = (itemId: string) => CATALOGUE.some(({ id }) => id === itemId)

describe('what a senior reviewer asks', () => {
  test.each(EXPECTED_QUESTIONS)('$asks', ({ itemIds, atLeast, withProfile }) => {
    expect(itemIds.length).toBeGreaterThan(0)
    expect(itemIds.filter((id) => !isInCatalogue(id))).toEqual([])
    for (const id of itemIds) {
      const { severity } = getItem(id)
      expect(RANKS.indexOf(severity), `${id} is ${severity}`).toBeLessThanOrEqual(RANKS.indexOf(atLeast))
      // Every design is asked, or those alone whose profile asks it.
      expect(
        USUAL_ITEMS.some((item) => item.id === id),
        id,
      ).toBe(withProfile !== true)
    }
  })

  test('each item is named once: a question that two items ask would be one failure twice', () => {
    const ids = EXPECTED_QUESTIONS.flatMap(({ itemIds }) => itemIds)
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([])
  })
})
