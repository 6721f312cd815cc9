import type { Design } from '../design'
import {
  computeCapability,
  computeThicknessRange,
  type ProcessCapability,
  simulateThickness,
  type ThicknessSimulation,
} from '../thickness'
import { indexDesign } from './design-index'
import { CONTACT_FINISH_ID, listContactContributors, listContributors } from './zone-results'
import { buildZoneSection, type ZoneSection } from './zone-section'

/** Thickness of many circuits in one zone, with what the zone adds to the plain draws. */
export interface ZoneThicknessSimulation extends ThicknessSimulation {
  readonly zoneId: string
  /** Share of the variance that each layer brings, foil and plating together, largest first; they add to 1. */
  readonly layerShares: readonly { readonly layerId: string; readonly name: string; readonly shareFraction: number }[]
  /** Against the connector's window, from the draws' mean and standard deviation; null where no window is stated. */
  readonly capability: ProcessCapability | null
}

/**
 * Finished thickness of many circuits in one zone, drawn from the tolerances that its worst case and root sum square
 * come from. A finger zone also gives the share of circuits outside its connector's window, and its Cpk against it.
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
): ZoneThicknessSimulation | null {
  const index = indexDesign(design)
  const zone = index.zonesById.get(zoneId)
  if (zone === undefined) return null
  const section = buildZoneSection(zone, index)
  // A connector takes the end where its contacts are.
  const contributors = [...listContributors(section), ...listContactContributors(section)]
  if (!contributors.some((each) => each.minusUm + each.plusUm > 0)) return null
  let thicknessUm = 0
  for (const layer of section.layers) thicknessUm += layer.nominalUm
  for (const { nominalUm } of listContactContributors(section)) thicknessUm += nominalUm
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
  const isOpen = window !== null && window.maxUm > window.minUm
  const simulation = simulateThickness({
    contributors: [...contributors, shift],
    draws,
    seed,
    ...(isOpen ? { windowUm: window } : {}),
  })
  return {
    ...simulation,
    zoneId,
    layerShares: sumByLayer(simulation, section),
    capability:
      isOpen && simulation.standardDeviationUm > 0
        ? computeCapability({
            meanUm: simulation.meanUm,
            standardDeviationUm: simulation.standardDeviationUm,
            lowerUm: window.minUm,
            upperUm: window.maxUm,
          })
        : null,
  }
}

function sumByLayer(
  { varianceShares }: ThicknessSimulation,
  { layers }: ZoneSection,
): ZoneThicknessSimulation['layerShares'] {
  const shares = new Map<string, number>()
  for (const { id, shareFraction } of varianceShares) shares.set(id, (shares.get(id) ?? 0) + shareFraction)
  const named = [...layers.map(({ layer }) => layer), { id: CONTACT_FINISH_ID, name: 'Finish on the contacts' }]
  return named
    .flatMap(({ id, name }) => {
      const shareFraction = shares.get(id) ?? 0
      return shareFraction > 0 ? [{ layerId: id, name, shareFraction }] : []
    })
    .sort((a, b) => b.shareFraction - a.shareFraction)
}
