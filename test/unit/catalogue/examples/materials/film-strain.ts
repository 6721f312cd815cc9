import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const filmStrainExamples: readonly ItemExample[] = [
  {
    name: 'hinges at 25 mm',
    change: (d) => {
      for (const id of ['hinge', 'rocker']) getBend(d, id).insideRadiusMm = 25
    },
    expect: 'meets',
  },
  {
    name: 'the hinge at 1 mm',
    change: (d) => {
      getBend(d, 'hinge').insideRadiusMm = 1
    },
    expect: 'fails',
  },
  {
    name: 'a fold hard on itself',
    change: (d) => {
      for (const id of ['hinge', 'rocker']) getBend(d, id).insideRadiusMm = 25
      for (const bend of d.bends)
        if (bend.use !== 'dynamic') Object.assign(bend, { insideRadiusMm: 0.05, radiusToleranceMm: 0 })
    },
    expect: 'cannot-tell',
  },
]
