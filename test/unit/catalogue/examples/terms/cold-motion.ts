import type { ItemExample } from '../item-example'

export const coldMotionExamples: readonly ItemExample[] = [
  { name: 'tested colder', expect: 'meets' },
  {
    name: 'tested in a warm room',
    change: (d) => {
      d.brief.exposure.coldTestDegC = 20
    },
    expect: 'fails',
  },
  {
    name: 'still when cold',
    change: (d) => {
      d.brief.exposure.movesWhenCold = false
    },
    expect: 'not-applicable',
  },
  {
    name: 'nobody said',
    change: (d) => {
      d.brief.exposure.movesWhenCold = null
    },
    expect: 'not-computed',
  },
  {
    name: 'lowest temperature open',
    change: (d) => {
      d.brief.operatingMinDegC = null
    },
    expect: 'not-computed',
  },
]
