import type { Design } from './design'

type Span = readonly [from: number, to: number]

/** Conductor layers of a zone, from the top. */
function listZoneConductors({ construction }: Design, zoneId: string): string[] {
  const zone = construction.zones.find(({ id }) => id === zoneId)
  const present = new Set(zone?.presence.map(({ layerId }) => layerId))
  return construction.layers.flatMap(({ id, kind }) => (kind === 'conductor' && present.has(id) ? [id] : []))
}

/**
 * Laminations that the holes of a zone call for at the least: one to press more than two conductor layers together, and one after each hole that
 * is buried in another. Holes that reach an outer layer may be drilled to depth, so they add none for certain. Source: common practice.
 */
export function countLeastLaminations(design: Design, zoneId: string): number {
  const order = listZoneConductors(design, zoneId)
  const last = order.length - 1
  const buried = design.features.holes.flatMap((hole): Span[] => {
    if (hole.plated !== true || hole.zoneId !== zoneId || hole.fromLayerId === null || hole.toLayerId === null)
      return []
    const ends = [order.indexOf(hole.fromLayerId), order.indexOf(hole.toLayerId)].toSorted((a, b) => a - b)
    const [from = -1, to = -1] = ends
    return from > 0 && to < last && from < to ? [[from, to]] : []
  })
  const depthOf = ([from, to]: Span): number =>
    1 +
    Math.max(
      0,
      ...buried.filter(([a, b]) => a >= from && b <= to && (a > from || b < to)).map((inner) => depthOf(inner)),
    )
  return Math.max(order.length > 2 ? 1 : 0, ...buried.map(depthOf))
}

/** Spans of layers that plated holes join, each once: holes of one span are drilled and plated together. */
export function listPlatedSpans({ features }: Design): string[] {
  return [
    ...new Set(
      features.holes.flatMap(({ plated, fromLayerId, toLayerId }) =>
        plated === true && fromLayerId !== null && toLayerId !== null
          ? [[fromLayerId, toLayerId].sort().join(' ')]
          : [],
      ),
    ),
  ]
}
