import { type Bend, callByName, type Design, type Zone } from '../design'
import { placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { findSize, type PartSize, sumThicknessUm } from './part-size'
import type { WrittenTwice } from './statement'

/** Small things against what they belong to: a hole's plating against its drill, a bend's axis against its film, an overlap or a relief against the width of the part. */
export function compareDetails(design: Design): WrittenTwice[] {
  return [
    ...compareBores(design),
    ...compareAxes(design),
    ...compareAxesWithZones(design),
    ...compareAxesWithConductors(design),
    ...compareCaptures(design),
    ...compareOpenings(design),
    ...compareStiffenedHoles(design),
    ...compareSlits(design),
  ]
}

/** Copper on the wall takes room on both sides of a drill. Less than this share left open is no plated hole: it is filled, or a figure is wrong. Our choice. */
const LEAST_OPEN_FRACTION = 0.5

function compareBores({ features }: Design): WrittenTwice[] {
  return features.holes.flatMap((hole, at): WrittenTwice[] => {
    const { drillMm, wallPlatingUm, plated, name } = hole
    if (plated !== true || drillMm === null || wallPlatingUm === null) return []
    return [
      {
        fact: `Plating of ${name}`,
        one: {
          where: 'its own field',
          says: `${asEntered(wallPlatingUm, 'um')} on the wall`,
          path: ['features', 'holes', at, 'wallPlatingUm'],
        },
        other: {
          where: 'its drill',
          says: `${asEntered(drillMm, 'mm')} across, copper on both sides of it`,
          path: ['features', 'holes', at, 'drillMm'],
        },
        agrees: drillMm - (2 * wallPlatingUm) / 1000 >= LEAST_OPEN_FRACTION * drillMm,
        readFrom: 'fields',
        places: [placeOf('hole', hole)],
      },
    ]
  })
}

/** Film is wider than it is thick, and a bend runs across what it bends. */
function compareAxes({ bends, construction }: Design): WrittenTwice[] {
  return bends.flatMap((bend, at): WrittenTwice[] => {
    const zone = construction.zones.find(({ id }) => id === bend.zoneId)
    if (zone === undefined) return []
    const thicknessUm = sumThicknessUm(construction, zone)
    return [
      {
        fact: `Width of ${bend.name}`,
        one: {
          where: 'the length of its axis',
          says: asEntered(bend.axisLengthMm, 'mm'),
          path: ['bends', at, 'axisLengthMm'],
        },
        other: {
          where: callByName('zone', zone.name),
          says: `${inSentence(thicknessUm, 'um')} of layers to bend`,
          path: ['construction', 'zones', construction.zones.indexOf(zone), 'presence'],
        },
        agrees: 1000 * bend.axisLengthMm >= thicknessUm,
        readFrom: 'fields',
        places: [placeOf('bend', bend), placeOf('zone', zone)],
      },
    ]
  })
}

/** Film that tapers, or that slits of unknown width part, may be this much narrower at a bend; below it a figure is wrong. Our choice. */
const LEAST_OF_WIDTH_FRACTION = 0.5
/** A zone is as wide at a bend as elsewhere, but for readings and rounded corners. Our choice. */
const USUAL_OF_WIDTH_FRACTION = 0.95
/** A bend runs across its zone from edge to edge, less what is cut out of it. Where its line is drawn, the plan is compared; that it is no longer than its zone is wide is held by `bend-fit`. */
function compareAxesWithZones({ bends, construction, features, plan }: Design): WrittenTwice[] {
  const cutMm = features.slits.reduce((sum, { widthMm }) => sum + (widthMm ?? 0), 0)
  return bends.flatMap((bend, at): WrittenTwice[] => {
    const zone = construction.zones.find(({ id }) => id === bend.zoneId)
    const isDrawn = plan?.bendLines.some(({ bendId }) => bendId === bend.id) ?? false
    if (zone === undefined || zone.widthMm === null || isDrawn) return []
    const leftMm = Math.max(0, zone.widthMm - cutMm)
    const isShort = bend.axisLengthMm < USUAL_OF_WIDTH_FRACTION * leftMm
    return [
      {
        fact: `Length of the axis of ${bend.name}`,
        one: axisOf(bend, at),
        other: widthOf(construction, zone, cutMm),
        agrees: !isShort,
        readFrom: isShort && bend.axisLengthMm >= LEAST_OF_WIDTH_FRACTION * leftMm ? 'sizes' : 'fields',
        places: [placeOf('bend', bend), placeOf('zone', zone)],
      },
    ]
  })
}

const axisOf = (bend: Bend, at: number): WrittenTwice['one'] => ({
  where: `the bend's fields`,
  says: asEntered(bend.axisLengthMm, 'mm'),
  path: ['bends', at, 'axisLengthMm'],
})

const widthOf = ({ zones }: Design['construction'], zone: Zone, cutMm: number): WrittenTwice['other'] => ({
  where: callByName('zone', zone.name),
  says: `${asEntered(zone.widthMm ?? 0, 'mm')} of width${cutMm === 0 ? '' : `, less ${inSentence(cutMm, 'mm')} that is cut out`}`,
  path: ['construction', 'zones', zones.indexOf(zone), 'widthMm'],
})

/** What crosses a bend lies beside its neighbours on the length of its axis. */
function compareAxesWithConductors({ bends, features }: Design): WrittenTwice[] {
  return bends.flatMap((bend, at): WrittenTwice[] => {
    const across = features.conductors.filter(({ crossings }) => crossings.some(({ bendId }) => bendId === bend.id))
    const layerIds = [...new Set(across.map(({ layerId }) => layerId))]
    return layerIds.flatMap((layerId): WrittenTwice[] => {
      const beside = across.filter((conductor) => conductor.layerId === layerId)
      const neededMm = beside.reduce((sum, { widthMm }) => sum + (widthMm ?? 0), 0)
      if (neededMm === 0) return []
      return [
        {
          fact: `Conductors across ${bend.name}`,
          one: {
            where: 'their own fields',
            says: `${beside.map(({ name }) => name).join(', ')} take at least ${inSentence(neededMm, 'mm')}`,
            path: ['features', 'conductors'],
          },
          other: { ...axisOf(bend, at), says: `an axis of ${asEntered(bend.axisLengthMm, 'mm')}` },
          agrees: neededMm <= bend.axisLengthMm,
          readFrom: 'fields',
          places: [placeOf('bend', bend), ...beside.map((conductor) => placeOf('conductor', conductor))],
        },
      ]
    })
  })
}

/** Coverlay covers the rim of a land by some tenths of a millimetre. Our choice: what is ten times as much was meant otherwise. */
const MOST_CAPTURE_MM = 3

/** The rim of a land is no wider than rims are, and less wide than the part. */
function compareCaptures(design: Design): WrittenTwice[] {
  const size = findSize(design)
  return design.features.pads.flatMap((pad, at): WrittenTwice[] => {
    const mm = pad.coverlayCaptureMm
    if (mm === null) return []
    const ofRims = {
      where: 'lands as they are made',
      says: `rims of less than ${inSentence(MOST_CAPTURE_MM, 'mm')}`,
      mostMm: MOST_CAPTURE_MM,
    }
    const { mostMm, ...other } = size === null || size.acrossMm >= MOST_CAPTURE_MM ? ofRims : acrossOf(size)
    return [
      {
        fact: `Overlap of the coverlay on the rim of ${pad.name}`,
        one: { where: 'its own field', says: asEntered(mm, 'mm'), path: ['features', 'pads', at, 'coverlayCaptureMm'] },
        other,
        agrees: mm < mostMm,
        readFrom: 'fields',
        places: [placeOf('pad', pad)],
      },
    ]
  })
}

/** Cover that reaches over a land from all sides covers its rim, and no more. */
function compareOpenings({ features }: Design): WrittenTwice[] {
  return features.coverlayOpenings.flatMap((opening, at): WrittenTwice[] => {
    const { openingMm, landMm, name } = opening
    if (openingMm === null || landMm === null) return []
    return [
      {
        fact: `Land in ${name}`,
        one: {
          where: 'its own field',
          says: asEntered(landMm, 'mm'),
          path: ['features', 'coverlayOpenings', at, 'landMm'],
        },
        other: {
          where: 'its opening',
          says: `${asEntered(openingMm, 'mm')}, and cover lies less than ${inSentence(MOST_CAPTURE_MM, 'mm')} over a rim`,
          path: ['features', 'coverlayOpenings', at, 'openingMm'],
        },
        agrees: landMm - openingMm < 2 * MOST_CAPTURE_MM,
        readFrom: 'fields',
        places: [placeOf('coverlay-opening', opening)],
      },
    ]
  })
}

/** Wider than this a stiffener is cut out for more than one hole. Our choice. */
const MOST_CLEARANCE_MM = 30

/** What goes through the hole goes through the stiffener, unless that closes it (0). */
function compareStiffenedHoles({ features }: Design): WrittenTwice[] {
  return features.holes.flatMap((hole, at): WrittenTwice[] => {
    const { drillMm, stiffenerHoleMm, name } = hole
    if (drillMm === null || stiffenerHoleMm === null) return []
    return [
      {
        fact: `Hole of the stiffener at ${name}`,
        one: {
          where: 'its own field',
          says: asEntered(stiffenerHoleMm, 'mm'),
          path: ['features', 'holes', at, 'stiffenerHoleMm'],
        },
        other: {
          where: 'its drill',
          says: `${asEntered(drillMm, 'mm')}, and what is cut around it is at most ${inSentence(MOST_CLEARANCE_MM, 'mm')} wider`,
          path: ['features', 'holes', at, 'drillMm'],
        },
        agrees: stiffenerHoleMm === 0 || (stiffenerHoleMm >= drillMm && stiffenerHoleMm <= drillMm + MOST_CLEARANCE_MM),
        readFrom: 'fields',
        places: [placeOf('hole', hole)],
      },
    ]
  })
}

/** A slit and what ends it are less wide than the part. */
function compareSlits(design: Design): WrittenTwice[] {
  const size = findSize(design)
  if (size === null) return []
  return design.features.slits.flatMap((slit, at) =>
    (
      [
        ['Relief', 'endReliefDiameterMm'],
        ['Width', 'widthMm'],
      ] as const
    ).flatMap(([what, field]): WrittenTwice[] => {
      const mm = slit[field]
      if (mm === null) return []
      return [
        {
          fact: `${what} of ${slit.name}`,
          one: { where: 'its own field', says: asEntered(mm, 'mm'), path: ['features', 'slits', at, field] },
          other: acrossOf(size),
          agrees: mm < size.acrossMm,
          readFrom: 'fields',
          places: [placeOf('slit', slit)],
        },
      ]
    }),
  )
}

const acrossOf = ({ acrossMm, where, path }: PartSize) => ({
  where,
  says: `${inSentence(acrossMm, 'mm')} across`,
  path,
  mostMm: acrossMm,
})
