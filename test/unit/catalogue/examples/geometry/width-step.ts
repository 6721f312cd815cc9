import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const widthStepExamples: readonly ItemExample[] = [
  { name: 'a long taper', expect: 'meets' },
  {
    name: 'a square step',
    change: (d) => {
      getOnly(d.features.widthSteps).taperLengthMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'no step',
    change: (d) => {
      d.features.widthSteps = []
      d.features.none = ['widthSteps']
    },
    expect: 'not-applicable',
  },
  {
    name: 'none listed, and not marked as none',
    change: (d) => {
      d.features.widthSteps = []
    },
    expect: 'not-computed',
  },
]
