import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

const EXAMPLES: readonly ItemExample[] = [
  { name: 'hole at 2 mm, component at 3 mm', expect: 'meets' },
  {
    name: 'hole at 1.4 mm',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = 1.4
    },
    expect: 'fails',
  },
  {
    name: 'component at 0.5 mm',
    change: (d) => {
      getOnly(d.features.components).transitionDistanceMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'hole not measured',
    change: (d) => {
      getOnly(d.features.holes).transitionDistanceMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no hole listed, and the list not marked',
    change: (d) => {
      d.features.holes = []
    },
    expect: 'not-computed',
  },
  {
    name: 'no component listed, and the list not marked',
    change: (d) => {
      d.features.components = []
    },
    expect: 'not-computed',
  },
]

const inClass = (performanceClass: 'class-2' | 'class-3' | null, examples: readonly ItemExample[]): ItemExample[] =>
  examples.map(({ change, ...example }) => ({
    ...example,
    change: (design) => {
      design.brief.performanceClass = performanceClass
      change?.(design)
    },
  }))

export const transitionStripExamples: readonly ItemExample[] = [
  ...inClass('class-2', EXAMPLES),
  ...inClass('class-3', [{ name: 'class 3', expect: 'not-applicable' }]),
]

export const transitionStripClassThreeExamples: readonly ItemExample[] = [
  ...inClass('class-3', EXAMPLES),
  ...inClass('class-2', [{ name: 'class 2', expect: 'not-applicable' }]),
  ...inClass(null, [{ name: 'class open', expect: 'not-computed' }]),
]
