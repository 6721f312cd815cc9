import { callByName, type Design } from '../design'
import { BRIEF_FIELDS, getChoiceWord } from '../design/fields'
import { BRIEF_PLACE, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { compareCopper } from './in-copper'
import { compareDetails } from './in-details'
import { compareDistances } from './in-distances'
import { compareRoom } from './in-room'
import type { WrittenTwice } from './statement'

/** Facts that two fields of the design state, each pair of which both are filled. */
export function compareFields(design: Design): WrittenTwice[] {
  return [
    ...compareEdges(design),
    ...compareCrossings(design),
    ...compareWidths(design),
    ...compareSpaces(design),
    ...compareRoom(design),
    ...compareDistances(design),
    ...compareDetails(design),
    ...compareCopper(design),
    ...compareMandrels(design),
    ...compareFinishes(design),
    ...compareSoldering(design),
    ...compareDates(design),
    ...comparePlating(design),
    ...compareOutline(design),
  ]
}

/** The edge nearest to a bend cannot be farther away than the edge of a stiffener. */
function compareEdges({ features, bends }: Design): WrittenTwice[] {
  return features.stiffeners.flatMap((stiffener, at): WrittenTwice[] => {
    const { nearestBend } = stiffener
    const bendAt = bends.findIndex(({ id }) => id === nearestBend?.bendId)
    const bend = bends[bendAt]
    const distanceMm = nearestBend?.distanceMm ?? null
    if (bend === undefined || distanceMm === null || bend.distanceToRigidMm === null) return []
    return [
      {
        fact: `Distance from ${bend.name} to the nearest stiffened edge`,
        one: {
          where: `the bend's fields`,
          says: asEntered(bend.distanceToRigidMm, 'mm'),
          path: ['bends', bendAt, 'distanceToRigidMm'],
        },
        other: {
          where: callByName('stiffener', stiffener.name),
          says: asEntered(distanceMm, 'mm'),
          path: ['features', 'stiffeners', at, 'nearestBend'],
        },
        agrees: bend.distanceToRigidMm <= distanceMm,
        readFrom: 'fields',
        places: [placeOf('bend', bend), placeOf('stiffener', stiffener)],
      },
    ]
  })
}

/** A conductor crosses a bend only where its layer goes through the bend's zone. */
function compareCrossings({ features, bends, construction }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at) =>
    conductor.crossings.flatMap((crossing, crossingAt): WrittenTwice[] => {
      const bend = bends.find(({ id }) => id === crossing.bendId)
      const zone = construction.zones.find(({ id }) => id === bend?.zoneId)
      const layer = construction.layers.find(({ id }) => id === conductor.layerId)
      if (bend === undefined || zone === undefined || layer === undefined) return []
      const presence = zone.presence.find(({ layerId }) => layerId === layer.id)
      const ofLayer = layer.kind === 'conductor' ? layer.coverageFraction : 0
      const hasCopper = presence !== undefined && (presence.coverageFraction ?? ofLayer) > 0
      return [
        {
          fact: `Layer of ${conductor.name} in ${bend.name}`,
          one: {
            where: 'its crossings',
            says: `${layer.name} crosses the bend`,
            path: ['features', 'conductors', at, 'crossings', crossingAt, 'bendId'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: hasCopper
              ? `${layer.name} goes through`
              : presence === undefined
                ? `no ${layer.name}`
                : `no copper on ${layer.name}`,
            path: ['construction', 'zones', construction.zones.indexOf(zone), 'presence'],
          },
          agrees: hasCopper,
          readFrom: 'fields',
          places: [placeOf('conductor', conductor), placeOf('bend', bend)],
        },
      ]
    }),
  )
}

