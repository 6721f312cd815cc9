import { type Bend, callByName, type Design, type Zone } from '../design'
import { DESIGN_PLACE, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { AREAS_PER_ZONE, findSize } from './part-size'
import type { WrittenTwice } from './statement'

/** Copper against the room that it has: on the axis of a bend, on its layer, around its hole, within the outline. */
export function compareCopper(design: Design): WrittenTwice[] {
  return [
    ...compareSpacesOnAxes(design),
    ...compareShares(design),
    ...compareAreas(design),
    ...compareRings(design),
    ...compareMargins(design),
  ]
}

/** A conductor with the space to its neighbour is narrower than the bend that both cross. */
function compareSpacesOnAxes({ bends, features }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at) =>
    conductor.crossings.flatMap(({ bendId }): WrittenTwice[] => {
      const bendAt = bends.findIndex(({ id }) => id === bendId)
      const bend = bends[bendAt]
      if (bend === undefined || conductor.spaceMm === null) return []
      const neededMm = conductor.spaceMm + (conductor.widthMm ?? 0)
      return [
        {
          fact: `Space beside ${conductor.name} across ${bend.name}`,
          one: {
            where: 'its own fields',
            says: `${inSentence(neededMm, 'mm')} with the space to its neighbour`,
            path: ['features', 'conductors', at, 'spaceMm'],
          },
          other: {
            where: `the bend's fields`,
            says: `an axis of ${asEntered(bend.axisLengthMm, 'mm')}`,
            path: ['bends', bendAt, 'axisLengthMm'],
          },
          agrees: neededMm <= bend.axisLengthMm,
          readFrom: 'fields',
          places: [placeOf('conductor', conductor), placeOf('bend', bend)],
        },
      ]
    }),
  )
}

/** Shares are typed by the eye: half as much again, and a hundredth, is a reading. Our choice. */
const mostByEye = (shareFraction: number): number => 1.5 * shareFraction + 0.01

/** The listed conductors of a layer that cross a bend are part of its copper there. A hatch has its share from bar and pitch. */
function compareShares({ bends, features, construction }: Design): WrittenTwice[] {
  return bends.flatMap((bend) => {
    const zone = construction.zones.find(({ id }) => id === bend.zoneId)
    if (zone === undefined) return []
    return zone.presence.flatMap((presence): WrittenTwice[] => {
      const layer = construction.layers.find(({ id }) => id === presence.layerId)
      if (layer?.kind !== 'conductor' || presence.hatch !== null) return []
      const widthMm = sumWidthsMm(features.conductors, layer.id, bend)
      const shareFraction = presence.coverageFraction ?? layer.coverageFraction
      if (widthMm === 0) return []
      return [
        {
          fact: `Copper of ${layer.name} in ${bend.name}`,
          one: {
            where: 'the conductors that cross it',
            says: `at least ${inSentence(100 * (widthMm / bend.axisLengthMm), 'pct')}`,
            path: ['features', 'conductors'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: inSentence(100 * shareFraction, 'pct'),
            path: ['construction', 'zones', construction.zones.indexOf(zone), 'presence'],
          },
          agrees: widthMm <= mostByEye(shareFraction) * bend.axisLengthMm,
          readFrom: 'fields',
          places: [placeOf('bend', bend), placeOf('layer', layer)],
        },
      ]
    })
  })
}

const sumWidthsMm = (conductors: Design['features']['conductors'], layerId: string, bend: Bend): number =>
  conductors.reduce(
    (sum, each) =>
      each.layerId === layerId && each.crossings.some(({ bendId }) => bendId === bend.id)
        ? sum + (each.widthMm ?? 0)
        : sum,
    0,
  )

/** A conductor with half of its spaces on both sides fits into the part, grown by as much: exact, however it winds. */
function compareAreas({ features, construction }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at): WrittenTwice[] => {
    const { lengthMm, widthMm, layerId } = conductor
    if (lengthMm === null || widthMm === null) return []
    const spaceMm = conductor.spaceMm ?? 0
    const room = findRoom(features, construction, layerId, spaceMm)
    if (room === null) return []
    const neededMm2 = lengthMm * (widthMm + spaceMm)
    return [
      {
        fact: `Area of ${conductor.name}`,
        one: {
          where: 'its own fields',
          says: `${inSentence(neededMm2)} mm² with its spaces`,
          path: ['features', 'conductors', at, 'lengthMm'],
        },
        other: { where: room.where, says: `${inSentence(room.mm2)} mm² in all`, path: room.path },
        agrees: neededMm2 <= room.mm2,
        readFrom: neededMm2 <= room.mostMm2 ? 'sizes' : 'fields',
        places: [placeOf('conductor', conductor)],
      },
    ]
  })
}

