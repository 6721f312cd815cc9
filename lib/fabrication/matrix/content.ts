import { z } from 'zod'
import { findMatrixIssues } from './problems'
import { matrixRowSchema } from './row'

/** More rows than any matrix has; it bounds the work of one assessment. */
export const MAX_MATRIX_ROWS = 10_000

export const matrixContentSchema = z
  .strictObject({ rows: z.array(matrixRowSchema).max(MAX_MATRIX_ROWS, `at most ${MAX_MATRIX_ROWS} rows`) })
  .superRefine(({ rows }, context) => {
    for (const { row, field, code, message } of findMatrixIssues(rows)) {
      context.addIssue({ code: 'custom', path: ['rows', row, field], message, params: { code } })
    }
  })
export type MatrixContent = z.infer<typeof matrixContentSchema>
