import type { Features } from '@/lib/engine'

interface Named {
  readonly id: string
  readonly name: string
}

/** Rows of the features of which nothing is known yet, for their tables and for the plan. */
const BLANKS = {
  holes: {
    zoneId: null,
    plated: null,
    fromLayerId: null,
    toLayerId: null,
    filling: null,
    wallPlatingUm: null,
    drillMm: null,
    landMm: null,
    nearestBend: null,
    clearOfBends: null,
    transitionDistanceMm: null,
    stiffenerEdgeDistanceMm: null,
    stiffenerHoleMm: null,
  },
  coverlayOpenings: {
    method: null,
    openingMm: null,
    webMm: null,
    landMm: null,
    neededOpenMm: null,
    nearestBend: null,
    clearOfBends: null,
  },
  stiffeners: {
    layerId: '',
    purpose: null,
    coverlayOverlapMm: null,
    bonded: null,
    heatRatingDegC: null,
    nearestBend: null,
    onDrawing: null,
  },
  components: {
    nearestBend: null,
    clearOfBends: null,
    transitionDistanceMm: null,
    zoneId: null,
    side: null,
    overStiffener: null,
  },
} satisfies { [K in BlankKey]: Omit<Features[K][number], 'id' | 'name'> }

type BlankKey = 'holes' | 'coverlayOpenings' | 'stiffeners' | 'components'

export function makeBlankFeature<K extends BlankKey>(key: K, named: Named): Features[K][number] {
  return { ...BLANKS[key], ...named } as Features[K][number]
}
