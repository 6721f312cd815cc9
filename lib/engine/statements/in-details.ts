import { callByName, type Design } from '../design'
import { type Place, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { findSize, sumThicknessUm } from './part-size'
import type { WrittenTwice } from './statement'

/** Small things against what they belong to: a hole's plating against its drill, a bend's axis against its film, an overlap or a relief against the width of the part. */
export function compareDetails(design: Design): WrittenTwice[] {
  return [...compareBores(design), ...compareAxes(design), ...compareWidths(design)]
}

/** Copper on the wall takes room on both sides of a drill. Less than this share left open is no plated hole: it is filled, or a figure is wrong. Our choice. */
const LEAST_OPEN_FRACTION = 0.3

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

/** Coverlay covers the rim of a land by some tenths of a millimetre. Our choice: what is ten times as much was meant otherwise. */
const MOST_CAPTURE_MM = 3

/** What lies across an edge or around a land is less wide than the part, and the rim of a land is no wider than rims are. */
function compareWidths(design: Design): WrittenTwice[] {
  const size = findSize(design)
  if (size === null) return []
  const { pads, slits } = design.features
  const compare = (
    what: string,
    mm: number | null,
    path: readonly (string | number)[],
    place: Place,
    mostMm = size.acrossMm,
  ): WrittenTwice[] =>
    mm === null
      ? []
      : [
          {
            fact: `${what} of ${place.name}`,
            one: { where: 'its own field', says: asEntered(mm, 'mm'), path },
            other:
              mostMm < size.acrossMm
                ? {
                    where: 'lands as they are made',
                    says: `rims of at most ${inSentence(mostMm, 'mm')}`,
                    path: size.path,
                  }
                : { where: size.where, says: `${inSentence(size.acrossMm, 'mm')} across`, path: size.path },
            agrees: mm < Math.min(mostMm, size.acrossMm),
            readFrom: 'fields',
            places: [place],
          },
        ]
  return [
    ...pads.flatMap((pad, at) =>
      compare(
        'Overlap of the coverlay on the rim',
        pad.coverlayCaptureMm,
        ['features', 'pads', at, 'coverlayCaptureMm'],
        placeOf('pad', pad),
        MOST_CAPTURE_MM,
      ),
    ),
    ...slits.flatMap((slit, at) =>
      compare(
        'Relief',
        slit.endReliefDiameterMm,
        ['features', 'slits', at, 'endReliefDiameterMm'],
        placeOf('slit', slit),
      ),
    ),
  ]
}
