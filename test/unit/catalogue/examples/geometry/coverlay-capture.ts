import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayCaptureExamples: readonly ItemExample[] = [
  { name: '0.15 mm', expect: 'meets' },
  {
    name: 'none',
    change: (d) => {
      getOnly(d.features.pads).coverlayCaptureMm = 0
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.pads).coverlayCaptureMm = null
    },
    expect: 'not-computed',
  },
]
