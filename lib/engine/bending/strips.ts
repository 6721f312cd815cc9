import { requireNumber } from '../numerics'
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
 * The strips of a layer whose numbers computeSection has checked: the copper and the fill of a patterned layer lie side by side.
 *
 * Model    plane strain E / (1 - nu^2) with a flow stress of 2/sqrt(3) times the yield strength; copper with gaps contracts sideways and
 *          has E and the yield strength itself. Films and adhesives change slope at their yield strain.
 * @param name  how errors call the layer, e.g. `layers[3]`
 * @throws  RangeError naming yield or slope where it breaks its range
 * Source   SOURCES.plasticBending, SOURCES.plateBending; finite elements in test/standards/finite-elements
 */
export function stripsOf(layer: BendLayer, name = 'layer'): Strip[] {
  const isHeld = isHeldSideways(layer)
  const modulusGpa = isHeld ? layer.modulusGpa / (1 - layer.poisson ** 2) : layer.modulusGpa
  const coverage = layer.conductor?.coverageFraction ?? 1
  const strips: Strip[] = []
  if (coverage > 0)
    strips.push({ widthFraction: coverage, modulusGpa, ...describeYield(name, layer, modulusGpa, isHeld) })
  if (layer.conductor !== undefined && coverage < 1 && layer.conductor.fillModulusGpa > 0) {
    const { fillModulusGpa, fillPoisson, fillYieldStrainPct } = layer.conductor
    const fillGpa = fillModulusGpa / (1 - fillPoisson ** 2)
    strips.push({
      widthFraction: 1 - coverage,
      modulusGpa: fillGpa,
      ...describeFilmYield(`${name}.fillYieldStrainPct`, fillYieldStrainPct, fillGpa),
    })
  }
  return strips
}

type Yield = Pick<Strip, 'yieldStrain' | 'tangentGpa'>

const ELASTIC: Yield = { yieldStrain: Number.POSITIVE_INFINITY, tangentGpa: 0 }

function describeYield(name: string, layer: BendLayer, modulusGpa: number, isHeld: boolean): Yield {
  const { yieldStrengthMpa, tangentModulusGpa = 0 } = layer
  if (yieldStrengthMpa === undefined)
    return describeFilmYield(`${name}.yieldStrainPct`, layer.yieldStrainPct, modulusGpa)
  requireNumber(`${name}.yieldStrengthMpa`, yieldStrengthMpa, { above: 0, atMost: 1e5, unit: 'MPa' })
  const slope = isHeld ? PLASTIC_PLANE_STRAIN : 1
  requireNumber(`${name}.tangentModulusGpa`, tangentModulusGpa, { atLeast: 0, below: modulusGpa / slope, unit: 'GPa' })
  return {
    yieldStrain: (yieldStrengthMpa * 1e-3 * (isHeld ? FLOW_PLANE_STRAIN : 1)) / modulusGpa,
    tangentGpa: slope * tangentModulusGpa,
  }
}

function describeFilmYield(name: string, filmYieldStrainPct: number | undefined, modulusGpa: number): Yield {
  if (filmYieldStrainPct === undefined) return ELASTIC
  requireNumber(name, filmYieldStrainPct, { above: 0, atMost: 100, unit: '%' })
  return { yieldStrain: filmYieldStrainPct / 100, tangentGpa: FILM_SLOPE_FRACTION * modulusGpa }
}
