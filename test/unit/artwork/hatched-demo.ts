import type { Design } from '@/lib/engine'
import type { Drawn } from './draw-set'
import { at, design } from './on-demo'

/** 45° bars over the first bend. */
export const hatched = (barMm: number, stepShare: number): Drawn[] =>
  Array.from({ length: Math.floor(1 / stepShare) }, (_, index) => index * stepShare).flatMap((share): Drawn[] => [
    { stroke: [at(share, -6), at(share + 12 / AXIS_MM, 6)], widthMm: barMm },
    { stroke: [at(share, 6), at(share + 12 / AXIS_MM, -6)], widthMm: barMm },
  ])
const [line] = design.plan?.bendLines ?? []
export const AXIS_MM = line === undefined ? 1 : Math.hypot(line.toMm[0] - line.fromMm[0], line.toMm[1] - line.fromMm[1])

/** The demo's design with a change of its layers. */
export function withLayer(
  change: Partial<Extract<Design['construction']['layers'][number], { kind: 'conductor' }>>,
): Design {
  const changed = structuredClone(design)
  const layer = changed.construction.layers.find(({ kind }) => kind === 'conductor')
  if (layer?.kind !== 'conductor') throw new Error('the demo has no conductor layer')
  Object.assign(layer, change)
  return changed
}
/** With a hatch stated for that layer in the zone that bends. */
export function stated(barMm: number, pitchMm: number): Design {
  const changed = withLayer({ role: 'plane', planePattern: 'hatched' })
  const layer = changed.construction.layers.find(({ kind }) => kind === 'conductor')
  for (const zone of changed.construction.zones) {
    const presence = zone.presence.find(({ layerId }) => layerId === layer?.id)
    if (presence !== undefined)
      Object.assign(presence, { hatch: { barMm, pitchMm, angleDeg: 45 }, coverageFraction: null })
  }
  return changed
}
