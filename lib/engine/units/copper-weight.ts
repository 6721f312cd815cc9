import { requireNumber, tidy } from '../numerics'
import { digitsAsEntered } from './figures'
import { type LengthUnit, type ParsedLength, parseLength } from './length'

/**
 * Nominal thickness of 1 oz/ft2 foil in the foil standard, um. Source SOURCES.ipc4562. It is the areal mass of 305.15 g/m2 over 8.90 g/cm3, the
 * density of electrodeposited foil; 1.37 mil, 34.8 um, which shop tables also print, is the same mass at 8.77 g/cm3.
 */
export const UM_PER_OZ_PER_FT2 = 34.3

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

function requireWeight(weightOzPerFt2: number): number {
  return requireNumber('weightOzPerFt2', weightOzPerFt2, { above: 0, atMost: MAX_WEIGHT_OZ_PER_FT2, unit: 'oz/ft2' })
}

/** A foil given by weight or by thickness: `0.5 oz`, `1/2 oz/ft2`, `18 um`. */
export type ParsedFoil = ParsedLength

const WEIGHT_PATTERN =
  /^(?:(\d+)\s*\/\s*(\d+)|(\d+(?:\.\d*)?|\.\d+))\s*(?:oz|ounces?)(?:\s*\/\s*ft\s*(?:2|²|\^2)|\s*per\s*ft2)?$/i
const BARE_NUMBER = /^(?:\d+\s*\/\s*\d+|\d+(?:\.\d*)?|\.\d+)$/

/**
 * Reads the thickness of a foil, by weight or as a length.
 *
 * @param defaultUnit  what a bare number is taken as
 * @returns um, or a sentence that says what is wrong with the text
 */
export function parseFoilThickness(text: string, defaultUnit: LengthUnit | 'oz-per-ft2'): ParsedFoil {
  const trimmed = text.trim()
  const isBareWeight = defaultUnit === 'oz-per-ft2' && BARE_NUMBER.test(trimmed)
  const match = WEIGHT_PATTERN.exec(isBareWeight ? `${trimmed} oz` : trimmed)
  if (match === null) return parseLength(text, defaultUnit === 'oz-per-ft2' ? 'um' : defaultUnit)
  const [, numerator, denominator, decimal] = match
  const weight = decimal === undefined ? Number(numerator) / Number(denominator) : Number(decimal)
  if (!(weight > 0 && weight <= MAX_WEIGHT_OZ_PER_FT2)) {
    return {
      ok: false,
      message: `A foil weighs more than 0 and at most ${MAX_WEIGHT_OZ_PER_FT2} oz/ft²; this is ${trimmed}.`,
    }
  }
  return { ok: true, valueUm: tidy(foilThicknessUm(weight)) }
}

/** Digits that a weight keeps where the thickness has no short form in ounces. */
const WEIGHT_DIGITS = 6

/** Digits of a stated foil thickness in oz/ft2: exact where it was stated so, else to six digits. */
export function digitsOfFoilWeight(thicknessUm: number): string {
  return digitsAsEntered(Number((thicknessUm / UM_PER_OZ_PER_FT2).toPrecision(WEIGHT_DIGITS)))
}
