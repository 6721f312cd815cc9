import type { EvaluationContext } from '../../../context'
import { callByName, type Zone } from '../../../design'
import type { Outcome, Place, QuantityRange } from '../../../results'
import { inSentence } from '../../../units'
import { type BendUnderCheck, getRadiusRangeMm, listBends, placeOf } from '../../checks'
import { cannotTell, decide, makeDesignLimit, makeNoneAllowed, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { NEEDS } from '../../needs'

export const bendFit = defineItem({
  id: 'bend-fit',
  section: 'geometry',
  severity: 'major',
  question:
    'Do the arcs of the bends with straight film beside them, and their lengths along the axis, fit the zones that they lie in?',
  titles: { meets: 'Bends fit their zones', fails: 'A bend does not fit its zone' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: ['bendToRigidMm'],
  sourceKeys: ['exactArithmetic', 'commonPractice'],
  restsOn: [...SECTION_INPUTS, 'bends', 'plan'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [
    { path: 'bends[].angleDeg', worse: 'larger' },
    { path: 'bends[].insideRadiusMm', worse: 'larger' },
    { path: 'construction.zones[].lengthMm', worse: 'smaller' },
    { path: 'bends[].axisLengthMm', worse: 'larger' },
    { path: 'construction.zones[].widthMm', worse: 'smaller' },
  ],
  check: (context) =>
    context.design.construction.zones.flatMap((zone, zoneIndex) => {
      const bends = listBends(context).filter(({ bend }) => bend.zoneId === zone.id)
      return bends.length === 0
        ? []
        : [
            ...(CANNOT_BEND.includes(zone.kind) ? bends.map((bend) => failInRigidZone(zone, bend)) : []),
            // Areas of a zone that differ have no one length: bands that are drawn are held against their own.
            ...(zone.lengthMm === null && bends.every(({ bend }) => hasBand(context, bend.id))
              ? []
              : checkArcs(context, zone, zoneIndex, bends)),
            ...bends.map(checkAxis(zone, zoneIndex)),
            ...bends.flatMap((bend) => checkBands(context, zone, bend)),
          ]
    }),
})

const hasBand = ({ drawing }: EvaluationContext, bendId: string): boolean =>
  drawing.measures?.bands.some((band) => band.bendId === bendId && band.region !== null) ?? false

/** What the plan shows of a bend: its band stays within the area that it crosses, and off the others. */
function checkBands({ design, drawing }: EvaluationContext, zone: Zone, { bend, place }: BendUnderCheck): Outcome[] {
  const bands = drawing.measures?.bands ?? []
  return bands
    .filter(({ bendId, region }) => bendId === bend.id && region !== null)
    .map((band): Outcome => {
      const others = bands.filter(({ lineId }) => band.meets.includes(lineId))
      const nameOf = (bendId: string) => design.bends.find(({ id }) => id === bendId)?.name ?? bendId
      const faults = [
        ...(band.pastBorderMm > 0 ? [`runs ${inSentence(band.pastBorderMm, 'mm')} past the border of its area`] : []),
        ...(band.pastOutlineMm > 0 ? [`runs ${inSentence(band.pastOutlineMm, 'mm')} past the end of the part`] : []),
        ...others.map(({ bendId }) => `overlaps that of ${nameOf(bendId)}`),
      ]
      const outcome = decide({
        value: faults.length,
        limit: makeNoneAllowed('bandFaultsCount', 'exactArithmetic'),
        places: [place, placeOf('zone', zone)],
        what: `places where the band of ${callByName('bend', bend.name)} leaves its area or meets another`,
        equation: 'drawn in plan: arc of the longest leaf, half on either side of the axis',
      })
      return faults.length === 0
        ? outcome
        : { ...outcome, summary: `The band of ${callByName('bend', bend.name)} ${faults.join(', ')}.` }
    })
}

const CANNOT_BEND: readonly Zone['kind'][] = ['rigid', 'stiffened']

/** What is rigid or stiffened is so that it does not bend. */
function failInRigidZone(zone: Zone, { bend, place }: BendUnderCheck): Outcome {
  return decide({
    value: 1,
    limit: makeNoneAllowed('bendsInRigidZonesCount', 'commonPractice'),
    places: [place, placeOf('zone', zone)],
    what: `bends in a ${zone.kind} zone at ${bend.name}`,
    equation: 'kind of the zone as entered',
  })
}

/** Radians in a degree. */
const RADIANS_PER_DEG = Math.PI / 180

/** All arcs of a zone one after the other, along the part: their longest leaf counts, at the largest radius too. */
function checkArcs(
  context: EvaluationContext,
  zone: Zone,
  zoneIndex: number,
  bends: readonly BendUnderCheck[],
): Outcome[] {
  const places: Place[] = [placeOf('zone', zone), ...bends.map(({ place }) => place)]
  const names = bends.map(({ bend }) => bend.name).join(', ')
  if (zone.lengthMm === null) {
    return [notComputed(['construction', 'zones', zoneIndex, 'lengthMm'], `length of ${zone.name}`, places)]
  }
  const missing = bends.flatMap(({ result }) => (result.leaves.length === 0 ? result.missing : []))
  if (missing.length > 0) return [notComputedFrom(missing, places)]
  let arcMm = 0
  const range = { low: 0, high: 0 }
  for (const { bend, result } of bends) {
    const longestMm = Math.max(...result.leaves.map(({ developedLengthMm }) => developedLengthMm))
    const radius = getRadiusRangeMm(bend)
    const perMm = bend.angleDeg * RADIANS_PER_DEG
    arcMm += longestMm
    range.low += longestMm - (bend.insideRadiusMm - radius.low) * perMm
    range.high += longestMm + (radius.high - bend.insideRadiusMm) * perMm
  }
  const room: Room = { zone, lengthMm: zone.lengthMm, arcMm, range, places, names }
  const alone = decideRoom(room, 0)
  if (alone.verdict === 'fails' || !NEEDS.transitions.isMet(context)) return [alone]
  return [alone, ...checkStraight(context, room)]
}

interface Room {
  readonly zone: Zone
  readonly lengthMm: number
  readonly arcMm: number
  readonly range: QuantityRange
  readonly places: readonly Place[]
  readonly names: string
}

/** @param straightMm  what lies beside the arcs and stays straight */
function decideRoom({ zone, lengthMm, arcMm, range, places, names }: Room, straightMm: number) {
  return decide({
    value: arcMm + straightMm,
    range: { low: range.low + straightMm, high: range.high + straightMm },
    limit: makeDesignLimit({
      key: 'zoneLengthMm',
      value: lengthMm,
      unit: 'mm',
      sense: 'at-most',
      sourceKey: 'exactArithmetic',
      name: `length of ${zone.name}`,
    }),
    places,
    what:
      straightMm === 0
        ? `arc of ${names} in ${zone.name}`
        : `arc of ${names} in ${zone.name} with ${inSentence(straightMm, 'mm')} of straight film`,
    equation: 'sum of (radius of the neutral axis x angle), longest leaf',
  })
}

/**
 * The straight film that each edge asks for. Between two edges it is needed at both ends. Which zones meet is not part of the tables: of a part with one flex
 * zone one end is certain; whether the other is an edge too, or the part ends there, nobody has said.
 */
function checkStraight(context: EvaluationContext, room: Room): Outcome[] {
  const straightMm = context.getLimit('bendToRigidMm').value
  const both = decideRoom(room, 2 * straightMm)
  if (both.verdict !== 'fails') return [both]
  const one = decideRoom(room, straightMm)
  const isOnlyFlex = context.design.construction.zones.filter(({ kind }) => kind === 'flex').length === 1
  if (one.verdict === 'fails' && isOnlyFlex) return [one]
  const { zone, lengthMm, arcMm, places, names } = room
  return [
    cannotTell(
      `the straight film beside ${names}`,
      {
        because: `the arc takes ${inSentence(arcMm, 'mm')} of ${inSentence(lengthMm, 'mm')}, which leaves less than ${inSentence(straightMm, 'mm')} at ${one.verdict === 'fails' ? 'one end' : 'both ends'} of ${zone.name}, and which of them are edges is not stated`,
        decidedBy: 'draw the part in plan, lengthen the zone, or take a smaller radius or angle',
      },
      places,
    ),
  ]
}

/** The part is as wide as its zone: a bend's axis is no longer. */
const checkAxis =
  (zone: Zone, zoneIndex: number) =>
  ({ bend, place }: BendUnderCheck): Outcome => {
    const places: Place[] = [place, placeOf('zone', zone)]
    return zone.widthMm === null
      ? notComputed(['construction', 'zones', zoneIndex, 'widthMm'], `width of ${zone.name}`, places)
      : decide({
          value: bend.axisLengthMm,
          limit: makeDesignLimit({
            key: 'zoneWidthMm',
            value: zone.widthMm,
            unit: 'mm',
            sense: 'at-most',
            sourceKey: 'exactArithmetic',
            name: `width of ${zone.name}`,
          }),
          places,
          what: `length along the axis of ${callByName('bend', bend.name)}`,
          equation: 'dimensions as entered',
        })
  }
