import { addLayersBelow, getFilm, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const cladAdhesiveExamples: readonly ItemExample[] = [
  { name: 'foil cast on film', expect: 'meets' },
  {
    name: 'adhesive under the foil',
    change: (d) =>
      addLayersBelow(
        d,
        'l2',
        [{ ...getFilm(d, 'cover-top-adhesive'), id: 'clad-adhesive', name: 'Clad adhesive, flex' }],
        ['arm'],
      ),
    expect: 'fails',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
