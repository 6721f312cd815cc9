import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayWebExamples: readonly ItemExample[] = [
  { name: '0.5 mm', expect: 'meets' },
  {
    name: '0.1 mm',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).webMm = 0.1
    },
    expect: 'fails',
  },
  {
    name: '0.28 mm, drilled',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { webMm: 0.28, method: 'drill' })
    },
    expect: 'meets',
  },
  {
    name: '0.28 mm, punched',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { webMm: 0.28, method: 'punch' })
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).webMm = null
    },
    expect: 'not-computed',
  },
]
