import { addLayersBelow, getFilm } from '../changes'
import type { ItemExample } from '../item-example'

export const solderMaskInBendExamples: readonly ItemExample[] = [
  { name: 'coverlay only', expect: 'meets' },
  {
    name: 'mask over the arm',
    change: (d) =>
      addLayersBelow(d, 'prepreg-top', [{ ...getFilm(d, 'mask-top'), id: 'mask-arm', name: 'Mask on flex' }], ['arm']),
    expect: 'fails',
  },
]