/** A conductor, or a group of alike ones, is no wider than the zone that it crosses. */
function compareWidths({ features, bends, construction }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at) =>
    conductor.crossings.flatMap(({ bendId }): WrittenTwice[] => {
      const bend = bends.find(({ id }) => id === bendId)
      const zone = construction.zones.find(({ id }) => id === bend?.zoneId)
      if (bend === undefined || zone === undefined || zone.widthMm === null || conductor.widthMm === null) return []
      return [
        {
          fact: `Width of ${conductor.name} across ${bend.name}`,
          one: {
            where: 'its own field',
            says: asEntered(conductor.widthMm, 'mm'),
            path: ['features', 'conductors', at, 'widthMm'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: `${asEntered(zone.widthMm, 'mm')} in all`,
            path: ['construction', 'zones', construction.zones.indexOf(zone), 'widthMm'],
          },
          agrees: conductor.widthMm <= zone.widthMm,
          readFrom: 'fields',
          places: [placeOf('conductor', conductor), placeOf('bend', bend)],
        },
      ]
    }),
  )
}

/** Where the whole area is copper, no space is left between conductors. */
function compareSpaces({ features, bends, construction }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at) =>
    conductor.crossings.flatMap(({ bendId }): WrittenTwice[] => {
      const bend = bends.find(({ id }) => id === bendId)
      const zone = construction.zones.find(({ id }) => id === bend?.zoneId)
      const layer = construction.layers.find(({ id }) => id === conductor.layerId)
      const presence = zone?.presence.find(({ layerId }) => layerId === conductor.layerId)
      if (bend === undefined || zone === undefined || layer?.kind !== 'conductor' || presence === undefined) return []
      const isWhole = (presence.coverageFraction ?? layer.coverageFraction) === 1
      if (!isWhole || conductor.spaceMm === null) return []
      return [
        {
          fact: `Space beside ${conductor.name} in ${bend.name}`,
          one: {
            where: 'its own field',
            says: asEntered(conductor.spaceMm, 'mm'),
            path: ['features', 'conductors', at, 'spaceMm'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: `${layer.name} covers the whole area`,
            path: ['construction', 'zones', construction.zones.indexOf(zone), 'presence'],
          },
          agrees: conductor.spaceMm === 0,
          readFrom: 'fields',
          places: [placeOf('conductor', conductor), placeOf('zone', zone)],
        },
      ]
    }),
  )
}

/** A flex test bends the part as the design does, or it tests another bend. */
function compareMandrels({ bends }: Design): WrittenTwice[] {
  return bends.flatMap((bend, at): WrittenTwice[] => {
    const { mandrelDiameterMm } = bend.flexTest
    if (mandrelDiameterMm === null || bend.use !== 'dynamic') return []
    return [
      {
        fact: `Radius that ${bend.name} is flexed at`,
        one: {
          where: 'its inside radius',
          says: `${asEntered(bend.insideRadiusMm, 'mm')} within ${asEntered(bend.radiusToleranceMm, 'mm')}`,
          path: ['bends', at, 'insideRadiusMm'],
        },
        other: {
          where: 'the mandrel of its flex test',
          says: `${asEntered(mandrelDiameterMm, 'mm')} across`,
          path: ['bends', at, 'flexTest', 'mandrelDiameterMm'],
        },
        // A gentler test proves nothing about the bend; a tighter one is severer, and somebody's choice.
        agrees: mandrelDiameterMm / 2 <= bend.insideRadiusMm + bend.radiusToleranceMm,
        readFrom: 'fields',
        places: [placeOf('bend', bend)],
      },
    ]
  })
}

