import { requireNumber } from '../numerics'
import type { LayerConstant } from './constants'
import { type BendLayer, FILM_SLOPE_FRACTION, isHeldSideways } from './layers'

/** A share of one layer's width with one material in it. */
export interface Strip {
  readonly widthFraction: number
  /** Along the arc: in plane strain where the material is held sideways. */
  readonly modulusGpa: number
  /** Where the slope changes; infinite for a strip that stays elastic. */
  readonly yieldStrain: number
  readonly tangentGpa: number
}

/** Ratio of plastic slope in plane strain to uniaxial: 1 / (1 - 1/4), plastic flow being incompressible. */
const PLASTIC_PLANE_STRAIN = 4 / 3
/** Stress at which a metal flows in plane strain, over its uniaxial yield strength. */
const FLOW_PLANE_STRAIN = 2 / Math.sqrt(3)

/**
 * Strain at which a metal begins to yield.
 *
 * Model    von Mises in plane strain: sigma_y' = sigma_y / sqrt(1 - nu + nu^2), eps_y = sigma_y' / E'. Free to contract: eps_y = sigma_y / E.
 *          The bent section takes plane strain to go on elastic up to the flow stress, 1.155 sigma_y, which is 2 % more.
 * @param yieldStrengthMpa  uniaxial, > 0
 * @param modulusGpa > 0, poisson in [0, 0.5)
 * @returns per cent
 * @throws  RangeError naming the argument
 * Source   SOURCES.plasticBending
 */
export function yieldStrainPct({
  yieldStrengthMpa,
  modulusGpa,
  poisson,
  lateral = 'held',
}: {
  yieldStrengthMpa: number
  modulusGpa: number
  poisson: number
  lateral?: 'held' | 'free'
}): number {
  requireNumber('yieldStrengthMpa', yieldStrengthMpa, { above: 0, atMost: 1e5, unit: 'MPa' })
  requireNumber('modulusGpa', modulusGpa, { above: 0, atMost: 2500, unit: 'GPa' })
  requireNumber('poisson', poisson, { atLeast: 0, below: 0.5 })
  const uniaxialPct = (yieldStrengthMpa * 0.1) / modulusGpa
  return lateral === 'free' ? uniaxialPct : (uniaxialPct * (1 - poisson ** 2)) / Math.sqrt(1 - poisson + poisson ** 2)
}

/**
 * Refuses a yield or slope that breaks its range.
 *
 * @param name  how errors call the layer, e.g. `layers[3]`
 * @throws  RangeError naming the number
 */
export function requireYields(name: string, layer: BendLayer): void {
  if (!areYieldsWithinRanges(layer)) refuseYields(name, layer)
}

/** As refuseYields, without making a name for each number. */
function areYieldsWithinRanges(layer: BendLayer): boolean {
  const { yieldStrengthMpa, tangentModulusGpa = 0, yieldStrainPct: filmYieldStrainPct, conductor } = layer
  const fillYieldStrainPct = conductor?.fillYieldStrainPct
  if (fillYieldStrainPct !== undefined && !isPctAboveZero(fillYieldStrainPct)) return false
  if (yieldStrengthMpa === undefined) return filmYieldStrainPct === undefined || isPctAboveZero(filmYieldStrainPct)
  const slope = isHeldSideways(layer) ? PLASTIC_PLANE_STRAIN : 1
  return (
    yieldStrengthMpa > 0 &&
    yieldStrengthMpa <= 1e5 &&
    tangentModulusGpa >= 0 &&
    tangentModulusGpa < ownModulusGpa(layer) / slope
  )
}

const isPctAboveZero = (pct: number): boolean => pct > 0 && pct <= 100

