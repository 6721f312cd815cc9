import { findRoot, requireNumber } from '../numerics'

/** What the fatigue relation needs to know of a foil. */
export interface FatigueFoil {
  /** D_f, true strain at fracture in fatigue: a fraction, not per cent; above 0 to 5. */
  fatigueDuctility: number
  tensileStrengthMpa: number
  modulusGpa: number
}

/** From flat to the radius and back, or to both sides of flat. */
export type BendMotion = 'one-way' | 'reversed'

/** Lives outside this span are not numbers that the relation can stand for. */
export const MIN_CYCLES = 1
export const MAX_CYCLES = 1e12

/** Above this the strength term rules: the relation must not be used to rank foils against each other. */
export const RANKING_LIMIT_CYCLES = 1e4
/** Beyond this the relation is extrapolated from test lives. */
export const EXTRAPOLATION_CYCLES = 1e6

const LOG10_MAX_CYCLES = 12
/** In decades: lives to 2.3e-11 of their value, far inside their scatter, so that machines agree on every verdict. */
const LOG10_CYCLES_TOLERANCE = 1e-11
/** Flex tests of foil run to some tens to thousands of cycles; past 1e5 the relation has two ductilities for one life. */
export const MAX_TEST_CYCLES = 1e5
const MAX_DUCTILITY = 5
const MIN_DUCTILITY = 1e-6

/**
 * Strain range that breaks half of all conductors at a number of cycles.
 *
 * Model    d_eps = N^-0.6 D_f^0.75 + 0.9 (S_u / E) [exp(D_f) / 0.36]^(0.1785 log10(1e5 / N))
 * Holds    room temperature, whole cycles. Relation and exponents are quoted from ANSI/VITA 51.1-2013 (R2018), appendix F,
 *          after IPC-TR-579, where they stand for the plated copper of holes; its worked case is among the checks. The use
 *          on bent foil is an assumption: of IPC-TM-650 2.4.3.2 and 2.4.2.1 only the scope was read. An estimate of order of magnitude;
 *          polyimide support lengthens life, with more scatter, and the short-life exponent measured on it is 0.51
 *          (SOURCES.thinMetalFatigue1991). At 1e5 cycles the second term is 0.9 S_u / E exactly.
 * @param cycles  1 to 1e12
 * @returns total strain range (maximum less minimum), a fraction
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility, SOURCES.platedHoleFatigue, SOURCES.foilFatigueTest; check values in test/standards/fatigue
 */
export function fatigueStrainRangeFraction(foil: FatigueFoil, cycles: number): number {
  requireFoil(foil)
  requireNumber('cycles', cycles, { atLeast: MIN_CYCLES, atMost: MAX_CYCLES, unit: 'cycles' })
  return strainRange(foil.fatigueDuctility, strengthOverModulus(foil), Math.log10(cycles))
}

/** `below` and `above` say that the life lies outside 1 to 1e12 cycles; `cycles` is then that end. */
export interface MedianLife {
  cycles: number
  bound: 'within' | 'below' | 'above'
  /** Longer than the relation may be used to rank foils. */
  strengthGoverned: boolean
  extrapolated: boolean
}

/**
 * Median life at a strain range: the relation above, inverted.
 *
 * Model    bracketed root in log10 N over 0 to 12, tolerance 1e-11 decades; the relation falls throughout, so the root
 *          is the only one
 * @param strainRangeFraction  > 0 to 10; for one-way bending the strain, for reversed bending twice the strain
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility, SOURCES.itp; check values in test/standards/fatigue
 */
export function computeMedianLife(foil: FatigueFoil, strainRangeFraction: number): MedianLife {
  requireFoil(foil)
  requireNumber('strainRangeFraction', strainRangeFraction, { above: 0, atMost: 10 })
  const ratio = strengthOverModulus(foil)
  // Logarithms make the curve nearly straight in each of its two regimes, where the root finder is at its best.
  const strainRangeAt = makeStrainRange(foil.fatigueDuctility, ratio)
  const excess = (logCycles: number): number => Math.log(strainRangeAt(logCycles) / strainRangeFraction)
  const atShortest = excess(0)
  if (atShortest <= 0) return describeLife(MIN_CYCLES, atShortest < 0 ? 'below' : 'within')
  const atLongest = excess(LOG10_MAX_CYCLES)
  if (atLongest >= 0) return describeLife(MAX_CYCLES, atLongest > 0 ? 'above' : 'within')
  const { root } = findRoot(excess, { low: 0, high: LOG10_MAX_CYCLES, tolerance: LOG10_CYCLES_TOLERANCE })
  return describeLife(10 ** root, 'within')
}

