import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const surfaceFinishExamples: readonly ItemExample[] = [
  { name: 'no nickel', expect: 'meets' },
  {
    name: 'nickel 6 mm from the hinge',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
    },
    expect: 'meets',
  },
  {
    name: 'nickel 1 mm from the hinge',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 1 }
    },
    expect: 'fails',
  },
  {
    name: 'nickel, and nobody listed an opening',
    change: (d) => {
      d.brief.surfaceFinish = 'electroplated-nickel-gold'
      d.features.coverlayOpenings = []
    },
    expect: 'cannot-tell',
  },
  {
    name: 'finish open',
    change: (d) => {
      d.brief.surfaceFinish = null
    },
    expect: 'not-computed',
  },
]
