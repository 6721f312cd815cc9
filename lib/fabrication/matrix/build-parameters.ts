import { type Design, FEATURE_FIELDS, type Zone } from '@/lib/engine'
import {
  choiceParameter,
  type LocatedValue,
  listStated,
  type Measurement,
  makeChoices,
  numberParameter,
  round,
  type TradeParameter,
} from './parameter'

const WHOLE = { kind: 'design', id: 'design', name: 'Whole part' } as const
const ofZone = ({ id, name }: Pick<Zone, 'id' | 'name'>, value: number): LocatedValue => ({
  value: round(value),
  place: { kind: 'zone', id, name },
  foilUm: null,
})
const ofWhole = (value: number | null, unknown: string): Measurement =>
  value === null
    ? { kind: 'unknown', reason: unknown }
    : { kind: 'values', values: [{ value: round(value), place: WHOLE, foilUm: null }] }

type Hatch = NonNullable<Zone['presence'][number]['hatch']>

const hatchParameter = (
  key: string,
  name: string,
  question: string,
  measuredAs: string,
  read: (hatch: Hatch) => number,
): TradeParameter =>
  numberParameter({
    key,
    group: 'Copper and conductors',
    name,
    question,
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen',
    measuredAs,
    measure: ({ design }) => {
      const { layers, zones } = design.construction
      const hatched = new Set(
        layers.flatMap((layer) => (layer.kind === 'conductor' && layer.planePattern === 'hatched' ? [layer.id] : [])),
      )
      const planes = zones.flatMap((zone) =>
        zone.presence.flatMap(({ layerId, hatch }) => (hatched.has(layerId) ? [{ zone, hatch }] : [])),
      )
      return listStated(
        'smaller-is-harder',
        planes,
        ({ zone, hatch }) => (hatch === null ? null : ofZone(zone, read(hatch))),
        'the design has no hatched plane',
        'no hatched plane states its bars',
      )
    },
  })

export const HATCH_PARAMETERS: readonly TradeParameter[] = [
  hatchParameter(
    'hatch-bar',
    'Hatch bar width, minimum',
    'How narrow may the bars of a hatched plane be?',
    'bar of each hatched plane, by zone',
    ({ barMm }) => barMm,
  ),
  hatchParameter(
    'hatch-opening',
    'Hatch opening, minimum',
    'How small may the openings of a hatched plane be?',
    'pitch less bar of each hatched plane, by zone',
    ({ barMm, pitchMm }) => pitchMm - barMm,
  ),
]

type Hole = Design['features']['holes'][number]
const ofHole = ({ id, name }: Hole, value: number | string): LocatedValue => ({
  value,
  place: { kind: 'hole', id, name },
  foilUm: null,
})

/** From face to face, from a face to the inside, or inside alone; null where the hole does not say. */
function findHoleKind(design: Design, { fromLayerId, toLayerId, zoneId }: Hole): string | null {
  if (fromLayerId === null || toLayerId === null) return null
  const zone = design.construction.zones.find(({ id }) => id === zoneId)
  // Which layers are outer depends on the zone: the flex layers of a rigid-flex are outer in a flex zone alone.
  if (zone === undefined) return null
  const present = new Set(zone.presence.map(({ layerId }) => layerId))
  const copper = design.construction.layers.filter(({ id, kind }) => kind === 'conductor' && present.has(id))
  const outer = [copper[0]?.id, copper.at(-1)?.id]
  const outerCount = [fromLayerId, toLayerId].filter((id) => outer.includes(id)).length
  return outerCount === 2 ? 'through' : outerCount === 1 ? 'blind' : 'buried'
}

export const HOLE_BUILD_PARAMETERS: readonly TradeParameter[] = [
  choiceParameter({
    key: 'hole-kind',
    group: 'Holes',
    name: 'Through, blind and buried holes',
    question: 'Which kinds of plated hole are made?',
    choices: makeChoices({ through: 'through', blind: 'blind', buried: 'buried' }),
    measuredAs: 'layers that each plated hole joins, against the outer layers of its zone',
    measure: ({ design }) =>
      listStated(
        'one-of',
        design.features.holes.filter(({ plated }) => plated === true),
        (hole) => {
          const kind = findHoleKind(design, hole)
          return kind === null ? null : ofHole(hole, kind)
        },
        'the design lists no plated hole',
        'no plated hole states its layers and zone',
      ),
  }),
  choiceParameter({
    key: 'hole-filling',
    group: 'Holes',
    name: 'Hole filling',
    question: 'Which fillings of plated holes are offered?',
    choices: makeChoices(FEATURE_FIELDS.holes.entry.filling.choices),
    measuredAs: 'filling of each plated hole',
    measure: ({ design }) =>
      listStated(
        'one-of',
        design.features.holes.filter(({ plated }) => plated === true),
        (hole) => (hole.filling === null ? null : ofHole(hole, hole.filling)),
        'the design lists no plated hole',
        'no plated hole states its filling',
      ),
  }),
  numberParameter({
    key: 'hole-wall-plating',
    group: 'Holes',
    name: 'Copper in the hole, maximum',
    question: 'How thick may copper be plated on the wall of a hole?',
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'ask for less copper in the hole',
    measuredAs: 'copper on the wall of each plated hole',
    measure: ({ design }) =>
      listStated(
        'larger-is-harder',
        design.features.holes.filter(({ plated }) => plated === true),
        (hole) => (hole.wallPlatingUm === null ? null : ofHole(hole, hole.wallPlatingUm)),
        'the design lists no plated hole',
        'no plated hole states the copper on its wall',
      ),
  }),
  numberParameter({
    key: 'hole-to-stiffener-edge',
    group: 'Holes',
    name: 'Hole to stiffener edge, minimum',
    question: 'How close may a hole lie to the edge of a stiffener?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move away from the stiffener’s edge',
    measuredAs: 'distance of each hole to the edge of a stiffener',
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.holes,
        (hole) => (hole.stiffenerEdgeDistanceMm === null ? null : ofHole(hole, hole.stiffenerEdgeDistanceMm)),
        'the design lists no hole',
        'no hole states its distance to the edge of a stiffener',
      ),
  }),
]

