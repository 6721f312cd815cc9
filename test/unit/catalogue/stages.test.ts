import { expect, test } from 'vitest'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { REQUIREMENT_RANGES } from '@/lib/engine/catalogue/requirements'

/*
 * An early review asks what construction, bends and brief tell. What only a layout knows is asked with the layout: what is asked before anybody can know it
 * gets a yes. Common practice, no published source.
 */

/** Facts that somebody reads off a layout. */
const OF_LAYOUT =
  /nearestBend|clearOfBends|transitionDistanceMm|EdgeDistanceMm|crossings|^features\.(pads|outlineCorners|widthSteps|coverlayOpenings|slits|registrations|components|copperToOutlineMm)|^features$/

/** Asked early all the same: an opening over a bend, or on the skin, is decided with the cover and the finish. */
const KNOWN_BEFORE_LAYOUT: Readonly<Record<string, readonly string[]>> = {
  'surface-finish': ['features.coverlayOpenings'],
  'skin-contact': ['features.coverlayOpenings', 'features.pads'],
  // Held against their range where they are stated; while they are blank it does not wait for them.
  'requirement-range': REQUIREMENT_RANGES.map(({ pattern }) => pattern),
}

test('no early item waits for what only a layout tells', () => {
  const early = CATALOGUE.filter(({ decidedWhen }) => decidedWhen === 'early')
  const waiting = early.flatMap(({ id, restsOn }) => {
    const found = restsOn.filter((path) => OF_LAYOUT.test(path) && !KNOWN_BEFORE_LAYOUT[id]?.includes(path))
    return found.length === 0 ? [] : [`${id}: ${found.join(', ')}`]
  })
  expect(waiting).toEqual([])
  expect(early.length).toBeGreaterThan(40)
})

test('what rests on the fabricator’s matrix, shelf, looks or declarations is asked of a fabricator', () => {
  const reads = CATALOGUE.filter(({ id }) =>
    [
      'capability-match',
      'stock-materials',
      'fabricator-currency',
      'engineering-queries',
      'buildable-construction',
    ].includes(id),
  )
  expect(reads.map(({ id, decidedWhen }) => [id, decidedWhen])).toEqual(reads.map(({ id }) => [id, 'fabricator']))
  expect(reads).toHaveLength(5)
})
