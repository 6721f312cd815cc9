import {
  type Bend,
  type Design,
  type Layer,
  makeFreshId,
  makePresence,
  markAssumed,
  UNKNOWN_BEND,
  UNKNOWN_THROUGH_THICKNESS,
  type Zone,
} from '@/lib/engine'
import { withoutDrawnOfRemoved } from './drawn-of-removed'

export { makeFreshId }

/** `Bend 2`, unless that is taken. */
export function makeFreshName(stem: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map((entry) => entry.name))
  let number = taken.length + 1
  while (names.has(`${stem} ${number}`)) number += 1
  return `${stem} ${number}`
}

export function replaceAt<T>(list: readonly T[], index: number, entry: T): T[] {
  return list.map((present, at) => (at === index ? entry : present))
}

export function moveEntry<T>(list: readonly T[], from: number, to: number): T[] {
  const moved = [...list]
  const [entry] = moved.splice(from, 1)
  if (entry === undefined) return [...list]
  moved.splice(to, 0, entry)
  return moved
}

function withConstruction(design: Design, change: Partial<Design['construction']>): Design {
  return { ...design, construction: { ...design.construction, ...change } }
}

export function updateLayer(design: Design, layerId: string, change: (layer: Layer) => Layer): Design {
  return withConstruction(design, {
    layers: design.construction.layers.map((layer) => (layer.id === layerId ? change(layer) : layer)),
  })
}

/** Inserts below `afterIndex` (-1 is the top face) and puts the layer in the zones where its upper neighbour is. */
export function insertLayer(design: Design, afterIndex: number, layer: Layer): Design {
  const { layers, zones } = design.construction
  const neighbour = layers[afterIndex] ?? layers[afterIndex + 1]
  const inserted = withConstruction(design, {
    layers: [...layers.slice(0, afterIndex + 1), layer, ...layers.slice(afterIndex + 1)],
    zones: zones.map((zone) =>
      neighbour === undefined || zone.presence.some((presence) => presence.layerId === neighbour.id)
        ? { ...zone, presence: [...zone.presence, makePresence(layer.id)] }
        : zone,
    ),
  })
  return { ...inserted, assumed: [...design.assumed, ...markLayer(layer)] }
}

/** Usual values that a new layer begins with. */
function markLayer(layer: Layer): string[] {
  if (layer.kind === 'unbonded-gap') return markAssumed('layers', layer.id, ['thicknessUm'])
  const common = markAssumed('layers', layer.id, ['thicknessUm', 'tolerancePlusUm', 'toleranceMinusUm', 'materialId'])
  return layer.kind === 'conductor'
    ? [...common, ...markAssumed('layers', layer.id, ['coverageFraction', 'plating', 'processingLossUm'])]
    : common
}

/** Takes the layer out of every zone too. What else names it (features) is then reported, not silently dropped. */
export function removeLayer(design: Design, layerId: string): Design {
  const { layers, zones } = design.construction
  return withConstruction(design, {
    layers: layers.filter((layer) => layer.id !== layerId),
    zones: zones.map((zone) => ({
      ...zone,
      presence: zone.presence.filter((presence) => presence.layerId !== layerId),
    })),
  })
}

export function moveLayer(design: Design, from: number, to: number): Design {
  return withConstruction(design, { layers: moveEntry(design.construction.layers, from, to) })
}

/** A copy right below, present in the same zones with the same coverage. */
export function duplicateLayer(design: Design, index: number): Design {
  const { layers, zones } = design.construction
  const layer = layers[index]
  if (layer === undefined) return design
  const copy: Layer = { ...layer, id: makeFreshId('layer', layers), name: makeCopyName(layer.name, layers) }
  return withConstruction(design, {
    layers: [...layers.slice(0, index + 1), copy, ...layers.slice(index + 1)],
    zones: zones.map((zone) => {
      const present = zone.presence.find((presence) => presence.layerId === layer.id)
      return present === undefined ? zone : { ...zone, presence: [...zone.presence, { ...present, layerId: copy.id }] }
    }),
  })
}

function makeCopyName(name: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map((entry) => entry.name))
  const stem = `${name.slice(0, 100)} copy`
  if (!names.has(stem)) return stem
  let number = 2
  while (names.has(`${stem} ${number}`)) number += 1
  return `${stem} ${number}`
}

export function updateZone(design: Design, zoneId: string, change: (zone: Zone) => Zone): Design {
  return withConstruction(design, {
    zones: design.construction.zones.map((zone) => (zone.id === zoneId ? change(zone) : zone)),
  })
}

/**
 * A new zone holds every layer, which is marked as assumed: the person takes out what is absent, or confirms.
 *
 * @param afterIndex  zone that it follows along the part; left out, the last one
 */
