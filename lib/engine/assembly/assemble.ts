import type { RatioTable } from '../bending'
import { type Bend, callByName, type Design, withNetClasses } from '../design'
import type { TestedLife } from '../flex-tests'
import type { BendResult, MissingInput, ZoneResult } from '../results'
import type { Assembly } from './assembly'
import { readSurvivalDemand, type SurvivalDemand } from './bend-allowables'
import type { BendDetail } from './bend-inputs'
import { computeBendResult } from './bend-results'
import { chooseRatioTable } from './bend-rules'
import { buildBendSection } from './bend-section'
import { computeConductorResult, findThinnestCopper, makeUnknown } from './conductor-results'
import { computeLayerDamage } from './damage'
import { type DesignIndex, indexDesign } from './design-index'
import { drawDimensions } from './drawn'
import { livesFor } from './own-tests'
import { reuseFrom } from './reuse'
import { makeUnknownBend } from './unknown-bend'
import { computeZoneResult } from './zone-results'
import { buildZoneSection, type ZoneSection } from './zone-section'

export interface AssembleOptions {
  readonly detail?: BendDetail
  /** An earlier assembly of a design that this one was edited from: what the edit did not touch is taken over. */
  readonly basis?: Assembly
  /** Own flex tests; a basis was made with the same ones. */
  readonly testedLives?: readonly TestedLife[]
}

/** Computes zones, bends, conductors and damage of a design that `parseDesign` let through. */
export function assemble(given: Design, { detail = 'full', basis, testedLives = [] }: AssembleOptions = {}): Assembly {
  const drawing = drawDimensions(withNetClasses(given))
  const { design } = drawing
  const index = indexDesign(design)
  const reuse = reuseFrom(basis, index)
  const sections: ZoneSection[] = []
  const zones: ZoneResult[] = []
  for (const zone of design.construction.zones) {
    const known = reuse.findZone(zone)
    const section = known?.section ?? buildZoneSection(zone, index)
    sections.push(section)
    zones.push(known?.result ?? computeZoneResult(section, index))
  }
  const sectionsByZone = new Map(sections.map((section) => [section.zone.id, section]))
  const demand = readSurvivalDemand(design.brief)
  const ratioTable = chooseRatioTable(design.brief.ratioTableKey)
  const lives = livesFor(testedLives, design.materials)
  const bends = design.bends.map((bend, position) => {
    const section = sectionsByZone.get(bend.zoneId)
    return (
      reuse.findBend(bend, position, section) ??
      assembleBend({ bend, position, section, index, demand, ratioTable, testedLives: lives, detail })
    )
  })
  const thinnest = findThinnestCopper(sections)
  const conductors = design.features.conductors.map((feature, position) => {
    const copper = thinnest.get(feature.layerId)
    return (
      reuse.findConductor(feature, position, copper) ??
      keepWithinReach(
        () => computeConductorResult(feature, position, design, copper),
        (reason) =>
          makeUnknown(feature, [{ path: ['features', 'conductors', position], label: `${feature.name} (${reason})` }]),
      )
    )
  })
  return {
    index,
    drawing,
    sections,
    thinnest,
    zones,
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
  testedLives,
  detail,
}: {
  bend: Bend
  position: number
  section: ZoneSection | undefined
  index: DesignIndex
  demand: SurvivalDemand
  ratioTable: RatioTable
  testedLives: readonly TestedLife[]
  detail: BendDetail
}): BendResult {
  const unknown = (missing: readonly MissingInput[]) => makeUnknownBend(bend, demand, ratioTable, missing)
  if (section === undefined) {
    return unknown([{ path: ['bends', position, 'zoneId'], label: `zone of ${callByName('bend', bend.name)}` }])
  }
  return keepWithinReach(
    () => {
      const bendSection = buildBendSection(section, bend.insideFace, index)
      return 'missing' in bendSection
        ? unknown(bendSection.missing)
        : computeBendResult({
            bend,
            position,
            section: bendSection,
            heldOver: { zone: section.zone, bends: index.design.bends.filter(({ zoneId }) => zoneId === bend.zoneId) },
            demand,
            ratioTable,
            testedLives,
            detail,
          })
    },
    (reason) =>
      unknown([
        {
          path: ['bends', position],
          label: `${callByName('bend', bend.name)} within reach of the relations (${reason})`,
        },
      ]),
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
