import { makePresence } from '@/lib/engine'
import { getOnly, getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const surfaceFinishExamples: readonly ItemExample[] = [
  { name: 'no nickel', expect: 'meets' },
  {
    name: 'no nickel, in an opening that lies in the hinge',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'meets',
  },
  {
    name: 'nickel, where solder mask covers the copper of the arm',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      const arm = getZone(d, 'arm')
      arm.presence = [makePresence('mask-top'), ...arm.presence.filter(({ layerId }) => !layerId.startsWith('cover'))]
    },
    expect: 'meets',
  },
  {
    name: 'nickel 0.1 mm from the hinge: how near is for another item',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 0.1 }
    },
    expect: 'meets',
  },
  {
    name: 'nickel 6 mm from the hinge',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
    },
    expect: 'meets',
  },
  {
    name: 'nickel in an opening that lies in the hinge',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'nickel, and nobody listed an opening',
    change: (d) => {
      d.brief.surfaceFinish = 'electroplated-nickel-gold'
      d.features.coverlayOpenings = []
    },
    expect: 'not-computed',
  },
  {
    name: 'nickel over bare copper in the arm',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover'))
    },
    expect: 'fails',
  },
  {
    name: 'finish open',
    change: (d) => {
      d.brief.surfaceFinish = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nickel in an opening of which nobody said how far from a bend it lies',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(getOnly(d.features.coverlayOpenings), { nearestBend: null, clearOfBends: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'nickel in an opening near the hinge, at no stated distance',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(getOnly(d.features.coverlayOpenings), {
        nearestBend: { bendId: 'hinge', distanceMm: null },
        clearOfBends: true,
      })
    },
    expect: 'not-computed',
  },
  {
    name: 'nickel in an opening that is clear of every bend',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(getOnly(d.features.coverlayOpenings), { nearestBend: null, clearOfBends: true })
    },
    expect: 'meets',
  },
]
