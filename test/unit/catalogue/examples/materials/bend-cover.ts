import { getConductorLayer, getZone, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const bendCoverExamples: readonly ItemExample[] = [
  { name: 'coverlay above, base film below', expect: 'meets' },
  {
    name: 'coverlay and its adhesive left out of the arm',
    change: (d) => {
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover-top'))
    },
    expect: 'fails',
  },
  {
    name: 'adhesive alone over the copper',
    change: (d) => {
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => layerId !== 'cover-top')
    },
    expect: 'fails',
  },
  {
    name: 'no copper left to cover',
    change: (d) => {
      getConductorLayer(d, 'l2').coverageFraction = 0
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover-top'))
    },
    expect: 'meets',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
