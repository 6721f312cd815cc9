import type { EvaluationContext } from '../../../context'
import type { Zone } from '../../../design'
import type { Outcome, Place } from '../../../results'
import { inSentence } from '../../../units'
import { type BendUnderCheck, getRadiusRangeMm, listBends, placeOf } from '../../checks'
import { decide, makeDesignLimit, makeNoneAllowed, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const bendFit = defineItem({
  id: 'bend-fit',
  section: 'geometry',
  severity: 'major',
  question: 'Do the arcs of the bends, and their lengths along the axis, fit the zones that they lie in?',
  titles: { meets: 'Bends fit their zones', fails: 'A bend does not fit its zone' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
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
              : [checkArcs(zone, zoneIndex, bends)]),
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
        what: `places where the band of bend ${bend.name} leaves its area or meets another`,
        equation: 'drawn in plan: arc of the longest leaf, half on either side of the axis',
      })
      return faults.length === 0
        ? outcome
        : { ...outcome, summary: `The band of bend ${bend.name} ${faults.join(', ')}.` }
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
function checkArcs(zone: Zone, zoneIndex: number, bends: readonly BendUnderCheck[]): Outcome {
  const places: Place[] = [placeOf('zone', zone), ...bends.map(({ place }) => place)]
  const names = bends.map(({ bend }) => bend.name).join(', ')
  if (zone.lengthMm === null) {
    return notComputed(['construction', 'zones', zoneIndex, 'lengthMm'], `length of ${zone.name}`, places)
  }
  const missing = bends.flatMap(({ result }) => (result.leaves.length === 0 ? result.missing : []))
  if (missing.length > 0) return notComputedFrom(missing, places)
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
  return decide({
    value: arcMm,
    range,
    limit: makeDesignLimit({
      key: 'zoneLengthMm',
      value: zone.lengthMm,
      unit: 'mm',
      sense: 'at-most',
      sourceKey: 'exactArithmetic',
      name: `length of ${zone.name}`,
    }),
    places,
    what: `arc of ${names} in ${zone.name}`,
    equation: 'sum of (radius of the neutral axis x angle), longest leaf',
  })
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
          what: `length along the axis of bend ${bend.name}`,
          equation: 'dimensions as entered',
        })
  }
