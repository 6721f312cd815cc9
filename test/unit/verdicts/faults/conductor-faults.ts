import { bendOf, type Fault, layerOf, set, zoneOf } from './fault'

/** Faults of conductors, and of copper that does not fit them. */
export const CONDUCTOR_FAULTS: readonly Fault[] = [
  [
    'hundreds of amperes, milliamperes typed for amperes',
    'conductor-current',
    'fails',
    (d) => {
      for (const conductor of d.features.conductors)
        conductor.currentAmp = Math.min(1000, (conductor.currentAmp ?? 0) * 1000)
    },
  ],
  [
    'no copper in the hinge by its share, and conductors through it',
    'statements-agree',
    'fails',
    (d) => {
      for (const each of zoneOf(d, 'hinge').presence) if (each.layerId === 'l2') each.coverageFraction = 0
    },
  ],
  [
    'copper in the hinge that no conductor is said to carry across',
    'feature-lists',
    'open',
    (d) => {
      for (const each of d.features.conductors) if (each.layerId === 'l2') each.crossings = []
    },
  ],
  [
    'the same, of which its angle is asked',
    'crossing-angle',
    'open',
    (d) => {
      for (const each of d.features.conductors) if (each.layerId === 'l3') each.crossings = []
    },
  ],
  [
    'a hinge that nothing crosses, while something crosses the fold',
    'feature-lists',
    'open',
    (d) => {
      for (const each of d.features.conductors)
        each.crossings = each.crossings.filter(({ bendId }) => bendId !== 'hinge')
    },
  ],
  [
    'the same, of which its angle is asked',
    'crossing-angle',
    'open',
    (d) => {
      for (const each of d.features.conductors)
        each.crossings = each.crossings.filter(({ bendId }) => bendId !== 'hinge')
    },
  ],
  [
    'a hinge whose conductors have spaces in copper that covers all of it',
    'statements-agree',
    'fails',
    (d) => {
      for (const each of zoneOf(d, 'hinge').presence)
        if (layerOf(d, each.layerId).kind === 'conductor') each.coverageFraction = 1
    },
  ],
  [
    'conductors called a plane',
    'conductor-current',
    'open',
    (d) => set(layerOf(d, 'l2'), { role: 'plane', planePattern: 'hatched' }),
  ],
  [
    'pads in the hinge on a layer that is not there',
    'statements-agree',
    'fails',
    (d) => {
      for (const pad of d.features.pads) set(pad, { zoneId: 'hinge', layerId: 'l4' })
    },
  ],
  [
    'conductors side by side that are wider than their link',
    'statements-agree',
    'fails',
    (d) => {
      zoneOf(d, 'link').widthMm = 3
      set(bendOf(d, 'fold'), { axisLengthMm: 3 })
    },
  ],
  [
    'conductors at 45 degrees across the hinge',
    'crossing-angle',
    'fails',
    (d) => {
      for (const { crossings } of d.features.conductors) for (const crossing of crossings) crossing.angleToAxisDeg = 45
    },
  ],
  [
    '230 V on a space of 0.2 mm',
    'hazardous-voltage-space',
    'open',
    (d) => set(d.features.conductors[0], { voltageVolt: 230 }),
  ],
  [
    '25 V bare on a space of 0.05 mm',
    'voltage-space',
    'fails',
    (d) => set(d.features.conductors[0], { voltageVolt: 25, spaceMm: 0.05, isCovered: false }),
  ],
  [
    'half an ampere through 0.1 mm',
    'conductor-current',
    'fails',
    (d) => set(d.features.conductors[0], { widthMm: 0.1 }),
  ],
  [
    'a current that nobody stated',
    'conductor-current',
    'open',
    (d) => set(d.features.conductors[0], { currentAmp: null }),
  ],
  [
    'an impedance without a reference',
    'impedance-given',
    'open',
    (d) => set(d.features.conductors[0], { impedanceOhm: 50 }),
  ],
]
