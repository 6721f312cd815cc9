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

/** A plan dimension in mm that cannot be 0. */
export const lengthMmSchema = z.number().positive('must be greater than 0 mm').max(5000, 'must be at most 5000 mm')

/** A plan distance in mm; 0 means touching. */
export const distanceMmSchema = z.number().nonnegative('must not be negative').max(5000, 'must be at most 5000 mm')

/** Nanometres in a millimetre: the plan is computed in whole nanometres. */
export const NM_PER_MM = 1_000_000

/** A coordinate as written, in mm with up to six decimals, that is a whole number of nanometres: no rounding stands between document and geometry. */
export const coordinateMmSchema = z
  .number()
  .min(-5000, 'must be at least -5000 mm')
  .max(5000, 'must be at most 5000 mm')
  .refine(
    (mm) => Math.round(mm * NM_PER_MM) / NM_PER_MM === mm,
    'has more than six decimals: the plan is drawn in whole nanometres',
  )

export const pointMmSchema = z.tuple([coordinateMmSchema, coordinateMmSchema])

/** x and y as in the plan, z upwards from its top face. */
export const spacePointMmSchema = z.tuple([coordinateMmSchema, coordinateMmSchema, coordinateMmSchema])

/** A direction in space by its three parts, in any size but 0. */
export const directionSchema = z
  .tuple([z.number().min(-1000).max(1000), z.number().min(-1000).max(1000), z.number().min(-1000).max(1000)])
  .refine((parts) => Math.hypot(...parts) > 1e-6, 'points nowhere: at least one of the three must differ from 0')

/** x to the right and y up as the plan is drawn, seen on the top face. */
export type PointMm = z.infer<typeof pointMmSchema>
