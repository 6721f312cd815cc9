import type { Bend } from '@/lib/engine'
import { addUnbondedLeaf } from '../changes'
import type { ItemExample } from '../item-example'

const leaves =
  (gapUm: number, given: Partial<Bend>): NonNullable<ItemExample['change']> =>
  (d) => {
    addUnbondedLeaf(d, gapUm)
    for (const bend of d.bends) Object.assign(bend, given)
  }

export const leafLengthExamples: readonly ItemExample[] = [
  { name: 'equal leaves, a thin gap', change: leaves(30, { leafLengths: 'equal' }), expect: 'meets' },
  { name: 'equal leaves, a wide gap', change: leaves(400, { leafLengths: 'equal' }), expect: 'fails' },
  { name: 'a wide gap, and nobody said how long the leaves are', change: leaves(400, {}), expect: 'not-computed' },
  {
    name: 'stepped by what the gap asks',
    change: leaves(400, { leafLengths: 'stepped', leafStepMm: 0.75 }),
    expect: 'meets',
  },
  { name: 'stepped, nobody said by how much', change: leaves(400, { leafLengths: 'stepped' }), expect: 'not-computed' },
  {
    name: 'a moving leaf that buckles',
    change: leaves(400, { leafLengths: 'equal-free-to-buckle' }),
    expect: 'cannot-tell',
  },
  { name: 'one leaf', expect: 'not-applicable' },
]
