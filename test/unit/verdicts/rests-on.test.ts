import { expect, test } from 'vitest'
import { parseDesign } from '@/lib/engine'
import { isInputOf } from '@/lib/review/item-inputs'
import { ATTACKED_DESIGNS, CHECKED_ITEMS, listSayings } from './attacked-designs'
import { changeEverywhere, toChoice, toNumber } from './change-everywhere'
import { listChoicePatterns, listNumberPatterns } from './schema-patterns'

/*
 * What an item rests on decides when an answer or a waiver of it is asked for again, and which items a remedy is held against: an item that moves with a
 * field that it does not name keeps an answer to another design. Every number and choice outside the plan is changed, as the schema lists them. Our choice, no
 * published source.
 */

const NAMES = ['the example in full', 'skua-rev-b', 'pipit-rev-a', 'bends with states and loads']
const DESIGNS = ATTACKED_DESIGNS.filter(([name]) => NAMES.includes(name))

test('an item moves with no field but those that it says it rests on', () => {
  expect(DESIGNS).toHaveLength(NAMES.length)
  const before = DESIGNS.map(([, design]) => listSayings(design))
  const changes = [
    ...listNumberPatterns().map((pattern) => [pattern, [toNumber(pattern, (value) => value * 1.3 + 0.6)]] as const),
    ...[...listChoicePatterns()].map(([pattern, choices]) => [pattern, [...choices].map(toChoice)] as const),
  ]
  const unnamed = new Set<string>()
  let tried = 0
  for (const [pattern, ways] of changes) {
    if (pattern.startsWith('plan.') || pattern === 'formatVersion') continue
    DESIGNS.forEach(([, design], at) => {
      for (const way of ways) {
        const parsed = parseDesign(changeEverywhere(design, pattern, way))
        if (!parsed.ok) continue
        tried += 1
        listSayings(parsed.value).forEach((said, index) => {
          const item = CHECKED_ITEMS[index]
          if (item !== undefined && said !== before[at]?.[index] && !isInputOf(item.id, pattern.split('.')))
            unnamed.add(`${item.id} moves with ${pattern}`)
        })
      }
    })
  }
  expect([...unnamed]).toEqual([])
  expect(tried).toBeGreaterThan(500)
}, 600_000)
