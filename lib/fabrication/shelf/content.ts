import { z } from 'zod'
import { findShelfIssues } from './problems'
import { days, shelfRowSchema } from './row'

export const MAX_SHELF_ROWS = 5000

export const shelfContentSchema = z
  .strictObject({
    /** Calendar days from the last material's receipt to delivery of the parts; null is not stated. */
    buildTimeDays: days.nullable(),
    rows: z.array(shelfRowSchema).max(MAX_SHELF_ROWS, `at most ${MAX_SHELF_ROWS} rows`),
  })
  .superRefine(({ rows }, context) => {
    for (const { row, field, code, message } of findShelfIssues(rows)) {
      context.addIssue({ code: 'custom', path: ['rows', row, field], message, params: { code } })
    }
  })
export type ShelfContent = z.infer<typeof shelfContentSchema>
