import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Design } from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'
import { applyDesignPatch, makePatch } from '@/lib/engine/remedies/patch'
import { makeRemedyRehearsal } from '@/lib/jobs/rehearsal'

// Patches are of any document (RFC 6902): small ones show every way in which lists differ.
const patch = (before: object, after: object) => makePatch(before as Design, after as Design)
const apply = (before: object, operations: ReturnType<typeof patch>): unknown =>
  applyDesignPatch(before as Design, operations)

const POOL = Array.from({ length: 8 }, (_, at) => ({ id: `part-${at}`, size: at % 3 }))
const list = fc
  .array(fc.integer({ min: 0, max: POOL.length - 1 }), { maxLength: 9 })
  .map((at) => at.map((each) => POOL[each]))

test('a patch between two lists of shared entries leads from one to the other, and the patch back returns', () => {
  fc.assert(
    fc.property(list, list, (first, second) => {
      const [before, after] = [{ parts: first }, { parts: second }]
      expect(apply(before, patch(before, after))).toEqual(after)
      expect(apply(after, patch(after, before))).toEqual(before)
    }),
    { numRuns: 300 },
  )
})

test('entries that only came or only went are what the patch names, in their place', () => {
  const [a, b, c, d] = POOL
  expect(patch({ parts: [a, d] }, { parts: [a, b, c, d] })).toEqual([
    { op: 'add', path: '/parts/1', value: b },
    { op: 'add', path: '/parts/2', value: c },
  ])
  expect(patch({ parts: [a, b, c, d] }, { parts: [a, d] })).toEqual([
    { op: 'remove', path: '/parts/1' },
    { op: 'remove', path: '/parts/1' },
  ])
  expect(patch({ parts: [] }, { parts: [] })).toEqual([])
})

test('the rehearsal of a server goes through sets of every size, as the searches that it prepares do', () => {
  const { design, bendId } = makeRemedyRehearsal()
  const { tried, arrival } = findRemedies(design, bendId)
  expect(tried.alone).toBeGreaterThan(0)
  expect(tried.inPairs).toBeGreaterThan(0)
  expect(tried.inLargerSets).toBeGreaterThan(0)
  expect(arrival.kind).toBe('meets')
})
