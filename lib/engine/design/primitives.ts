import { z } from 'zod'

// What a plan has as well is declared with it.
export { distanceMmSchema, idSchema, lengthMmSchema, nameSchema, textSchema } from '@/lib/plan'

/** Calendar day, ISO 8601 (`2027-03-01`). */
export const dateSchema = z.iso.date('is not a calendar day such as 2027-03-01')

/** Layer thickness in um. 10 mm bounds it: anything thicker is a mistyped unit. */
export const thicknessUmSchema = z
  .number()
  .positive('must be greater than 0 um')
  .max(10_000, 'must be at most 10000 um (10 mm)')

/** Tolerance or added thickness in um; 0 is allowed. */
export const deviationUmSchema = z
  .number()
  .nonnegative('must not be negative')
  .max(10_000, 'must be at most 10000 um (10 mm)')

/** Share between 0 and 1. */
export const fractionSchema = z.number().min(0, 'must be between 0 and 1').max(1, 'must be between 0 and 1')

/** Temperature in degrees Celsius, wide enough for every flexible laminate. */
export const temperatureDegCSchema = z
  .number()
  .min(-273.15, 'is below absolute zero')
  .max(1000, 'must be at most 1000 °C')

export const percentSchema = z.number().gt(0, 'must be greater than 0 %').lt(100, 'must be less than 100 %')
