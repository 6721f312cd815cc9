import { takeMaterialWithoutSpecification, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const materialCallOutsExamples: readonly ItemExample[] = [
  { name: 'library materials', expect: 'meets' },
  { name: "a film of one's own without a sheet", change: takeMaterialWithoutSpecification, expect: 'fails' },
  {
    name: 'a bare word in place of a sheet',
    change: (d) => {
      takeMaterialWithoutSpecification(d)
      for (const material of d.materials) material.specification = 'Polyimide'
    },
    expect: 'fails',
  },
  {
    name: 'a film and its thickness in place of a sheet',
    change: (d) => {
      takeMaterialWithoutSpecification(d)
      for (const material of d.materials) material.specification = 'PI 25'
    },
    expect: 'fails',
  },
  {
    name: 'a sheet of the house',
    change: (d) => {
      takeMaterialWithoutSpecification(d)
      for (const material of d.materials) material.specification = 'QI-MAT-0142'
    },
    expect: 'meets',
  },
  {
    name: 'a trade word, where an equivalent is allowed',
    change: (d) => {
      takeMaterialWithoutSpecification(d)
      for (const material of d.materials) material.specification = 'Polyimide film, or equivalent'
    },
    expect: 'meets',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
