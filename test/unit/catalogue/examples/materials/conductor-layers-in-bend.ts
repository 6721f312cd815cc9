import { addFlexLayers, addUnbondedLeaf, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorLayersInBendExamples: readonly ItemExample[] = [
  { name: 'one layer', expect: 'meets' },
  { name: 'two layers through the hinge', change: (d) => addFlexLayers(d, 2), expect: 'fails' },
  { name: 'two leaves of one layer each, not bonded', change: (d) => addUnbondedLeaf(d, 50), expect: 'meets' },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
