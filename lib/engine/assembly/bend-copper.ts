import type { Design } from '../design'
import type { TestedLife } from '../flex-tests'
import type { ConductorStrainResult } from '../results'
import { readSurvivalDemand } from './bend-allowables'
import { computeConductors } from './bend-conductors'
import { buildBendSection } from './bend-section'
import { bendLeaves, isFromFlatAlone } from './bent-leaves'
import { indexDesign } from './design-index'
import { applyOwnTests, livesFor } from './own-tests'
import { buildZoneSection } from './zone-section'

/**
 * The copper of one bend, by the calculation of its verdict and nothing else of the design: a search looks at this first, at a quarter of the time of
 * an assembly.
 *
 * @param design  without a plan: dimensions as stated
 * @returns null where an input is missing, or the bend is beyond the reach of the relations
 */
export function computeCopper(
  design: Design,
  bendId: string,
  testedLives: readonly TestedLife[],
): readonly ConductorStrainResult[] | null {
  const bend = design.bends.find(({ id }) => id === bendId)
  const zone = design.construction.zones.find(({ id }) => id === bend?.zoneId)
  if (bend === undefined || zone === undefined) return null
  try {
    const index = indexDesign(design)
    const section = buildBendSection(buildZoneSection(zone, index), bend.insideFace, index)
    if ('missing' in section) return null
    const heldOver = { zone, bends: design.bends.filter(({ zoneId }) => zoneId === zone.id) }
    const demand = readSurvivalDemand(design.brief)
    const { fold, ...bent } = bendLeaves(bend, section, heldOver)
    const lives = isFromFlatAlone(bent) ? livesFor(testedLives, design.materials) : []
    const tested = applyOwnTests(bend, section, { demand, testedLives: lives }, fold.leaves).section
    const { conductors } = computeConductors(
      { bend, section: tested, demand, states: bent.states, heldPulls: bent.held.byLeaf },
      fold.leaves,
      // What is missing is named by the bend's own results.
      [],
    )
    return conductors.map(({ result }) => result)
  } catch (error) {
    // Beyond the reach of the relations; the bend's own results say so.
    if (error instanceof RangeError) return null
    throw error
  }
}
