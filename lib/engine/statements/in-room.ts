import { type Bend, type ConductorFeature, callByName, type Design, type Zone } from '../design'
import { placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import type { WrittenTwice } from './statement'

/** What is said to lie in a zone, against the length and width of that zone. Each figure is the least that the fields can mean. */
export function compareRoom(design: Design): WrittenTwice[] {
  return [...compareSums(design), ...compareLengths(design), ...compareCrossings(design), ...compareEnds(design)]
}

const pathOfZone = ({ construction }: Design, zone: Zone, field: keyof Zone) => [
  'construction',
  'zones',
  construction.zones.indexOf(zone),
  field,
]

/** Conductors of one layer across one bend lie side by side: each once, with the least of their spaces between them. */
function compareSums(design: Design): WrittenTwice[] {
  const { bends, construction, features } = design
  return bends.flatMap((bend) => {
    const zone = construction.zones.find(({ id }) => id === bend.zoneId)
    if (zone?.widthMm == null) return []
    const across = features.conductors.filter(({ crossings }) => crossings.some(({ bendId }) => bendId === bend.id))
    return construction.layers.flatMap((layer): WrittenTwice[] => {
      const beside = across.filter(({ layerId }) => layerId === layer.id)
      if (beside.length < 2 || zone.widthMm === null) return []
      const neededMm = sumWidthsMm(beside) + 2 * (features.copperToOutlineMm ?? 0)
      return [
        {
          fact: `Conductors of ${layer.name} across ${bend.name}`,
          one: {
            where: 'their own fields',
            says: `${beside.map(({ name }) => name).join(', ')} take at least ${inSentence(neededMm, 'mm')}${features.copperToOutlineMm === null ? '' : ' from edge to edge'}`,
            path: ['features', 'conductors'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: `${asEntered(zone.widthMm, 'mm')} in all`,
            path: pathOfZone(design, zone, 'widthMm'),
          },
          agrees: neededMm <= zone.widthMm,
          readFrom: 'fields',
          places: [placeOf('bend', bend), ...beside.map((conductor) => placeOf('conductor', conductor))],
        },
      ]
    })
  })
}

function sumWidthsMm(conductors: readonly ConductorFeature[]): number {
  const spacesMm = conductors.map(({ spaceMm }) => spaceMm ?? 0)
  const widthsMm = conductors.reduce((sum, { widthMm }) => sum + (widthMm ?? 0), 0)
  return widthsMm + (conductors.length - 1) * Math.min(...spacesMm)
}

/** Arc of the inside face: the neutral axis is no shorter. */
const arcMm = ({ insideRadiusMm, radiusToleranceMm, angleDeg }: Bend): number =>
  ((insideRadiusMm - Math.min(radiusToleranceMm, insideRadiusMm)) * angleDeg * Math.PI) / 180

/** A bend that lies so far from the nearest edge leaves that much of its zone straight. */
function compareLengths(design: Design): WrittenTwice[] {
  const { bends, construction } = design
  return construction.zones.flatMap((zone): WrittenTwice[] => {
    const inZone = bends.filter(({ zoneId }) => zoneId === zone.id)
    const known = inZone.filter(({ distanceToRigidMm }) => distanceToRigidMm !== null)
    if (zone.lengthMm === null || known.length === 0 || known.length < inZone.length) return []
    const nearestMm = Math.min(...known.map(({ distanceToRigidMm }) => distanceToRigidMm ?? 0))
    const neededMm = inZone.reduce((sum, bend) => sum + arcMm(bend), 0) + nearestMm
    return [
      {
        fact: `Length of ${zone.name}`,
        one: {
          where: `the fields of ${inZone.map(({ name }) => name).join(', ')}`,
          says: `arcs and the distance to the nearest edge take at least ${inSentence(neededMm, 'mm')}`,
          path: ['bends', bends.indexOf(inZone[0] as Bend), 'distanceToRigidMm'],
        },
        other: {
          where: 'its own field',
          says: asEntered(zone.lengthMm, 'mm'),
          path: pathOfZone(design, zone, 'lengthMm'),
        },
        agrees: neededMm <= zone.lengthMm,
        readFrom: 'fields',
        places: [placeOf('zone', zone), ...inZone.map((bend) => placeOf('bend', bend))],
      },
    ]
  })
}

/** A conductor is no shorter than the bends that it runs through: a short one has neither drop nor resistance. */
function compareCrossings({ bends, features }: Design): WrittenTwice[] {
  return features.conductors.flatMap((conductor, at): WrittenTwice[] => {
    const { lengthMm, crossings, name } = conductor
    const crossed = bends.filter(({ id }) => crossings.some(({ bendId }) => bendId === id))
    if (lengthMm === null || crossed.length === 0) return []
    const neededMm = crossed.reduce((sum, bend) => sum + arcMm(bend), 0)
    return [
      {
        fact: `Length of ${name}`,
        one: {
          where: 'its own field',
          says: asEntered(lengthMm, 'mm'),
          path: ['features', 'conductors', at, 'lengthMm'],
        },
        other: {
          where: `the fields of ${crossed.map((bend) => bend.name).join(', ')}`,
          says: `arcs of at least ${inSentence(neededMm, 'mm')} that it crosses`,
          path: ['features', 'conductors', at, 'crossings'],
        },
        agrees: lengthMm >= neededMm - READING_MM,
        readFrom: 'fields',
        places: [placeOf('conductor', conductor), ...crossed.map((bend) => placeOf('bend', bend))],
      },
    ]
  })
}

/** Two readings of one drawing differ by as much. Our choice. */
const READING_MM = 0.05

/** A contact end is as wide as its zone, and its contacts are no longer than that. */
function compareEnds(design: Design): WrittenTwice[] {
  const { construction, features } = design
  return features.connectors.flatMap((connector, at): WrittenTwice[] => {
    const zone = construction.zones.find(({ id }) => id === connector.zoneId)
    // A zone of several ends has the measures of all of them together.
    const isAlone = features.connectors.filter(({ zoneId }) => zoneId === connector.zoneId).length === 1
    if (zone === undefined || zone.kind !== 'finger' || !isAlone) return []
    const compare = (
      field: 'endWidth' | 'exposedLength',
      side: 'widthMm' | 'lengthMm',
      fact: string,
      agree: (endMm: number, zoneMm: number) => boolean,
    ): WrittenTwice[] => {
      const endMm = connector[field].partMm
      const zoneMm = zone[side]
      if (endMm === null || zoneMm === null) return []
      return [
        {
          fact: `${fact} of ${connector.name}`,
          one: {
            where: 'its own fields',
            says: asEntered(endMm, 'mm'),
            path: ['features', 'connectors', at, field, 'partMm'],
          },
          other: {
            where: callByName('zone', zone.name),
            says: asEntered(zoneMm, 'mm'),
            path: pathOfZone(design, zone, side),
          },
          agrees: agree(endMm, zoneMm),
          readFrom: 'fields',
          places: [placeOf('connector', connector), placeOf('zone', zone)],
        },
      ]
    }
    return [
      ...compare('endWidth', 'widthMm', 'Width', (endMm, zoneMm) => Math.abs(endMm - zoneMm) <= READING_MM),
      ...compare('exposedLength', 'lengthMm', 'Exposed length', (endMm, zoneMm) => endMm <= zoneMm + READING_MM),
    ]
  })
}