interface Room {
  readonly mm2: number
  readonly mostMm2: number
  readonly where: string
  readonly path: readonly (string | number)[]
}

function findRoom(
  { outline }: Design['features'],
  { zones }: Design['construction'],
  layerId: string,
  spaceMm: number,
): Room | null {
  const grow = (areaMm2: number, roundMm: number) =>
    areaMm2 + (roundMm * spaceMm) / 2 + (Math.PI * spaceMm * spaceMm) / 4
  const corners = outline?.verticesMm ?? []
  if (corners.length >= 3) {
    let twiceMm2 = 0
    let roundMm = 0
    corners.forEach(([x, y], at) => {
      const [nextX, nextY] = corners[(at + 1) % corners.length] ?? [x, y]
      twiceMm2 += x * nextY - nextX * y
      roundMm += Math.hypot(nextX - x, nextY - y)
    })
    const mm2 = grow(Math.abs(twiceMm2) / 2, roundMm)
    return { mm2, mostMm2: mm2, where: 'the outline', path: ['features', 'outline'] }
  }
  const own = zones.filter(({ presence }) => presence.some((each) => each.layerId === layerId))
  if (own.length === 0 || own.some(({ lengthMm, widthMm }) => lengthMm === null || widthMm === null)) return null
  const sum = (read: (lengthMm: number, widthMm: number) => number) =>
    own.reduce((total, { lengthMm, widthMm }: Zone) => total + read(lengthMm ?? 0, widthMm ?? 0), 0)
  const mm2 = grow(
    sum((length, width) => length * width),
    sum((length, width) => 2 * (length + width)),
  )
  return { mm2, mostMm2: AREAS_PER_ZONE * mm2, where: 'the zones of its layer', path: ['construction', 'zones'] }
}

/** Rings of lands are some tenths of a millimetre wide, of fixing holes a few millimetres. Our choice: what is wider was meant otherwise. */
const MOST_RING_MM = 5

function compareRings({ features }: Design): WrittenTwice[] {
  return features.holes.flatMap((hole, at): WrittenTwice[] => {
    const { drillMm, landMm, name } = hole
    if (drillMm === null || landMm === null) return []
    return [
      {
        fact: `Land of ${name}`,
        one: { where: 'its own field', says: asEntered(landMm, 'mm'), path: ['features', 'holes', at, 'landMm'] },
        other: {
          where: 'its drill',
          says: `${asEntered(drillMm, 'mm')}, and rings are at most ${inSentence(MOST_RING_MM, 'mm')} wide`,
          path: ['features', 'holes', at, 'drillMm'],
        },
        agrees: landMm - drillMm <= 2 * MOST_RING_MM,
        readFrom: 'fields',
        places: [placeOf('hole', hole)],
      },
    ]
  })
}

/** Copper that stays clear of both edges leaves room for copper. */
function compareMargins(design: Design): WrittenTwice[] {
  const size = findSize(design)
  const mm = design.features.copperToOutlineMm
  if (size === null || mm === null) return []
  return [
    {
      fact: 'Room for copper between the edges',
      one: {
        where: 'the features',
        says: `copper ${asEntered(mm, 'mm')} clear of each edge`,
        path: ['features', 'copperToOutlineMm'],
      },
      other: { where: size.where, says: `${inSentence(size.acrossMm, 'mm')} across`, path: size.path },
      agrees: 2 * mm < size.acrossMm,
      readFrom: 'fields',
      places: [DESIGN_PLACE],
    },
  ]
}
