import { expect, it } from 'vitest'
import { carryOver } from '@/lib/engine/remedies/carry-over'
import { applyDesignPatch, makePatch } from '@/lib/engine/remedies/patch'
import { change, getEntry, readDemo } from './demo'

const searched = readDemo('skua-rev-a')
const onto = change(searched, (d) => {
  d.name = 'Another'
  getEntry(d.construction.zones, 'hinge').lengthMm = 41
})

it('carries edits over as a patch would, and shares what they leave alone', () => {
  const edited = change(searched, (d) => {
    const bend = getEntry(d.bends, 'hinge')
    bend.insideRadiusMm = 12
    d.bends.push({ ...bend, id: 'second', name: 'Second' })
    d.brief.operatingMaxDegC = null
  })
  const carried = carryOver(searched, edited, onto)
  expect(carried).toEqual(applyDesignPatch(onto, makePatch(searched, edited)))
  expect(carried.name).toBe('Another')
  expect(getEntry(carried.construction.zones, 'hinge').lengthMm).toBe(41)
  expect(carried.construction).toBe(onto.construction)
})

it('takes entries of lists by their id, whatever their place', () => {
  const from = {
    list: [
      { id: 'a', n: 1 },
      { id: 'b', n: 2 },
    ],
    pairs: [1, 2],
  }
  const edited = { list: [{ id: 'b', n: 5 }], pairs: [1, 3] }
  const other = {
    list: [
      { id: 'x', n: 0 },
      { id: 'b', n: 2, more: true },
      { id: 'a', n: 1 },
    ],
    pairs: [7, 2],
  }
  expect(carryOver<object>(from, edited, other)).toEqual({ list: [{ id: 'b', n: 5, more: true }], pairs: [7, 3] })
  expect(carryOver<object>(from, from, other)).toBe(other)
})
