import { listLineZones } from '../catalogue'
import type { Design } from '../design'
import { describeZoneLine, solveRoughly } from '../lines'
import { roundToDigits } from '../numerics'
import type { ZoneLayerResult, ZoneResult } from '../results'
import { inSentence } from '../units'
import type { BendAssessment } from './assess'
import type { ForbiddenNeed } from './remedy'

/**
 * Conductors with a stated impedance whose surroundings a change touches: their layer, the dielectrics between it and
 * the planes beside it, and the planes' pattern and coverage. The need is named with the
 * value that it moves to, and the change left to a person, since a width may bring it back. Copper thickness moves it by a few per cent only and
 * is no reason by itself.
 */
export function findMovedImpedances(before: BendAssessment, after: BendAssessment): ForbiddenNeed[] {
  const moved: ForbiddenNeed[] = []
  before.context.design.features.conductors.forEach((conductor, position) => {
    const { impedanceOhm, layerId, name } = conductor
    if (impedanceOhm === null) return
    const isSame =
      after.context.design.features.conductors[position]?.layerId === layerId &&
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
        because: `${name} is to have ${impedanceOhm} ohm: layers or planes beside it would change.${describeMove(after, position)}`,
      })
    }
  })
  return moved
}

/** To what value it moves, and whether the stated band still holds, in each zone that it surely runs through and that can be solved. */
function describeMove({ context }: BendAssessment, position: number): string {
  const conductor = context.design.features.conductors[position]
  if (conductor === undefined) return ''
  const { widthMm, impedanceOhm, impedance } = conductor
  if (widthMm === null || impedanceOhm === null) return ''
  const moves = listLineZones(context, conductor).flatMap(({ zone, runsThere }) => {
    if (!runsThere) return []
    const line = describeZoneLine({ ...conductor, widthMm }, position, zone, context)
    if (line.kind !== 'solvable') return []
    const solved = solveRoughly(line.makeSection('nominal', widthMm))
    if ('faults' in solved) return []
    const figure = `${zone.name}: about ${inSentence(roundToDigits(solved.impedanceOhm, 3), 'ohm')}`
    if (line.open !== null) return [`${figure} or more`]
    const { tolerancePct } = impedance
    if (tolerancePct === null) return [figure]
    const isWithin = Math.abs(solved.impedanceOhm / impedanceOhm - 1) <= tolerancePct / 100
    return [`${figure}, ${isWithin ? 'within' : 'outside'} ±${tolerancePct} % at nominal`]
  })
  return moves.length === 0 ? '' : ` ${moves.join('; ')}.`
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
