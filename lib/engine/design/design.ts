import { z } from 'zod'
import { planSchema } from '@/lib/plan'
import { assumedMarkSchema } from './assumed-mark'
import { bendSchema } from './bend'
import { briefSchema } from './brief'
import { constructionSchema } from './construction'
import { featuresSchema } from './features'
import { materialSchema } from './material'
import { nameSchema } from './primitives'

export const DESIGN_FORMAT = 'bendworthy-design'
/** Raised with every change of the document's shape; `lift/` brings older documents up to it. */
export const DESIGN_FORMAT_VERSION = 7

/**
 * The shape of the design document: what is stored, signed, exported and imported. Cross-references are checked by
 * `parseDesign`, which needs the material library; this schema alone is what JSON Schema can express.
 */
export const designSchema = z.strictObject({
  format: z.literal(DESIGN_FORMAT),
  formatVersion: z.literal(DESIGN_FORMAT_VERSION),
  name: nameSchema,
  brief: briefSchema,
  /** Materials of this design's own; the others are looked up in the library by id. */
  materials: z.array(materialSchema).max(200),
  construction: constructionSchema,
  bends: z.array(bendSchema).max(400, 'at most 400 bends'),
  features: featuresSchema,
  /** The part in plan; null where nobody has drawn it: dimensions are then those that were stated. */
  plan: planSchema.nullable(),
  /** Values that stand in the design and that nobody has confirmed yet. Documents from before there were such read as none. */
  assumed: z.array(assumedMarkSchema).max(5000).default([]),
})

export type Design = z.infer<typeof designSchema>

/** JSON Schema (draft 2020-12) of the design document, for other programs. */
export function getDesignJsonSchema(): object {
  return z.toJSONSchema(designSchema, { target: 'draft-2020-12', io: 'input' })
}
