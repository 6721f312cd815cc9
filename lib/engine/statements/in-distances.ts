import { type Bend, callByName, type Design } from '../design'
import { BRIEF_PLACE, DESIGN_PLACE, type Place, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { findSize, sumThicknessUm } from './part-size'
import type { WrittenTwice } from './statement'

/** Distances and angles against the size of the part: a figure that no part of that size can have was typed in another unit, or for another part. */
export function compareDistances(design: Design): WrittenTwice[] {
  return [...compareReaches(design), ...compareArcs(design)]
}

interface Reach {
  readonly what: string
  readonly mm: number | null
  readonly where: string
  readonly path: readonly (string | number)[]
  readonly place: Place
}

function compareReaches(design: Design): WrittenTwice[] {
  const size = findSize(design)
  if (size === null) return []
  return listReaches(design).flatMap(({ what, mm, where, path, place }): WrittenTwice[] =>
    mm === null
      ? []
      : [
          {
            fact: what,
            one: { where, says: asEntered(mm, 'mm'), path },
            other: { where: size.where, says: size.saysReach, path: size.path },
            agrees: mm <= size.reachMm,
            readFrom: mm <= size.mostReachMm ? 'sizes' : 'fields',
            places: [place],
          },
        ],
  )
}

function listReaches({ bends, features, brief }: Design): Reach[] {
  const sizeOf = <L extends 'stiffeners' | 'coverlayOpenings' | 'outlineCorners' | 'widthSteps' | 'connectors'>(
    list: L,
    field: keyof Design['features'][L][number] & string,
    kind: Place['kind'],
    what: string,
  ) =>
    features[list].map((feature, at): Reach => {
      const mm = (feature as Readonly<Record<string, unknown>>)[field]
      return {
        what: `${what} of ${feature.name}`,
        mm: typeof mm === 'number' ? mm : null,
        where: 'its own field',
        path: ['features', list, at, field],
        place: placeOf(kind, feature),
      }
    })
  const markingOf = (field: 'letterHeightMm' | 'lineWidthMm' | 'toPadMm', what: string): Reach => ({
    what,
    mm: brief.marking[field],
    where: 'the brief',
    path: ['brief', 'marking', field],
    place: BRIEF_PLACE,
  })
  const toBend = (
    list: 'holes' | 'pads' | 'widthSteps' | 'coverlayOpenings' | 'stiffeners' | 'components',
    kind: Place['kind'],
  ) =>
    features[list].map((feature, at): Reach => {
      const bend = bends.find(({ id }) => id === feature.nearestBend?.bendId)
      return {
        what: `Distance of ${feature.name} from ${bend?.name ?? 'the nearest bend'}`,
        mm: feature.nearestBend?.distanceMm ?? null,
        where: 'its own field',
        path: ['features', list, at, 'nearestBend'],
        place: placeOf(kind, feature),
      }
    })
  const toTransition = (list: 'holes' | 'components', kind: Place['kind']) =>
    features[list].map(
      (feature, at): Reach => ({
        what: `Distance of ${feature.name} from the transition`,
        mm: feature.transitionDistanceMm,
        where: 'its own field',
        path: ['features', list, at, 'transitionDistanceMm'],
        place: placeOf(kind, feature),
      }),
    )
  return [
    ...bends.map(
      (bend, at): Reach => ({
        what: `Distance of ${bend.name} from the nearest rigid or stiffened edge`,
        mm: bend.distanceToRigidMm,
        where: `the bend's fields`,
        path: ['bends', at, 'distanceToRigidMm'],
        place: placeOf('bend', bend),
      }),
    ),
    ...toTransition('holes', 'hole'),
    ...toTransition('components', 'component'),
    ...features.holes.map(
      (hole, at): Reach => ({
        what: `Distance of ${hole.name} from the nearest edge of a stiffener`,
        mm: hole.stiffenerEdgeDistanceMm,
        where: 'its own field',
        path: ['features', 'holes', at, 'stiffenerEdgeDistanceMm'],
        place: placeOf('hole', hole),
      }),
    ),
    // Sizes as well: a radius, an overlap or a strip between openings is met the more easily, the larger it is typed.
    ...sizeOf('outlineCorners', 'insideRadiusMm', 'corner', 'Inside radius'),
    ...sizeOf('stiffeners', 'coverlayOverlapMm', 'stiffener', 'Overlap with the coverlay'),
    ...sizeOf('coverlayOpenings', 'openingMm', 'coverlay-opening', 'Size'),
    ...sizeOf('coverlayOpenings', 'webMm', 'coverlay-opening', 'Strip to the next opening'),
    ...sizeOf('coverlayOpenings', 'landMm', 'coverlay-opening', 'Land'),
    ...sizeOf('widthSteps', 'wideMm', 'width-step', 'Wide end'),
    ...sizeOf('widthSteps', 'taperLengthMm', 'width-step', 'Taper'),
    ...sizeOf('connectors', 'firstBendMm', 'connector', 'Way to the first bend'),
    {
      what: 'Distance of copper from the outline',
      mm: features.copperToOutlineMm,
      where: 'the features',
      path: ['features', 'copperToOutlineMm'],
      place: DESIGN_PLACE,
    },
    markingOf('letterHeightMm', 'Height of the letters'),
    markingOf('lineWidthMm', 'Line width of the letters'),
    markingOf('toPadMm', 'Distance of the marking from lands'),
    ...toBend('holes', 'hole'),
    ...toBend('pads', 'pad'),
    ...toBend('widthSteps', 'width-step'),
    ...toBend('coverlayOpenings', 'coverlay-opening'),
    ...toBend('stiffeners', 'stiffener'),
    ...toBend('components', 'component'),
  ]
}

/** Below this an angle is doubted. Our choice: less than forming and springback leave of any bend. */
const DOUBTED_BELOW_DEG = 1

/** A small angle is a bend where its arc is longer than the film is thick, as on a large drum; shorter, nothing is bent. */
function compareArcs({ bends, construction }: Design): WrittenTwice[] {
  return bends.flatMap((bend, at): WrittenTwice[] => {
    const zone = construction.zones.find(({ id }) => id === bend.zoneId)
    if (zone === undefined || bend.angleDeg >= DOUBTED_BELOW_DEG) return []
    const thicknessUm = sumThicknessUm(construction, zone)
    const arcUm = findArcUm(bend)
    return [
      {
        fact: `Arc of ${bend.name}`,
        one: {
          where: 'its radius and angle',
          says: `${inSentence(arcUm, 'um')} at ${asEntered(bend.angleDeg, 'deg')}`,
          path: ['bends', at, 'angleDeg'],
        },
        other: {
          where: callByName('zone', zone.name),
          says: `${inSentence(thicknessUm, 'um')} of layers to bend`,
          path: ['construction', 'zones', construction.zones.indexOf(zone), 'presence'],
        },
        agrees: arcUm >= thicknessUm,
        readFrom: 'fields',
        places: [placeOf('bend', bend), placeOf('zone', zone)],
      },
    ]
  })
}

/** Of the inside face, as its two fields give it. */
const findArcUm = ({ insideRadiusMm, angleDeg }: Bend): number => (1000 * insideRadiusMm * angleDeg * Math.PI) / 180
