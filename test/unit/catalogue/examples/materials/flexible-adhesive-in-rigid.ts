import { getFilm } from '../changes'
import type { ItemExample } from '../item-example'

export const flexibleAdhesiveInRigidExamples: readonly ItemExample[] = [
  { name: 'epoxy adhesive under the board', expect: 'meets' },
  {
    name: 'acrylic adhesive run through the board',
    change: (d) => {
      getFilm(d, 'cover-top-adhesive').materialId = 'acrylic-adhesive'
    },
    expect: 'fails',
  },
]
