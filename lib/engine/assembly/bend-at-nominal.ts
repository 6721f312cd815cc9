import type { Bend } from '../design'
import type { LifeCurvePoint } from '../results'
import type { SurvivalDemand } from './bend-allowables'
import { computeConductors } from './bend-conductors'
import { findLeastLife } from './bend-governing'
import type { BendInputs } from './bend-inputs'
import type { BendSection } from './bend-section'
import { bendLeaves } from './bent-leaves'
import type { ConductorEntry } from './conductor-entry'
import type { HeldOver } from './leaf-pull'

/** Enough for a smooth line on log axes: each point is a whole bend. */
const CURVE_POINTS = 24
/** The curve reaches this far to either side of the bend's radius. */
const CURVE_SPAN_RATIO = 5
/** A curve ends this near to the radius at the flatter end, where the motion comes to nothing. */
const NEAR_FLATTER_END = 0.99

export interface NominalInputs {
  readonly bend: Bend
  readonly section: BendSection
  readonly heldOver: HeldOver
  readonly demand: SurvivalDemand
}

/** Nominal figures alone: no tolerance and no spread is worked through. */
export function withoutRanges({ bend, section, heldOver, demand }: NominalInputs): NominalInputs {
  return {
    bend: { ...bend, radiusToleranceMm: 0 },
    section: {
      ...section,
      leaves: section.leaves.map((leaf) => ({
        ...leaf,
        layers: leaf.layers.map((layer) => ({ ...layer, minusUm: 0, plusUm: 0, spreads: [] })),
      })),
    },
    heldOver,
    demand,
  }
}

/**
 * The copper of a bend with all its states and loads, by the calculation of its verdict.
 *
 * @param inputs  as `withoutRanges` gives them, moved or not
 * @returns null where its states contradict each other, or a load cannot be told
 */
export function computeAtNominal({ bend, section, heldOver, demand }: NominalInputs): readonly ConductorEntry[] | null {
  const { fold, states, held } = bendLeaves(bend, section, heldOver)
  if (states.limits.length > 0 || held.limits.length > 0) return null
  const { conductors, limits } = computeConductors(
    { bend, section, demand, states, heldPulls: held.byLeaf },
    fold.leaves,
    // What is missing was already noted for the bend itself.
    [],
  )
  return limits.length > 0 ? null : conductors
}

/**
 * Life over inside radius of a bend with a flatter end, an earlier fold or loads: the bend worked out in full at each radius, what else is stated
 * of it staying as it is. Radii at which nobody can tell are left out.
 */
export function computeLoadedLifeCurve(given: BendInputs, markedRadiusMm: number | null): LifeCurvePoint[] {
  const inputs = withoutRanges(given)
  const { insideRadiusMm: ownMm, flexesFromRadiusMm } = inputs.bend
  const lowMm = Math.min(ownMm, markedRadiusMm ?? ownMm) / CURVE_SPAN_RATIO
  const highMm = Math.min(
    Math.max(ownMm, markedRadiusMm ?? ownMm) * CURVE_SPAN_RATIO,
    flexesFromRadiusMm === null ? Number.POSITIVE_INFINITY : NEAR_FLATTER_END * flexesFromRadiusMm,
  )
  const steps = Array.from({ length: CURVE_POINTS }, (_, at) => lowMm * (highMm / lowMm) ** (at / (CURVE_POINTS - 1)))
  const radiiMm = [...new Set([...steps, ownMm])].toSorted((a, b) => a - b)
  return radiiMm.flatMap((insideRadiusMm): LifeCurvePoint[] => {
    const conductors = computeAtNominal({ ...inputs, bend: { ...inputs.bend, insideRadiusMm } })
    const life = conductors === null ? null : findLeastLife(conductors)
    return life === null ? [] : [{ insideRadiusMm, medianLifeCycles: life.median, survivalLifeCycles: life.survival }]
  })
}
