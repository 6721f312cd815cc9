import type { Design } from '@/lib/engine'

export type Change = (design: Design) => void

export const layerOf = (design: Design, id: string) => {
  const layer = design.construction.layers.find((each) => each.id === id)
  if (layer === undefined) throw new RangeError(`no layer ${id}`)
  return layer
}
export const zoneOf = (design: Design, id: string) => {
  const zone = design.construction.zones.find((each) => each.id === id)
  if (zone === undefined) throw new RangeError(`no zone ${id}`)
  return zone
}
export const bendOf = (design: Design, id: string) => {
  const bend = design.bends.find((each) => each.id === id)
  if (bend === undefined) throw new RangeError(`no bend ${id}`)
  return bend
}
export const set = (thing: object | undefined, given: object): void => {
  if (thing === undefined) throw new RangeError('nothing to change')
  Object.assign(thing, given)
}
export const remove = (design: Design, zoneId: string, ...layerIds: string[]) => {
  const zone = zoneOf(design, zoneId)
  zone.presence = zone.presence.filter(({ layerId }) => !layerIds.includes(layerId))
}

/** The fault, what must speak, and what it must say: `fails`, or that nobody can tell. */
export type Fault = readonly [fault: string, itemId: string, says: 'fails' | 'open', change: Change]
