import { getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const flexLengthExamples: readonly ItemExample[] = [
  { name: '60 mm of flex', expect: 'meets' },
  {
    name: '4 mm between rigid edges',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 4
    },
    expect: 'thin-margin',
  },
  {
    name: '2 mm between rigid edges',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 2
    },
    expect: 'fails',
  },
  {
    name: '200 mm of flex',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 200
    },
    expect: 'meets',
  },
  {
    name: 'length not known yet',
    change: (d) => {
      getZone(d, 'arm').lengthMm = null
    },
    expect: 'not-computed',
  },
]
