import type { RatioTable } from '../bending'
import type { Bend, Design } from '../design'
import type { BendResult, ConductorResult, MissingInput, ZoneResult } from '../results'
import { readSurvivalDemand, type SurvivalDemand } from './bend-allowables'
import { computeBendResult } from './bend-results'
import { chooseRatioTable } from './bend-rules'
import { buildBendSection } from './bend-section'
import { computeConductorResult, findThinnestCopper, makeUnknown } from './conductor-results'
import { computeLayerDamage } from './damage'
import { type DesignIndex, indexDesign } from './design-index'
import { makeUnknownBend } from './unknown-bend'
import { computeZoneResult } from './zone-results'
import { buildZoneSection, type ZoneSection } from './zone-section'

/** All numbers of a design, before the catalogue looks at them. */
export interface Assembly {
  readonly index: DesignIndex
  readonly zones: readonly ZoneResult[]
  readonly bends: readonly BendResult[]
  readonly conductors: readonly ConductorResult[]
  readonly damage: ReturnType<typeof computeLayerDamage>
}

/** Computes zones, bends, conductors and damage of a design that `parseDesign` let through. */
export function assemble(design: Design): Assembly {
  const index = indexDesign(design)
  const sections = design.construction.zones.map((zone) => buildZoneSection(zone, index))
  const sectionsByZone = new Map(sections.map((section) => [section.zone.id, section]))
  const demand = readSurvivalDemand(design.brief)
  const ratioTable = chooseRatioTable(design.brief.ratioTableKey)
  const bends = design.bends.map((bend, position) =>
    assembleBend({ bend, position, section: sectionsByZone.get(bend.zoneId), index, demand, ratioTable }),
  )
  const thinnest = findThinnestCopper(sections)
  const conductors = design.features.conductors.map((feature, position) =>
    keepWithinReach(
      () => computeConductorResult(feature, position, design, thinnest.get(feature.layerId)),
      (reason) =>
        makeUnknown(feature, [{ path: ['features', 'conductors', position], label: `${feature.name} (${reason})` }]),
    ),
  )
  return {
    index,
    zones: sections.map(computeZoneResult),
    bends,
    conductors,
    damage: computeLayerDamage(design.bends, bends),
  }
}

function assembleBend({
  bend,
  position,
  section,
  index,
  demand,
  ratioTable,
}: {
  bend: Bend
  position: number
  section: ZoneSection | undefined
  index: DesignIndex
  demand: SurvivalDemand
  ratioTable: RatioTable
}): BendResult {
  const unknown = (missing: readonly MissingInput[]) => makeUnknownBend(bend, demand, ratioTable, missing)
  if (section === undefined) {
    return unknown([{ path: ['bends', position, 'zoneId'], label: `zone of bend ${bend.name}` }])
  }
  return keepWithinReach(
    () => {
      const bendSection = buildBendSection(section, bend.insideFace, index)
      return 'missing' in bendSection
        ? unknown(bendSection.missing)
        : computeBendResult({ bend, position, section: bendSection, demand, ratioTable })
    },
    (reason) =>
      unknown([{ path: ['bends', position], label: `bend ${bend.name} within reach of the relations (${reason})` }]),
  )
}

/**
 * The schema admits more than some relations hold for (a conductor 2 m wide, a section without any stiffness). Their own
 * range checks then decide, and the design gets a "not computed" with the reason in place of an exception.
 */
function keepWithinReach<T>(compute: () => T, explain: (reason: string) => T): T {
  try {
    return compute()
  } catch (error) {
    if (error instanceof RangeError) return explain(error.message)
    throw error
  }
}
