import { z } from 'zod'
import { dateSchema } from '@/lib/engine/design'
import { sheetKindSchema } from '@/lib/fabrication'
import { optionalTextSchema, recordIdSchema, requestKeySchema, seenVersionSchema } from './common'

/** A new version of a sheet. What it holds is read by the schema of its kind. */
export const saveSheetInput = z.strictObject({
  companyId: recordIdSchema,
  kind: sheetKindSchema,
  /** The version that was seen; 0 where there was none. */
  seenVersion: seenVersionSchema,
  issuedOn: dateSchema,
  note: optionalTextSchema,
  content: z.unknown(),
  requestKey: requestKeySchema,
})
export type SaveSheetInput = z.infer<typeof saveSheetInput>
