import { z } from 'zod'

/** Identifiers inside a design: short, lower case, stable when a name changes. */
export const idSchema = z
  .string()
  .regex(
    /^[a-z0-9][a-z0-9-]{0,39}$/,
    'an id has 1 to 40 lower-case letters, digits or hyphens and starts with a letter or digit',
  )

/** A name that a person typed: trimmed, one line, no control characters. */
export const nameSchema = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(120, 'is longer than 120 characters')
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'holds a control character')

/**
 * Free text over several lines. NUL is refused because one of the two databases cannot keep it, half of a surrogate
 * pair because it has no UTF-8 form.
 */
export const textSchema = z
  .string()
  .max(4000, 'is longer than 4000 characters')
  // biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the purpose.
  .regex(/^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\p{Cs}]*$/u, 'holds a control character')

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

/** A plan dimension in mm that cannot be 0. */
export const lengthMmSchema = z.number().positive('must be greater than 0 mm').max(5000, 'must be at most 5000 mm')

/** A plan distance in mm; 0 means touching. */
export const distanceMmSchema = z.number().nonnegative('must not be negative').max(5000, 'must be at most 5000 mm')

/** Share between 0 and 1. */
export const fractionSchema = z.number().min(0, 'must be between 0 and 1').max(1, 'must be between 0 and 1')

/** Temperature in degrees Celsius, wide enough for every flexible laminate. */
export const temperatureDegCSchema = z
  .number()
  .min(-273.15, 'is below absolute zero')
  .max(1000, 'must be at most 1000 °C')

export const percentSchema = z.number().gt(0, 'must be greater than 0 %').lt(100, 'must be less than 100 %')
