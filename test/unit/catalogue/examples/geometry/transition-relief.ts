import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const transitionReliefExamples: readonly ItemExample[] = [
  {
    name: 'recorded as done',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = 3
    },
    expect: 'needs-judgment',
  },
  {
    name: 'bends far from any rigid edge',
    change: (d) => {
      for (const bend of d.bends) bend.distanceToRigidMm = 8
    },
    expect: 'not-applicable',
  },
  {
    name: 'recorded as not done',
    change: (d) => {
      Object.assign(getBend(d, 'hinge'), { strainReliefAtTransition: false, distanceToRigidMm: 3 })
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      Object.assign(getBend(d, 'hinge'), { strainReliefAtTransition: null, distanceToRigidMm: 3 })
    },
    expect: 'not-computed',
  },
  {
    name: 'a bead whose width nobody gives',
    change: (d) => {
      Object.assign(getBend(d, 'hinge'), { strainReliefWidthMm: null, distanceToRigidMm: 3 })
    },
    expect: 'not-computed',
  },
]
