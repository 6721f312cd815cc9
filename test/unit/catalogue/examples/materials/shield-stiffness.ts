import { addShield, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const shieldStiffnessExamples: readonly ItemExample[] = [
  { name: 'a 2 um shield film', change: (d) => addShield(d, 2), expect: 'meets' },
  { name: 'a 60 um shield film', change: (d) => addShield(d, 60), expect: 'fails' },
  { name: 'no shield', expect: 'not-applicable' },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
