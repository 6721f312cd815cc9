import { z } from 'zod'
import { textSchema } from '@/lib/engine'

export const SHELF_FORMS = ['roll', 'sheet'] as const

/** Calendar days. */
export const days = z
  .int('must be a whole number of days')
  .min(0, 'must not be negative')
  .max(1000, 'must be at most 1000 days')

const thicknessUm = z.number().positive('must be greater than 0 um').max(10_000, 'must be at most 10000 um (10 mm)')

/** One material as it is bought: a sheet or a roll, bare, clad with foil, or coated with adhesive. */
export const shelfRowSchema = z.strictObject({
  /** Id of a library material, or the specification sheet by which it is called out. */
  material: z.string().trim().min(1, 'is empty').max(120),
  thicknessUm,
  /** Of a clad: the foil's material, its thickness as bought, and on how many sides; null together for anything else. */
  foil: z.string().trim().min(1).max(120).nullable(),
  foilUm: thicknessUm.nullable(),
  foilSides: z.int().min(1, 'is 1 or 2').max(2, 'is 1 or 2').nullable(),
  /** Adhesive that comes with it, per coated side, as on a coverlay; null for none. */
  adhesive: z.string().trim().min(1).max(120).nullable(),
  adhesiveUm: thicknessUm.nullable(),
  form: z.enum(SHELF_FORMS).nullable(),
  widthMm: z.number().positive('must be greater than 0 mm').max(10_000, 'must be at most 10000 mm').nullable(),
  onShelf: z.boolean(),
  /** Calendar days from order to receipt, where it is not on the shelf or runs out; null is not stated. */
  leadTimeDays: days.nullable(),
  minimumOrderM2: z.number().positive('must be greater than 0 m2').max(1_000_000).nullable(),
  note: textSchema,
})

export type ShelfRow = z.infer<typeof shelfRowSchema>
