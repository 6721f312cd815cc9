import { z } from 'zod'
import { recordIdSchema } from './common'

/** A file of a revision's drawing: all sheets as one PDF, or one sheet as SVG. */
/** The trail of a revision as a file. */
export const trailFileInput = z.strictObject({ revisionId: recordIdSchema, format: z.enum(['csv', 'pdf']) })

export const drawingFileInput = z.strictObject({
  revisionId: recordIdSchema,
  format: z.enum(['pdf', 'svg', 'paper-a4', 'paper-letter', 'glb', 'step', 'step-flat']),
  /** Counted from 1; of SVG only. */
  sheet: z.coerce.number().int('is not a whole number').min(1, 'must be 1 or more').max(999, 'must be at most 999'),
})

/** A request for quotation as a file, to one of the fabricators with whom the revision is shared. */
export const quotationFileInput = z.strictObject({
  revisionId: recordIdSchema,
  format: z.enum(['pdf', 'xlsx', 'json']),
  companyId: recordIdSchema.nullable(),
})
