import { z } from 'zod'
import { findFlexTestIssues, flexTestRowSchema, MAX_FLEX_TEST_ROWS } from '@/lib/engine/flex-tests'

/** Flex tests that a fabricator made: what they give replaces defaults in reviews that are shown the matrix. */
export const flexTestContentSchema = z
  .strictObject({ rows: z.array(flexTestRowSchema).max(MAX_FLEX_TEST_ROWS, `at most ${MAX_FLEX_TEST_ROWS} specimens`) })
  .superRefine(({ rows }, context) => {
    for (const { row, field, code, message } of findFlexTestIssues(rows)) {
      context.addIssue({ code: 'custom', path: ['rows', row, field], message, params: { code } })
    }
  })
export type FlexTestContent = z.infer<typeof flexTestContentSchema>
