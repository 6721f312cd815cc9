import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const coverlayOpeningExamples: readonly ItemExample[] = [
  { name: '1 mm', expect: 'meets' },
  {
    name: '0.6 mm by laser',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).openingMm = 0.6
    },
    expect: 'meets',
  },
  {
    name: '0.6 mm, drilled',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { openingMm: 0.6, method: 'drill' })
    },
    expect: 'meets',
  },
  {
    name: 'nobody said how it is made',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).method = null
    },
    expect: 'not-computed',
  },
  {
    name: '0.6 mm, punched',
    change: (d) => {
      Object.assign(getOnly(d.features.coverlayOpenings), { openingMm: 0.6, method: 'punch' })
    },
    expect: 'fails',
  },
  {
    name: 'none listed',
    change: (d) => {
      d.features.coverlayOpenings = []
    },
    expect: 'not-computed',
  },
]