export function addZone(design: Design, afterIndex = design.construction.zones.length - 1): Design {
  const { layers, zones } = design.construction
  const zone: Zone = {
    id: makeFreshId('zone', zones),
    name: makeFreshName('Zone', zones),
    kind: layers.some((layer) => layer.kind === 'rigid-laminate') ? 'rigid' : 'flex',
    lengthMm: null,
    widthMm: null,
    presence: layers.filter((layer) => layer.kind !== 'unbonded-gap').map((layer) => makePresence(layer.id)),
    connectorWindow: null,
    contactFinish: null,
    statedThicknessUm: null,
    statedToleranceUm: null,
    ...UNKNOWN_THROUGH_THICKNESS,
  }
  return {
    ...withConstruction(design, { zones: insertAfter(zones, afterIndex, zone) }),
    assumed: [...design.assumed, ...markAssumed('zones', zone.id, ['kind', 'presence'])],
  }
}

export function moveZone(design: Design, from: number, to: number): Design {
  return withConstruction(design, { zones: moveEntry(design.construction.zones, from, to) })
}

/** A copy right after it, with the same layers. What was measured or stated of the one zone is not known of the other; what was assumed of it still is. */
export function duplicateZone(design: Design, index: number): Design {
  const { zones } = design.construction
  const zone = zones[index]
  if (zone === undefined) return design
  const copy: Zone = {
    ...zone,
    id: makeFreshId('zone', zones),
    name: makeCopyName(zone.name, zones),
    statedThicknessUm: null,
    statedToleranceUm: null,
    ...UNKNOWN_THROUGH_THICKNESS,
  }
  const prefix = `zones.${zone.id}.`
  const marks = design.assumed.filter((mark) => mark.startsWith(prefix))
  return {
    ...withConstruction(design, { zones: insertAfter(zones, index, copy) }),
    assumed: [...design.assumed, ...marks.map((mark) => `zones.${copy.id}.${mark.slice(prefix.length)}`)],
  }
}

const insertAfter = <T>(list: readonly T[], index: number, entry: T): T[] => [
  ...list.slice(0, index + 1),
  entry,
  ...list.slice(index + 1),
]

export function removeZone(design: Design, zoneId: string): Design {
  const zones = design.construction.zones.filter((zone) => zone.id !== zoneId)
  return withoutDrawnOfRemoved(design, withConstruction(design, { zones }))
}

export function setPresence(design: Design, zoneId: string, layerId: string, isPresent: boolean): Design {
  return updateZone(design, zoneId, (zone) => {
    const others = zone.presence.filter((presence) => presence.layerId !== layerId)
    return { ...zone, presence: isPresent ? [...others, makePresence(layerId)] : others }
  })
}

/** Changes what a zone says of a layer that is in it. */
export function updatePresence(
  design: Design,
  zoneId: string,
  layerId: string,
  change: (present: Zone['presence'][number]) => Zone['presence'][number],
): Design {
  return updateZone(design, zoneId, (zone) => ({
    ...zone,
    presence: zone.presence.map((presence) => (presence.layerId === layerId ? change(presence) : presence)),
  }))
}

export function setZoneCoverage(
  design: Design,
  zoneId: string,
  layerId: string,
  coverageFraction: number | null,
): Design {
  return updateZone(design, zoneId, (zone) => ({
    ...zone,
    presence: zone.presence.map((presence) =>
      presence.layerId === layerId ? { ...presence, coverageFraction } : presence,
    ),
  }))
}

/** A bend in the first flex zone: what must have some value is marked as assumed, the rest is left open. */
export function addBend(design: Design): Design {
  const zone = design.construction.zones.find((candidate) => candidate.kind === 'flex')
  const bend: Bend = {
    ...UNKNOWN_BEND,
    id: makeFreshId('bend', design.bends),
    name: makeFreshName('Bend', design.bends),
    zoneId: zone?.id ?? '',
    insideRadiusMm: 5,
    radiusToleranceMm: 0,
    angleDeg: 90,
    insideFace: 'top',
    axisLengthMm: zone?.widthMm ?? 10,
  }
  const proposed = [
    'zoneId',
    'insideRadiusMm',
    'radiusToleranceMm',
    'angleDeg',
    'insideFace',
    'axisLengthMm',
    'motion',
  ] as const
  return {
    ...design,
    bends: [...design.bends, bend],
    assumed: [...design.assumed, ...markAssumed('bends', bend.id, proposed)],
  }
}

export function updateBend(design: Design, bendId: string, change: (bend: Bend) => Bend): Design {
  return { ...design, bends: design.bends.map((bend) => (bend.id === bendId ? change(bend) : bend)) }
}

export function removeBend(design: Design, bendId: string): Design {
  return withoutDrawnOfRemoved(design, { ...design, bends: design.bends.filter((bend) => bend.id !== bendId) })
}
