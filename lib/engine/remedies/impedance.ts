import type { Design } from '../design'
import type { ZoneLayerResult, ZoneResult } from '../results'
import type { BendAssessment } from './assess'
import type { ForbiddenNeed } from './remedy'

/**
 * Conductors with a stated impedance whose surroundings a change touches: their layer, the dielectrics between it and
 * the planes beside it, and the planes' pattern and coverage. The change of the impedance itself is not computed: a field
 * solver and the conductor's width decide it, so the need is named and the change left to a person. Copper thickness moves
 * it by a few per cent only and is no reason by itself.
 */
export function findMovedImpedances(before: BendAssessment, after: BendAssessment): ForbiddenNeed[] {
  const moved: ForbiddenNeed[] = []
  before.design.features.conductors.forEach((conductor, position) => {
    const { impedanceOhm, layerId, name } = conductor
    if (impedanceOhm === null) return
    const isSame =
      after.design.features.conductors[position]?.layerId === layerId &&
      before.assembly.zones.every((zone, at) => {
        const changed = after.assembly.zones[at]
        return (
          changed === zone ||
          (changed !== undefined &&
            describeSurroundings(zone, layerId, before.design) === describeSurroundings(changed, layerId, after.design))
        )
      })
    if (!isSame) {
      moved.push({
        kind: 'impedance',
        name,
        because: `${name} is to have ${impedanceOhm} ohm: layers or planes beside it would change.`,
      })
    }
  })
  return moved
}

function describeSurroundings(zone: ZoneResult, layerId: string, design: Design): string {
  const at = zone.layers.findIndex((layer) => layer.layerId === layerId)
  if (at < 0) return ''
  const above = zone.layers.slice(0, at).reverse()
  const below = zone.layers.slice(at + 1)
  return JSON.stringify([describeSide(above, design), describeSide(below, design)])
}

/** Dielectrics up to the nearest plane, and that plane; null where no plane lies on this side. */
function describeSide(outward: readonly ZoneLayerResult[], design: Design): unknown {
  const dielectrics: unknown[] = []
  for (const { layerId, kind, materialId, asBoughtUm, coverageFraction } of outward) {
    if (kind !== 'conductor') {
      // As bought: what flows between the conductors is the same dielectric.
      dielectrics.push([materialId, asBoughtUm])
      continue
    }
    if (coverageFraction === 0) continue
    const layer = design.construction.layers.find(({ id }) => id === layerId)
    if (layer?.kind !== 'conductor' || layer.role === 'signal' || layer.planePattern === 'none') return null
    return [dielectrics, layerId, layer.planePattern, coverageFraction]
  }
  return null
}
