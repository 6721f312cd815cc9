import { requireNumber } from '../numerics'

/** One layer of a bonded stack in a bend. Lists of layers run from the inside (concave) face outward. */
export interface BendLayer {
  id: string
  /** Finished thickness, above 0. */
  thicknessUm: number
  /** Of the solid material: film, adhesive, or the copper itself. */
  modulusGpa: number
  poisson: number
  /**
   * Present on conductor layers: how much of the width is copper, and what fills the gaps. For a hatched plane the share is that of
   * its stiffness in a solid one's (hatch.ts), with `lateral` held.
   */
  conductor?: {
    coverageFraction: number
    fillModulusGpa: number
    fillPoisson: number
    /** As yieldStrainPct below. */
    fillYieldStrainPct?: number
  }
  /**
   * Sideways the layer is held by its own width (plane strain), or free to contract because gaps part it. Held where absent, but free for
   * copper that covers less than the whole width. The fill of gaps is always held.
   */
  lateral?: 'held' | 'free'
  /** Uniaxial yield strength of a metal; elastic throughout where neither this nor yieldStrainPct is given. */
  yieldStrengthMpa?: number
  /** Uniaxial slope beyond yield strength; 0 (perfectly plastic) where absent. */
  tangentModulusGpa?: number
  /** Strain past which a film or adhesive goes on with a tenth of its modulus. */
  yieldStrainPct?: number
}

/** Slope of films and adhesives past yield over their modulus: our choice; what is met lies between a twentieth and a fifth. */
export const FILM_SLOPE_FRACTION = 0.1

/** Whether a layer's own material is kept from contracting sideways. */
export function isHeldSideways({ lateral, conductor }: BendLayer): boolean {
  return lateral === undefined ? conductor === undefined || conductor.coverageFraction === 1 : lateral === 'held'
}

/** A metre: thicker input is a slip of the unit. */
const MAX_THICKNESS_UM = 1e6
/** About twice diamond. */
const MAX_MODULUS_GPA = 2500

/**
 * Coverage-weighted modulus of a layer, in plane strain but for copper with gaps, after checking all its numbers.
 *
 * Model    E' = E / (1 - nu^2) where the layer is held sideways; conductors and what fills their gaps by width: f E_conductor + (1 - f) E'_fill
 * Holds    conductors that cross the bend axis at right angles, many of them over the width. Where they run along the axis it overstates the
 *          stiffness.
 * Source   SOURCES.plateBending, SOURCES.compositeBeam; check values in test/standards/beam
 * @param name  how errors call the layer, e.g. `layers[3]`
 * @throws  RangeError naming the number that breaks its range, or a layer that has no stiffness at all
 */
export function effectiveModulusGpa(name: string, layer: BendLayer): number {
  const { modulusGpa, poisson, conductor } = layer
  // Names of numbers are made for those that are refused alone: searches over corners ask this thousands of times.
  if (!isWithinRanges(layer)) refuseRanges(name, layer)
  const solidGpa = isHeldSideways(layer) ? modulusGpa / (1 - poisson ** 2) : modulusGpa
  if (conductor === undefined) return solidGpa
  const { coverageFraction, fillModulusGpa, fillPoisson } = conductor
  const weightedGpa = coverageFraction * solidGpa + ((1 - coverageFraction) * fillModulusGpa) / (1 - fillPoisson ** 2)
  if (weightedGpa === 0) {
    throw new RangeError(`${name} has neither copper nor fill: coverageFraction and fillModulusGpa are both 0`)
  }
  return weightedGpa
}

/** As refuseRanges; comparisons are false for what is not a number. */
function isWithinRanges({ thicknessUm, modulusGpa, poisson, conductor }: BendLayer): boolean {
  return (
    thicknessUm > 0 &&
    thicknessUm <= MAX_THICKNESS_UM &&
    modulusGpa > 0 &&
    modulusGpa <= MAX_MODULUS_GPA &&
    poisson >= 0 &&
    poisson < 0.5 &&
    (conductor === undefined ||
      (conductor.coverageFraction >= 0 &&
        conductor.coverageFraction <= 1 &&
        conductor.fillModulusGpa >= 0 &&
        conductor.fillModulusGpa <= MAX_MODULUS_GPA &&
        conductor.fillPoisson >= 0 &&
        conductor.fillPoisson < 0.5))
  )
}

/** @throws RangeError naming the first number that breaks its range */
function refuseRanges(name: string, { thicknessUm, modulusGpa, poisson, conductor }: BendLayer): void {
  requireNumber(`${name}.thicknessUm`, thicknessUm, { above: 0, atMost: MAX_THICKNESS_UM, unit: 'um' })
  requireNumber(`${name}.modulusGpa`, modulusGpa, { above: 0, atMost: MAX_MODULUS_GPA, unit: 'GPa' })
  requireNumber(`${name}.poisson`, poisson, { atLeast: 0, below: 0.5 })
  if (conductor === undefined) return
  requireNumber(`${name}.coverageFraction`, conductor.coverageFraction, { atLeast: 0, atMost: 1 })
  requireNumber(`${name}.fillModulusGpa`, conductor.fillModulusGpa, {
    atLeast: 0,
    atMost: MAX_MODULUS_GPA,
    unit: 'GPa',
  })
  requireNumber(`${name}.fillPoisson`, conductor.fillPoisson, { atLeast: 0, below: 0.5 })
}
