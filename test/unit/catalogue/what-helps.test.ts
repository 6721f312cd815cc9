import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { CATALOGUE, FIRST_QUESTIONS } from '@/lib/engine/catalogue'
import { ASKED_OF } from '@/lib/engine/catalogue/asked-of'
import { fillWhatHelps, readWhatHelps, WHAT_HELPS } from '@/lib/engine/catalogue/prose/what-helps'
import { makeExampleDesign } from './example-design'
import { getOnly } from './examples/changes'

const IDS = CATALOGUE.map(({ id }) => id)

describe('what helps', () => {
  test('each delivered item has it in sentences, and nothing else does', () => {
    expect(IDS.filter((id) => readWhatHelps(id).length === 0)).toEqual([])
    expect(Object.keys(WHAT_HELPS).filter((id) => !IDS.includes(id))).toEqual([])
    for (const texts of Object.values(WHAT_HELPS)) for (const text of texts) expect(text).toMatch(/^[A-Z].*\.$/)
  })

  test('says by how much, where the check has a number and a limit', () => {
    const design = makeExampleDesign()
    getOnly(design.features.holes).nearestBend = { bendId: 'hinge', distanceMm: 0.87 }
    const item = evaluate(design).items.find(({ itemId }) => itemId === 'hole-to-bend')
    // The limit is 1.27 mm: 0.4 mm more than there is.
    expect(item?.verdict).toBe('fails')
    expect(fillWhatHelps(readWhatHelps('hole-to-bend'), item?.outcomes ?? [])[0]).toBe(
      'Move the hole away from the bend by 0.4 mm.',
    )
  })

  test('leaves no placeholder where there is no number', () => {
    for (const { itemId, outcomes } of evaluate(makeExampleDesign()).items) {
      for (const text of fillWhatHelps(readWhatHelps(itemId), outcomes)) expect(text).not.toMatch(/[{}]/)
    }
  })
})

test('the people asked, and the fifteen questions, name items that exist', () => {
  expect(Object.keys(ASKED_OF).filter((id) => !IDS.includes(id))).toEqual([])
  expect(FIRST_QUESTIONS).toHaveLength(15)
  const asked = FIRST_QUESTIONS.flatMap(({ itemIds }) => itemIds)
  expect(asked.filter((id) => !IDS.includes(id))).toEqual([])
  expect(new Set(asked).size).toBe(asked.length)
})