/** @throws RangeError naming the first number that breaks its range */
function refuseYields(name: string, layer: BendLayer): void {
  const { yieldStrengthMpa, tangentModulusGpa = 0, yieldStrainPct: filmYieldStrainPct, conductor } = layer
  if (yieldStrengthMpa !== undefined) {
    const slope = isHeldSideways(layer) ? PLASTIC_PLANE_STRAIN : 1
    const below = ownModulusGpa(layer) / slope
    requireNumber(`${name}.yieldStrengthMpa`, yieldStrengthMpa, { above: 0, atMost: 1e5, unit: 'MPa' })
    requireNumber(`${name}.tangentModulusGpa`, tangentModulusGpa, { atLeast: 0, below, unit: 'GPa' })
  } else if (filmYieldStrainPct !== undefined) {
    requireNumber(`${name}.yieldStrainPct`, filmYieldStrainPct, { above: 0, atMost: 100, unit: '%' })
  }
  const fillYieldStrainPct = conductor?.fillYieldStrainPct
  if (fillYieldStrainPct !== undefined) {
    requireNumber(`${name}.fillYieldStrainPct`, fillYieldStrainPct, { above: 0, atMost: 100, unit: '%' })
  }
}

/**
 * The strips of a layer whose numbers computeSection and requireYields have checked: the copper and the fill of a patterned layer lie
 * side by side.
 *
 * Model    plane strain E / (1 - nu^2) with a flow stress of 2/sqrt(3) times the yield strength; copper with gaps contracts sideways and
 *          has E and the yield strength itself. Films and adhesives change slope at their yield strain.
 * Source   SOURCES.plasticBending, SOURCES.plateBending; finite elements in test/standards/finite-elements
 */
export function stripsOf(layer: BendLayer): Strip[] {
  const modulusGpa = ownModulusGpa(layer)
  const { conductor } = layer
  const coverage = conductor?.coverageFraction ?? 1
  const strips: Strip[] = []
  if (coverage > 0) strips.push(makeStrip(coverage, modulusGpa, layer))
  if (conductor !== undefined && coverage < 1 && conductor.fillModulusGpa > 0) {
    const { fillModulusGpa, fillPoisson, fillYieldStrainPct } = conductor
    strips.push(makeFilmStrip(1 - coverage, fillModulusGpa / (1 - fillPoisson ** 2), fillYieldStrainPct))
  }
  return strips
}

function ownModulusGpa(layer: BendLayer): number {
  return isHeldSideways(layer) ? layer.modulusGpa / (1 - layer.poisson ** 2) : layer.modulusGpa
}

function makeStrip(widthFraction: number, modulusGpa: number, layer: BendLayer): Strip {
  const { yieldStrengthMpa, tangentModulusGpa = 0 } = layer
  if (yieldStrengthMpa === undefined) return makeFilmStrip(widthFraction, modulusGpa, layer.yieldStrainPct)
  const isHeld = isHeldSideways(layer)
  return {
    widthFraction,
    modulusGpa,
    yieldStrain: (yieldStrengthMpa * 1e-3 * (isHeld ? FLOW_PLANE_STRAIN : 1)) / modulusGpa,
    tangentGpa: (isHeld ? PLASTIC_PLANE_STRAIN : 1) * tangentModulusGpa,
  }
}

function makeFilmStrip(widthFraction: number, modulusGpa: number, filmYieldStrainPct: number | undefined): Strip {
  return filmYieldStrainPct === undefined
    ? { widthFraction, modulusGpa, yieldStrain: Number.POSITIVE_INFINITY, tangentGpa: 0 }
    : {
        widthFraction,
        modulusGpa,
        yieldStrain: filmYieldStrainPct / 100,
        tangentGpa: FILM_SLOPE_FRACTION * modulusGpa,
      }
}

/**
 * Whether a yield would lie beyond a strain with one constant at a value; false for constants that are no yield.
 *
 * @param own  the strip of the layer's own material, and what the constant is there
 */
export function isYieldBeyond(
  constant: LayerConstant,
  value: number,
  own: { readonly strip: Strip; readonly value: number },
  strain: number,
): boolean {
  switch (constant) {
    case 'yieldStrengthMpa':
      return strain <= (own.strip.yieldStrain * value) / own.value
    case 'yieldStrainPct':
    case 'fillYieldStrainPct':
      return strain <= value / 100
    default:
      return false
  }
}
