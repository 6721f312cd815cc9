import { addFlexLayers, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const layerStaggerExamples: readonly ItemExample[] = [
  { name: 'two layers, staggered', change: (d) => addFlexLayers(d, 2), expect: 'needs-judgment' },
  {
    name: 'two layers, one above the other',
    change: (d) => {
      addFlexLayers(d, 2)
      d.features.routing.staggeredOnAdjacentLayers = false
    },
    expect: 'fails',
  },
  { name: 'one layer', expect: 'not-applicable' },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
