import type { Design } from '@/lib/engine'
import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

const set = (given: Partial<Design['features']['pads'][number]>) => (design: Design) => {
  Object.assign(getOnly(design.features.pads), given)
}

export const landHoldExamples: readonly ItemExample[] = [
  { name: 'rim and spurs', expect: 'meets' },
  { name: 'spurs alone', change: set({ coverlayCaptureMm: 0 }), expect: 'meets' },
  { name: 'rim alone', change: set({ anchorCount: 0 }), expect: 'meets' },
  { name: 'neither', change: set({ coverlayCaptureMm: 0.05, anchorCount: 0 }), expect: 'fails' },
  {
    name: 'no spurs, and nobody looked at the rim',
    change: set({ coverlayCaptureMm: null, anchorCount: 0 }),
    expect: 'not-computed',
  },
  {
    name: 'no hold, and nobody said where',
    change: set({ coverlayCaptureMm: 0, anchorCount: 0, zoneId: null }),
    expect: 'not-computed',
  },
  {
    name: 'no hold, and its layer has no copper in the zone that is named',
    change: set({ coverlayCaptureMm: 0, anchorCount: 0, layerId: 'l1' }),
    expect: 'not-computed',
  },
  {
    name: 'on a rigid board',
    change: set({ coverlayCaptureMm: 0, anchorCount: 0, zoneId: 'board' }),
    expect: 'not-applicable',
  },
  {
    name: 'on a layer that runs through boards alone',
    change: set({ coverlayCaptureMm: 0, anchorCount: 0, layerId: 'l1', zoneId: null }),
    expect: 'not-applicable',
  },
  { name: 'a plated hole in it', change: set({ hasPlatedHole: true }), expect: 'not-applicable' },
]
