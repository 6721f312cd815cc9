import { makePresence } from '@/lib/engine'
import { bendOf, type Fault, layerOf, remove, set, zoneOf } from './fault'

/** Faults of bends, and of what lies in them. */
export const BEND_FAULTS: readonly Fault[] = [
  [
    'flex tests held at "-"',
    'flex-test-terms',
    'open',
    (d) => {
      for (const { flexTest } of d.bends) flexTest.pointsOfApplication = '-'
    },
  ],
  [
    'a bead of "TBD"',
    'bead-beside-moving-bend',
    'open',
    (d) => {
      Object.assign(d.features.rigidEdges, {
        bead: 'called-out',
        beadMaterial: ' T.B.D. ',
        beadWidthMm: 2,
        beadHeightMm: 0.5,
      })
    },
  ],
  ['a hinge that is called a fold', 'bend-use', 'fails', (d) => set(bendOf(d, 'hinge'), { use: 'fold-once' })],
  [
    'a hinge of one cycle, handled more often',
    'handling-count',
    'fails',
    (d) => set(bendOf(d, 'hinge'), { requiredCycles: 1 }),
  ],
  [
    'a hinge of a hundredth of a degree',
    'statements-agree',
    'fails',
    (d) => set(bendOf(d, 'hinge'), { angleDeg: 0.01, flexesFromAngleDeg: null }),
  ],
  [
    'an arc that leaves no straight film in its zone',
    'bend-fit',
    'open',
    (d) => set(bendOf(d, 'hinge'), { insideRadiusMm: 23.8 }),
  ],
  [
    'an arc and its distances that are longer than their zone',
    'statements-agree',
    'fails',
    (d) => {
      zoneOf(d, 'link').lengthMm = 8
    },
  ],
  [
    'a fold at the stiffened connector end',
    'straight-film',
    'fails',
    (d) => set(bendOf(d, 'fold'), { distanceToRigidMm: 0 }),
  ],
  ['a hinge whose use nobody stated', 'fatigue-life', 'open', (d) => set(bendOf(d, 'hinge'), { use: null })],
  [
    'a hinge with no number of cycles',
    'fatigue-life',
    'open',
    (d) => set(bendOf(d, 'hinge'), { requiredCycles: null }),
  ],
  [
    'a hinge that is said to be folded once, worked 500 times',
    'handling-count',
    'fails',
    (d) => {
      const hinge = bendOf(d, 'hinge')
      set(hinge, { use: 'fold-once', requiredCycles: null })
      hinge.inProduct.handlingCycles = 500
    },
  ],
  [
    'solder mask in place of film in the hinge',
    'solder-mask-in-bend',
    'fails',
    (d) => {
      remove(d, 'hinge', 'cover-top', 'adhesive-top')
      zoneOf(d, 'hinge').presence.push(makePresence('mask-top'))
    },
  ],
  [
    'a solid plane through the fold',
    'plane-in-fold',
    'fails',
    (d) => set(layerOf(d, 'l3'), { role: 'plane', planePattern: 'solid' }),
  ],
  [
    'a solid plane through the hinge',
    'plane-in-bend',
    'fails',
    (d) => set(layerOf(d, 'l2'), { role: 'mixed', planePattern: 'solid' }),
  ],
  ['a hinge pulled by 500 N', 'fatigue-life', 'open', (d) => set(bendOf(d, 'hinge'), { pullN: 500 })],
  [
    'leaves that are not bonded, of one length',
    'leaf-length',
    'open',
    (d) => {
      const { layers } = d.construction
      layers.splice(layers.findIndex(({ id }) => id === 'base') + 1, 0, {
        id: 'gap',
        name: 'Gap',
        kind: 'unbonded-gap',
        thicknessUm: 200,
      })
      zoneOf(d, 'link').presence.push(makePresence('gap'))
    },
  ],
]
