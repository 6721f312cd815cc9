import { getBend, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const straightFilmExamples: readonly ItemExample[] = [
  { name: 'bend 6 mm from a rigid edge', expect: 'meets' },
  {
    name: 'bend 1 mm from a rigid edge',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = 1
    },
    expect: 'fails',
  },
  {
    name: 'stiffener on the edge of the bend',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
    expect: 'fails',
  },
  {
    name: 'a stiffener nearer than the nearest edge: the two contradict each other',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = 20
      getOnly(d.features.stiffeners).nearestBend = { bendId: 'hinge', distanceMm: 5 }
    },
    expect: 'fails',
  },
  {
    name: 'an opening in the straight film',
    change: (d) => {
      getOnly(d.features.coverlayOpenings).nearestBend = { bendId: 'hinge', distanceMm: 1 }
    },
    expect: 'fails',
  },
  {
    name: 'a land on film beside the bend',
    change: (d) => {
      getOnly(d.features.pads).nearestBend = { bendId: 'hinge', distanceMm: 1 }
    },
    expect: 'fails',
  },
  {
    name: 'a land on the board, however near: the edge lies between',
    change: (d) => {
      Object.assign(getOnly(d.features.pads), { zoneId: 'board', nearestBend: null })
    },
    expect: 'meets',
  },
  {
    name: 'a conductor that changes width beside the bend',
    change: (d) => {
      Object.assign(getOnly(d.features.widthSteps), {
        nearestBend: { bendId: 'hinge', distanceMm: 0.5 },
        clearOfBends: null,
      })
    },
    expect: 'fails',
  },
  {
    name: 'a width step of which nobody said where it lies',
    change: (d) => {
      Object.assign(getOnly(d.features.widthSteps), { nearestBend: null, clearOfBends: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a list of width steps that nobody filled or marked',
    change: (d) => {
      d.features.widthSteps = []
    },
    expect: 'not-computed',
  },
  {
    name: 'bend not measured',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'stiffener not measured',
    change: (d) => {
      getOnly(d.features.stiffeners).nearestBend = null
    },
    expect: 'not-computed',
  },
  {
    name: 'stiffener in the construction, and nothing said of it yet',
    change: (d) => {
      d.features.stiffeners = []
    },
    expect: 'not-computed',
  },
]
