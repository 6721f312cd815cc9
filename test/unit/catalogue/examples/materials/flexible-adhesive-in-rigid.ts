import { type Design, NO_PLATING } from '@/lib/engine'
import { getConductorLayer, getFilm, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

const acrylicWithoutPlating = (d: Design): void => {
  getFilm(d, 'cover-top-adhesive').materialId = 'acrylic-adhesive'
  for (const id of ['l1', 'l2', 'l3']) getConductorLayer(d, id).plating = NO_PLATING
  for (const zone of d.construction.zones) for (const presence of zone.presence) presence.platedCopper = null
  d.features.holes = []
}

const EXAMPLES: readonly ItemExample[] = [
  { name: 'epoxy adhesive under the board', expect: 'meets' },
  {
    name: 'acrylic adhesive run through the board',
    change: (d) => {
      getFilm(d, 'cover-top-adhesive').materialId = 'acrylic-adhesive'
    },
    expect: 'fails',
  },
  {
    name: 'acrylic where nothing is plated and no hole is',
    change: (d) => {
      acrylicWithoutPlating(d)
      d.features.none = ['holes']
    },
    expect: 'not-applicable',
  },
  {
    name: 'acrylic where nothing is plated and nobody listed the holes',
    change: acrylicWithoutPlating,
    expect: 'not-computed',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]

const inClass = (performanceClass: 'class-2' | 'class-3' | null, examples: readonly ItemExample[]): ItemExample[] =>
  examples.map(({ change, ...example }) => ({
    ...example,
    change: (design) => {
      change?.(design)
      design.brief.performanceClass = performanceClass
    },
  }))

export const flexibleAdhesiveInRigidExamples: readonly ItemExample[] = [
  ...inClass('class-2', EXAMPLES),
  ...inClass('class-3', [{ name: 'class 3', expect: 'not-applicable' }]),
]

export const flexibleAdhesiveClassThreeExamples: readonly ItemExample[] = [
  ...inClass('class-3', EXAMPLES),
  ...inClass('class-2', [{ name: 'class 2', expect: 'not-applicable' }]),
  ...inClass(null, [{ name: 'class open', expect: 'not-computed' }]),
]
