import type { PlanMeasures } from '@/lib/plan'
import { type Bend, callByName, type Design, type Zone } from '../../design'
import { AGREES_WITHIN_MM, asMm, type Pen, withFields } from './pen'

export function drawZonesAndBends(design: Design, measures: PlanMeasures, pen: Pen): Design {
  const zones = design.construction.zones.map((zone, index) => drawZone(zone, index, measures, pen))
  const bends = design.bends.map((bend, index) => drawBend(bend, index, measures, pen))
  return {
    ...design,
    construction: { ...design.construction, zones: isSameList(zones, design.construction.zones) },
    bends: isSameList(bends, design.bends),
  }
}

const isSameList = <T>(after: T[], before: T[]): T[] =>
  after.every((entry, at) => entry === before[at]) ? before : after

/** Areas of one zone that differ have no one length: what was stated of it then stays. */
function drawZone(zone: Zone, index: number, measures: PlanMeasures, pen: Pen): Zone {
  const areas = measures.areas.filter(({ zoneId }) => zoneId === zone.id)
  const places = [{ kind: 'zone', id: zone.id, name: zone.name }] as const
  const fields: Partial<Zone> = {}
  for (const [key, word] of [
    ['lengthMm', 'length'],
    ['widthMm', 'width'],
  ] as const) {
    const sizes = areas.map((area) => area[key])
    const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
    if (areas.length === 0 || most - least > AGREES_WITHIN_MM) continue
    const drawn = asMm(least)
    pen.note({
      path: ['construction', 'zones', index, key],
      what: `${word} of ${callByName('zone', zone.name)}`,
      unit: 'mm',
      stated: zone[key],
      drawn,
      places,
    })
    if (zone[key] !== drawn) fields[key] = drawn
  }
  return withFields(zone, fields)
}

function drawBend(bend: Bend, index: number, measures: PlanMeasures, pen: Pen): Bend {
  const lines = measures.bands.filter(({ bendId }) => bendId === bend.id)
  if (lines.length === 0) return bend
  const places = [{ kind: 'bend', id: bend.id, name: bend.name }] as const
  const fields: Partial<Bend> = {}
  const [first] = lines
  // Across several arms at once the axis has no one length.
  if (lines.length === 1 && first !== undefined && first.axisLengthMm !== null && first.axisLengthMm > 0) {
    const drawn = asMm(first.axisLengthMm)
    pen.note({
      path: ['bends', index, 'axisLengthMm'],
      what: `length of ${callByName('bend', bend.name)} along its axis`,
      unit: 'mm',
      stated: bend.axisLengthMm,
      drawn,
      places,
    })
    if (bend.axisLengthMm !== drawn) fields.axisLengthMm = drawn
  }
  const toFlat = lines.flatMap(({ toFlatMm, region }) => (region === null || toFlatMm === null ? [] : [toFlatMm]))
  if (toFlat.length === lines.length) {
    const drawn = asMm(Math.min(...toFlat))
    pen.note({
      path: ['bends', index, 'distanceToRigidMm'],
      what: `distance of ${callByName('bend', bend.name)} from the nearest rigid or stiffened edge`,
      unit: 'mm',
      stated: bend.distanceToRigidMm,
      drawn,
      places,
    })
    if (bend.distanceToRigidMm !== drawn) fields.distanceToRigidMm = drawn
  }
  return withFields(bend, fields)
}
