import type { Bend, Design } from '@/lib/engine'
import { addUnbondedLeaf, getZone } from '../changes'
import type { ItemExample } from '../item-example'

/** A leaf with copper outside of the bend's own, held over the length of its zone. */
const leaves =
  (gapUm: number, given: Partial<Bend>, lengthMm: number | null = 40): NonNullable<ItemExample['change']> =>
  (d: Design) => {
    addUnbondedLeaf(d, gapUm)
    for (const bend of d.bends) {
      Object.assign(bend, given)
      getZone(d, bend.zoneId).lengthMm = lengthMm
    }
  }

export const leafPullExamples: readonly ItemExample[] = [
  {
    name: 'equal leaves, a wide gap, a short zone',
    change: leaves(400, { leafLengths: 'equal' }),
    expect: 'fails',
  },
  {
    name: 'stepped by what the bends ask, over a length that evens out the rest',
    change: leaves(400, { leafLengths: 'stepped', leafStepMm: 0.737 }, 600),
    expect: 'meets',
  },
  {
    name: 'stepped a little too far over a short length',
    change: leaves(400, { leafLengths: 'stepped', leafStepMm: 0.75 }),
    expect: 'thin-margin',
  },
  {
    name: 'folds whose short leaf would have to stretch by more than can be told',
    change: leaves(400, { leafLengths: 'equal', use: 'fold-once', requiredCycles: null }),
    expect: 'cannot-tell',
  },
  { name: 'nobody said how long the leaves are', change: leaves(400, {}), expect: 'not-computed' },
  { name: 'stepped, nobody said by how much', change: leaves(400, { leafLengths: 'stepped' }), expect: 'not-computed' },
  { name: 'a zone without a length', change: leaves(400, { leafLengths: 'equal' }, null), expect: 'not-computed' },
  {
    name: 'a moving leaf that buckles',
    change: leaves(400, { leafLengths: 'equal-free-to-buckle' }),
    expect: 'cannot-tell',
  },
  {
    name: 'a folded leaf that buckles',
    change: leaves(400, { leafLengths: 'equal-free-to-buckle', use: 'fold-once', requiredCycles: null }),
    expect: 'meets',
  },
  { name: 'one leaf', expect: 'not-applicable' },
]
