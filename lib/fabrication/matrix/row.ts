import { z } from 'zod'
import { textSchema } from '@/lib/engine'
import { CONSTRUCTION_FAMILIES } from '../construction-family'

const numberLimit = z.number('must be a number').min(-1_000_000).max(1_000_000)
const choiceLimit = z.array(z.string().trim().min(1).max(120)).min(1, 'names no choice').max(60)
const limit = z.union([numberLimit, choiceLimit]).nullable()
const layerCount = z
  .int('must be a whole number')
  .min(1, 'must be at least 1')
  .max(200, 'must be at most 200')
  .nullable()
const foilUm = z.number().positive('must be greater than 0 um').max(2000, 'must be at most 2000 um').nullable()

/**
 * One line of a capability matrix. What it says holds for the designs that meet its conditions; a condition that is null
 * is none.
 */
export const matrixRowSchema = z.strictObject({
  /** Key of the dictionary of trade parameters. */
  parameter: z.string().min(1).max(80),
  /** Up to here it is everyday work: a number in the parameter's unit, or the choices that are. */
  comfortable: limit,
  /** Up to here it can be built, at a price; for choices, those besides the comfortable ones. */
  stretch: limit,
  layersFrom: layerCount,
  layersTo: layerCount,
  /** Foil as bought, of the layer that the value lies on. */
  foilFromUm: foilUm,
  foilToUm: foilUm,
  construction: z.enum(CONSTRUCTION_FAMILIES).nullable(),
  note: textSchema,
})

export type MatrixRow = z.infer<typeof matrixRowSchema>
