import { addFlexLayers, addUnbondedLeaf, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const unbondedLeavesExamples: readonly ItemExample[] = [
  { name: 'two leaves of one layer', change: (d) => addUnbondedLeaf(d, 50), expect: 'meets' },
  { name: 'four layers bonded', change: (d) => addFlexLayers(d, 4), expect: 'fails' },
  { name: 'one layer in every bend', expect: 'not-applicable' },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
