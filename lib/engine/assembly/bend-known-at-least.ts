import { computeBendStrain, LEAST_RADIUS_RATIO, type Leaf } from '../bending'
import type { Bend } from '../design'
import type { KnownAtLeast } from '../results'
import type { SurvivalDemand } from './bend-allowables'
import { computeConductors, loadingOf } from './bend-conductors'
import type { BendSection } from './bend-section'
import type { StatedStates } from './bend-states'

/**
 * What a bend strains at least, where it is too tight for its strain to be told: each leaf opened until it is within reach, at nominal.
 * Strain falls with the radius, so that the bend itself strains more.
 *
 * @param leaves  of the bend as it is
 * @returns null where the stiffness of the section is not known either, or its states contradict each other, so that no strain is
 */
export function findKnownAtLeast(
  { bend, section, demand, states }: { bend: Bend; section: BendSection; demand: SurvivalDemand; states: StatedStates },
  leaves: readonly Leaf[],
): KnownAtLeast | null {
  if (section.modelLimits.length > 0 || states.limits.some(({ kind }) => kind === 'states')) return null
  const loading = loadingOf(bend)
  const opened = leaves.map((leaf): Leaf => {
    const leastMm = (LEAST_RADIUS_RATIO * leaf.section.totalThicknessUm) / 1000
    const insideRadiusMm = Math.max(leaf.insideRadiusMm, leastMm)
    return { ...leaf, insideRadiusMm, strain: computeBendStrain(leaf.section, insideRadiusMm, loading) }
  })
  const { conductors, faceFilms } = computeConductors(
    { bend: { ...bend, radiusToleranceMm: 0 }, section, demand, states },
    opened,
    // What is missing was already noted for the bend itself.
    [],
  )
  return { conductors: conductors.map(({ result }) => result), faceFilms: faceFilms.flat() }
}
