import { takeMaterialWithoutSpecification, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const materialCallOutsExamples: readonly ItemExample[] = [
  { name: 'library materials', expect: 'meets' },
  { name: "a film of one's own without a sheet", change: takeMaterialWithoutSpecification, expect: 'fails' },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
