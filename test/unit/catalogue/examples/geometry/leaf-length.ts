import { addUnbondedLeaf } from '../changes'
import type { ItemExample } from '../item-example'

export const leafLengthExamples: readonly ItemExample[] = [
  { name: 'a thin gap', change: (d) => addUnbondedLeaf(d, 30), expect: 'meets' },
  { name: 'a wide gap', change: (d) => addUnbondedLeaf(d, 400), expect: 'fails' },
  { name: 'one leaf', expect: 'not-applicable' },
]
