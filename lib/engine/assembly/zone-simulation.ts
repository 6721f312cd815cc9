import type { Design } from '../design'
import { computeThicknessRange, simulateThickness, type ThicknessSimulation } from '../thickness'
import { indexDesign } from './design-index'
import { listContributors } from './zone-results'
import { buildZoneSection } from './zone-section'

/**
 * Finished thickness of many circuits in one zone, drawn from the tolerances that its worst case and root sum square
 * come from. A finger zone also gives the share of circuits outside its connector's window.
 *
 * @param seed   integer 0 to 2^32 - 1; the same seed gives the same circuits
 * @param draws  1000 to 1e6
 * @returns null where the design has no such zone, or nothing in it varies
 * @throws  RangeError for a seed or number of draws outside those ranges
 * Source   as simulateThickness
 */
export function simulateZoneThickness(
  design: Design,
  zoneId: string,
  { seed, draws = 100_000 }: { readonly seed: number; readonly draws?: number },
): ThicknessSimulation | null {
  const index = indexDesign(design)
  const zone = index.zonesById.get(zoneId)
  if (zone === undefined) return null
  const section = buildZoneSection(zone, index)
  const contributors = listContributors(section)
  if (!contributors.some((each) => each.minusUm + each.plusUm > 0)) return null
  let thicknessUm = 0
  for (const layer of section.layers) thicknessUm += layer.nominalUm
  // Contributors are centred on what was bought; flow and processing loss shift the whole distribution.
  const shiftUm = thicknessUm - computeThicknessRange(contributors).nominalUm
  const shift = {
    id: 'flow-and-loss',
    nominalUm: Math.abs(shiftUm),
    minusUm: 0,
    plusUm: 0,
    spread: 'normal' as const,
    sensitivity: shiftUm < 0 ? -1 : 1,
  }
  const window = zone.connectorWindow
  return simulateThickness({
    contributors: [...contributors, shift],
    draws,
    seed,
    ...(window === null || window.maxUm <= window.minUm ? {} : { windowUm: window }),
  })
}
