import { type Fault, set, zoneOf } from './fault'

/** Faults of holes, components, openings, corners and slits. */
export const HOLE_AND_EDGE_FAULTS: readonly Fault[] = [
  [
    'lands of 400 mm, micrometres typed for millimetres',
    'statements-agree',
    'fails',
    (d) => {
      for (const hole of d.features.holes) hole.landMm = 400
    },
  ],
  [
    'drills of 300 mm, without a land',
    'statements-agree',
    'fails',
    (d) => {
      for (const hole of d.features.holes) Object.assign(hole, { drillMm: 300, landMm: null })
    },
  ],
  [
    'plated layers with holes that are said to be bare',
    'statements-agree',
    'fails',
    (d) => {
      for (const hole of d.features.holes) hole.plated = false
    },
  ],
  [
    'a hole five metres from its transition',
    'statements-agree',
    'fails',
    (d) => set(d.features.holes[0], { transitionDistanceMm: 5000 }),
  ],
  [
    'an opening four metres from its bend',
    'statements-agree',
    'fails',
    (d) => set(d.features.coverlayOpenings[0], { nearestBend: { bendId: 'fold', distanceMm: 4000 } }),
  ],
  [
    'a plated hole in a zone of one copper layer',
    'hole-aspect',
    'open',
    (d) => set(d.features.holes[0], { zoneId: 'hinge' }),
  ],
  [
    'a via of which nobody said whether it is plated',
    'annular-ring',
    'open',
    (d) => set(d.features.holes[0], { plated: null }),
  ],
  ['walls of 5 um', 'hole-plating', 'fails', (d) => set(d.features.holes[0], { wallPlatingUm: 5 })],
  [
    'walls of 5 um, and two temperature cycles',
    'hole-life',
    'open',
    (d) => {
      for (const hole of d.features.holes) hole.wallPlatingUm = 5
      d.brief.temperatureCycles = 2
      set(zoneOf(d, 'controller'), { throughExpansionPpmPerC: 55, throughModulusGpa: 8, glassTransitionDegC: 150 })
    },
  ],
  [
    'a via on the rigid edge',
    'transition-strip-class-three',
    'fails',
    (d) => set(d.features.holes[0], { transitionDistanceMm: 0.1 }),
  ],
  [
    'a component on the rigid edge',
    'transition-strip-class-three',
    'fails',
    (d) => set(d.features.components[0], { transitionDistanceMm: 0.1 }),
  ],
  [
    'a component in the hinge',
    'component-to-bend',
    'fails',
    (d) => set(d.features.components[0], { nearestBend: { bendId: 'hinge', distanceMm: 0 } }),
  ],
  [
    'an opening in the fold',
    'opening-to-bend',
    'fails',
    (d) => set(d.features.coverlayOpenings[0], { nearestBend: { bendId: 'fold', distanceMm: 0 } }),
  ],
  [
    'a sharp corner at the hinge',
    'corner-radius',
    'fails',
    (d) => set(d.features.outlineCorners[0], { insideRadiusMm: 0 }),
  ],
  [
    'a slit that ends in a point',
    'slit-end-relief',
    'fails',
    (d) => {
      d.features.none = []
      d.features.slits = [{ id: 'cut', name: 'Cut', endReliefDiameterMm: 0, widthMm: 0.1, tearStop: false }]
    },
  ],
  [
    'slits marked as none beside a slit',
    'feature-lists',
    'fails',
    (d) => {
      d.features.slits = [{ id: 'cut', name: 'Cut', endReliefDiameterMm: 2, widthMm: 1, tearStop: true }]
    },
  ],
  [
    'cycles into the glass transition',
    'hole-life',
    'open',
    (d) => {
      d.brief.cycleMaxDegC = 200
      set(zoneOf(d, 'controller'), { throughExpansionPpmPerC: 55, throughModulusGpa: 8, glassTransitionDegC: 150 })
    },
  ],
]