/**
 * Strain range that a bend makes each cycle: the strain itself one way, twice the strain when reversed.
 *
 * @param strainFraction  magnitude, >= 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic (definition of range: greatest less least)
 */
export function strainRangeOfMotion(strainFraction: number, motion: BendMotion): number {
  requireNumber('strainFraction', strainFraction, { atLeast: 0, atMost: 10 })
  return motion === 'one-way' ? strainFraction : 2 * strainFraction
}

/**
 * Strain range of foil bent to and fro over mandrels: d_eps = 2 t_core / (2 rho + t), rho the mandrel radius.
 *
 * @param coreThicknessUm   > 0, not above totalThicknessUm: the metal itself, without treatment
 * @param mandrelRadiusMm   > 0
 * @throws  RangeError naming the argument
 * Source   SOURCES.mandrelStrain (from memory)
 */
export function mandrelStrainRangeFraction({
  coreThicknessUm,
  totalThicknessUm,
  mandrelRadiusMm,
}: {
  coreThicknessUm: number
  totalThicknessUm: number
  mandrelRadiusMm: number
}): number {
  requireNumber('totalThicknessUm', totalThicknessUm, { above: 0, atMost: 1e5, unit: 'um' })
  requireNumber('coreThicknessUm', coreThicknessUm, { above: 0, atMost: totalThicknessUm, unit: 'um' })
  requireNumber('mandrelRadiusMm', mandrelRadiusMm, { above: 0, atMost: 1000, unit: 'mm' })
  return (2 * coreThicknessUm) / (2000 * mandrelRadiusMm + totalThicknessUm)
}

/**
 * Fatigue ductility of a foil from the cycles that it survived in a flex test.
 *
 * @param cycles               1 to 1e5
 * @param strainRangeFraction  > 0; null is returned when no ductility up to 5 explains the life
 * @throws  RangeError naming the argument
 * Source   SOURCES.fatigueDuctility, SOURCES.itp; check values in test/standards/fatigue
 */
export function findFatigueDuctility({
  cycles,
  strainRangeFraction,
  tensileStrengthMpa,
  modulusGpa,
}: {
  cycles: number
  strainRangeFraction: number
  tensileStrengthMpa: number
  modulusGpa: number
}): number | null {
  requireNumber('cycles', cycles, { atLeast: MIN_CYCLES, atMost: MAX_TEST_CYCLES, unit: 'cycles' })
  requireNumber('strainRangeFraction', strainRangeFraction, { above: 0, atMost: 10 })
  requireFoil({ fatigueDuctility: 1, tensileStrengthMpa, modulusGpa })
  const ratio = strengthOverModulus({ tensileStrengthMpa, modulusGpa })
  const excess = (ductility: number): number => strainRange(ductility, ratio, Math.log10(cycles)) - strainRangeFraction
  if (excess(MIN_DUCTILITY) > 0 || excess(MAX_DUCTILITY) < 0) return null
  return findRoot(excess, { low: MIN_DUCTILITY, high: MAX_DUCTILITY, tolerance: 1e-12 }).root
}

function strainRange(ductility: number, ratio: number, logCycles: number): number {
  return makeStrainRange(ductility, ratio)(logCycles)
}

/** The relation of one foil: what does not change with the cycles is worked out once. */
function makeStrainRange(ductility: number, ratio: number): (logCycles: number) => number {
  const plasticAtOne = ductility ** 0.75
  const elasticAtTestEnd = 0.9 * ratio
  const elasticBase = Math.exp(ductility) / 0.36
  return (logCycles) =>
    10 ** (-0.6 * logCycles) * plasticAtOne + elasticAtTestEnd * elasticBase ** (0.1785 * (5 - logCycles))
}

function describeLife(cycles: number, bound: MedianLife['bound']): MedianLife {
  return {
    cycles,
    bound,
    strengthGoverned: cycles > RANKING_LIMIT_CYCLES,
    extrapolated: cycles > EXTRAPOLATION_CYCLES,
  }
}

function strengthOverModulus({ tensileStrengthMpa, modulusGpa }: Omit<FatigueFoil, 'fatigueDuctility'>): number {
  return tensileStrengthMpa / (1000 * modulusGpa)
}

function requireFoil({ fatigueDuctility, tensileStrengthMpa, modulusGpa }: FatigueFoil): void {
  requireNumber('fatigueDuctility', fatigueDuctility, { above: 0, atMost: MAX_DUCTILITY })
  requireNumber('tensileStrengthMpa', tensileStrengthMpa, { above: 0, atMost: 1e5, unit: 'MPa' })
  requireNumber('modulusGpa', modulusGpa, { above: 0, atMost: 2500, unit: 'GPa' })
}
