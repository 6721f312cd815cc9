import { requireNumber } from '../numerics'

/** Nominal thickness of 1 oz/ft2 foil in the foil standard, um. Source SOURCES.ipc4562. */
export const UM_PER_OZ_PER_FT2 = 34.3

/** Avoirdupois ounce in grams and square foot in square metres, exact by definition. */
const GRAM_PER_OZ = 28.349523125
const M2_PER_FT2 = 0.09290304

/** Heaviest copper a flexible circuit could carry, with room to spare: 100 oz/ft2 is 3.4 mm. */
const MAX_WEIGHT_OZ_PER_FT2 = 100

/**
 * Thickness of foil bought by weight.
 *
 * @param weightOzPerFt2  > 0
 * @returns nominal thickness in um, 34.3 per oz/ft2
 * @throws  RangeError outside (0, 100]
 * Source   SOURCES.ipc4562; check values in test/standards/copper
 */
export function foilThicknessUm(weightOzPerFt2: number): number {
  return UM_PER_OZ_PER_FT2 * requireWeight(weightOzPerFt2)
}

/** Inverse of foilThicknessUm, for thickness in um above 0. */
export function foilWeightOzPerFt2(thicknessUm: number): number {
  return (
    requireNumber('thicknessUm', thicknessUm, {
      above: 0,
      atMost: MAX_WEIGHT_OZ_PER_FT2 * UM_PER_OZ_PER_FT2,
      unit: 'um',
    }) / UM_PER_OZ_PER_FT2
  )
}

/** Mass per area in g/m2; 1 oz/ft2 is 305.15 g/m2. Source SOURCES.exactArithmetic. */
export function arealMassGPerM2(weightOzPerFt2: number): number {
  return (requireWeight(weightOzPerFt2) * GRAM_PER_OZ) / M2_PER_FT2
}

/**
 * Thickness of foil from its weight and density: t = m / (A rho). Electrodeposited foil varies in density, which is
 * why the trade buys it by weight.
 *
 * @param densityGPerCm3  e.g. 8.96 pure copper, 8.90 the density behind 34.3 um
 * @returns um
 * @throws  RangeError for a weight outside (0, 100] or a density outside [1, 25]
 * Source   SOURCES.exactArithmetic; check values in test/standards/copper
 */
export function foilThicknessByDensityUm(weightOzPerFt2: number, densityGPerCm3: number): number {
  requireNumber('densityGPerCm3', densityGPerCm3, { atLeast: 1, atMost: 25, unit: 'g/cm3' })
  // (g/m2) / (g/cm3) = 1e-6 m = 1 um.
  return arealMassGPerM2(weightOzPerFt2) / densityGPerCm3
}

function requireWeight(weightOzPerFt2: number): number {
  return requireNumber('weightOzPerFt2', weightOzPerFt2, { above: 0, atMost: MAX_WEIGHT_OZ_PER_FT2, unit: 'oz/ft2' })
}
