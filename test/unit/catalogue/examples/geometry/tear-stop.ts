import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const tearStopExamples: readonly ItemExample[] = [
  {
    name: 'tear stop drawn at a sharp corner',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { insideRadiusMm: 0.5, tearStop: true })
    },
    expect: 'needs-judgment',
  },
  { name: 'tear stop drawn where nothing tears', expect: 'not-applicable' },
  {
    name: 'none',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { insideRadiusMm: 0.5, tearStop: false })
    },
    expect: 'fails',
  },
  {
    name: 'not looked at',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { insideRadiusMm: 0.5, tearStop: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'none where nothing tears: round corners, a relief hole, nothing pulled',
    change: (d) => {
      getOnly(d.features.outlineCorners).tearStop = false
      getOnly(d.features.slits).tearStop = false
    },
    expect: 'not-applicable',
  },
  {
    name: 'none where an arm is pulled',
    change: (d) => {
      Object.assign(getOnly(d.features.outlineCorners), { isPulled: true, tearStop: false })
    },
    expect: 'fails',
  },
  {
    name: 'none at a slit with a relief hole of 1 mm',
    change: (d) => {
      Object.assign(getOnly(d.features.slits), { endReliefDiameterMm: 1, tearStop: false })
    },
    expect: 'fails',
  },
]