const hasRigidToFlex = ({ construction: { zones } }: Design) =>
  zones.some(({ kind }) => kind === 'rigid') && zones.some(({ kind }) => kind === 'flex')
const NO_TRANSITION: Measurement = { kind: 'absent', reason: 'the design has no transition from rigid to flex' }

export const EDGE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'prepreg-set-back',
    group: 'Thickness and layers',
    name: 'Prepreg set-back at the rigid edge, minimum',
    question: 'How close may prepreg come to the edge of a rigid zone?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'set the prepreg further back',
    measuredAs: 'set-back of the rigid edges',
    measure: ({ design }) =>
      hasRigidToFlex(design)
        ? ofWhole(design.features.rigidEdges.prepregSetBackMm, 'the rigid edges state no set-back of prepreg')
        : NO_TRANSITION,
  }),
  numberParameter({
    key: 'squeeze-out',
    group: 'Coverlay',
    name: 'Squeeze-out allowed, minimum',
    question: 'What squeeze-out of adhesive or resin can be held?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'allow more squeeze-out',
    measuredAs: 'squeeze-out that the rigid edges allow',
    measure: ({ design }) =>
      hasRigidToFlex(design)
        ? ofWhole(design.features.rigidEdges.squeezeOutMm, 'the rigid edges state no squeeze-out')
        : NO_TRANSITION,
  }),
  numberParameter({
    key: 'flex-length-between-rigids',
    group: 'Thickness and layers',
    name: 'Flex length between rigid zones, minimum',
    question: 'How short may the flex between two rigid zones be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'lengthen the flex',
    measuredAs: 'length of each flexible zone, where the part has two rigid zones',
    measure: ({ design }) => {
      const { zones } = design.construction
      if (zones.filter(({ kind }) => kind === 'rigid').length < 2)
        return { kind: 'absent', reason: 'the design has no two rigid zones' }
      return listStated(
        'smaller-is-harder',
        zones.filter(({ kind }) => kind === 'flex'),
        (zone) => (zone.lengthMm === null ? null : ofZone(zone, zone.lengthMm)),
        'the design has no flexible zone',
        'no flexible zone states its length',
      )
    },
  }),
  numberParameter({
    key: 'finish-thickness',
    group: 'Finish and class',
    name: 'Finish thickness on contacts, maximum',
    question: 'How thick may the finish on contacts be?',
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'ask for a thinner finish',
    measuredAs: 'finish on the contacts of each zone, all its metals together',
    measure: ({ design }) =>
      listStated(
        'larger-is-harder',
        design.construction.zones.filter(({ kind }) => kind === 'finger'),
        (zone) => (zone.contactFinish === null ? null : ofZone(zone, zone.contactFinish.thicknessUm)),
        'the design has no finger zone',
        'no finger zone states the finish on its contacts',
      ),
  }),
  numberParameter({
    key: 'contact-pitch',
    group: 'Outline',
    name: 'Contact pitch, minimum',
    question: 'How fine may the pitch of contacts at a connector end be?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'choose a connector of a wider pitch',
    measuredAs: 'pitch of each connector’s contacts on the part',
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.features.connectors,
        ({ id, name, pitch }) =>
          pitch.partMm === null
            ? null
            : { value: pitch.partMm, place: { kind: 'design', id, name } as const, foilUm: null },
        'the design lists no connector',
        'no connector states its pitch',
      ),
  }),
]

/** The smaller and the larger side of the outline's bounds; null where nobody listed its corners. */
function readSides({ features: { outline } }: Design): readonly [number, number] | null {
  if (outline === null) return null
  const spread = (axis: 0 | 1) => {
    const values = outline.verticesMm.map((vertex) => vertex[axis])
    return Math.max(...values) - Math.min(...values)
  }
  const sides = [spread(0), spread(1)].sort((a, b) => a - b)
  return [sides[0] ?? 0, sides[1] ?? 0]
}

export const PART_SIZE_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'part-length-largest',
    group: 'Outline',
    name: 'Part length, maximum',
    question: 'How long may a part be?',
    unit: 'mm',
    direction: 'larger-is-harder',
    verb: 'shorten',
    measuredAs: 'longer side of the rectangle round the outline',
    measure: ({ design }) => ofWhole(readSides(design)?.[1] ?? null, 'the design states no outline'),
  }),
  numberParameter({
    key: 'part-width-largest',
    group: 'Outline',
    name: 'Part width, maximum',
    question: 'How wide may a part be?',
    unit: 'mm',
    direction: 'larger-is-harder',
    verb: 'make narrower',
    measuredAs: 'shorter side of the rectangle round the outline',
    measure: ({ design }) => ofWhole(readSides(design)?.[0] ?? null, 'the design states no outline'),
  }),
]
