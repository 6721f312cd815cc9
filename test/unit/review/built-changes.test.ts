import { expect, test } from 'vitest'
import type { Design } from '@/lib/engine'
import { countBuiltChanges } from '@/lib/review'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const countAfter = (change: (design: Design) => void) => {
  const after = readDemoDesign('skua-rev-b')
  change(after)
  return countBuiltChanges(readDemoDesign('skua-rev-b'), after)
}

test('a fabricator needs no second look for dates and words, and needs one for what is built', () => {
  expect(
    countAfter(({ brief, bends }) => {
      Object.assign(brief, { purpose: 'Other words.', packingAndHandling: 'In trays.', needDate: '2027-09-01' })
      for (const bend of bends) bend.note = 'Other words.'
    }),
  ).toBe(0)
  expect(countAfter(({ brief }) => Object.assign(brief, { quantityPerYear: 1 }))).toBe(1)
  expect(countAfter(({ bends }) => Object.assign(bends[0] ?? {}, { insideRadiusMm: 20 }))).toBe(1)
})
