import type { ItemExample } from '../item-example'

export const antennaExamples: readonly ItemExample[] = [
  { name: 'clear', expect: 'needs-judgment' },
  {
    name: 'metal too near',
    change: (d) => {
      d.brief.exposure.antennaToMetalMm = 4
    },
    expect: 'fails',
  },
  {
    name: 'none',
    change: (d) => {
      d.brief.exposure.hasAntenna = false
    },
    expect: 'not-applicable',
  },
  {
    name: 'keep-out open',
    change: (d) => {
      d.brief.exposure.antennaKeepOutMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nobody said',
    change: (d) => {
      d.brief.exposure.hasAntenna = null
    },
    expect: 'not-computed',
  },
]