function compareFinishes({ brief, construction }: Design): WrittenTwice[] {
  const { surfaceFinish } = brief
  if (surfaceFinish === null) return []
  return construction.zones.flatMap((zone, at): WrittenTwice[] => {
    const thicknessUm = zone.contactFinish?.thicknessUm ?? null
    if (zone.kind !== 'finger' || thicknessUm === null) return []
    return [
      {
        fact: `Finish on the contacts of ${zone.name}`,
        one: {
          where: 'the brief',
          says: getChoiceWord(BRIEF_FIELDS.surfaceFinish, surfaceFinish),
          path: ['brief', 'surfaceFinish'],
        },
        other: {
          where: 'the zone',
          says: asEntered(thicknessUm, 'um'),
          path: ['construction', 'zones', at, 'contactFinish'],
        },
        agrees: surfaceFinish !== 'none' || thicknessUm === 0,
        readFrom: 'fields',
        places: [BRIEF_PLACE, placeOf('zone', zone)],
      },
    ]
  })
}

function compareSoldering({ brief, features }: Design): WrittenTwice[] {
  if (brief.solderedAssembly === null) return []
  const [component] = features.components
  if (component === undefined) return []
  return [
    {
      fact: 'Whether parts are soldered on',
      one: {
        where: 'the brief',
        says: brief.solderedAssembly ? 'soldered' : 'nothing is soldered',
        path: ['brief', 'solderedAssembly'],
      },
      other: {
        where: 'the list of components',
        says: features.components.length === 1 ? component.name : `${features.components.length} entries`,
        path: ['features', 'components'],
      },
      agrees: brief.solderedAssembly,
      readFrom: 'fields',
      places: [BRIEF_PLACE, placeOf('component', component)],
    },
  ]
}

function compareDates({ brief }: Design): WrittenTwice[] {
  const { layoutFreezeDate, needDate } = brief
  if (layoutFreezeDate === null || needDate === null) return []
  return [
    {
      fact: 'Order of the dates',
      one: { where: 'the layout freeze', says: layoutFreezeDate, path: ['brief', 'layoutFreezeDate'] },
      other: { where: 'the date of need', says: needDate, path: ['brief', 'needDate'] },
      agrees: layoutFreezeDate < needDate,
      readFrom: 'fields',
      places: [BRIEF_PLACE],
    },
  ]
}

/** A plated wall gets its copper from a bath, which plates the layers that it joins, or their pads. */
function comparePlating({ features, construction }: Design): WrittenTwice[] {
  const conductors = construction.layers.filter((layer) => layer.kind === 'conductor')
  const plated = conductors.filter(({ plating }) => plating.process !== 'none')
  return features.holes.flatMap((hole, at): WrittenTwice[] => {
    if (hole.plated !== true || conductors.length === 0) return []
    return [
      {
        fact: `Plating of ${hole.name}`,
        one: { where: 'the hole', says: 'plated', path: ['features', 'holes', at, 'plated'] },
        other: {
          where: 'the layers',
          says: plated.length === 0 ? 'none is plated' : `${plated.map(({ name }) => name).join(', ')} plated`,
          path: ['construction', 'layers'],
        },
        agrees: plated.length > 0,
        readFrom: 'fields',
        places: [placeOf('hole', hole)],
      },
    ]
  })
}

/** In the flat no zone is longer than the outline is from corner to corner. */
function compareOutline({ features, construction }: Design): WrittenTwice[] {
  const corners = features.outline?.verticesMm ?? []
  if (corners.length < 3) return []
  const xs = corners.map(([x]) => x)
  const ys = corners.map(([, y]) => y)
  const diagonalMm = Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
  return construction.zones.flatMap((zone, at): WrittenTwice[] => {
    const lengthMm = Math.max(zone.lengthMm ?? 0, zone.widthMm ?? 0)
    if (lengthMm === 0) return []
    return [
      {
        fact: `Size of ${zone.name}`,
        one: { where: 'the zone', says: asEntered(lengthMm, 'mm'), path: ['construction', 'zones', at, 'lengthMm'] },
        other: {
          where: 'the outline',
          says: `${inSentence(diagonalMm, 'mm')} from corner to corner`,
          path: ['features', 'outline'],
        },
        agrees: lengthMm <= diagonalMm * (1 + 1e-9),
        readFrom: 'fields',
        places: [placeOf('zone', zone)],
      },
    ]
  })
}
