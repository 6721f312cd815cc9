import { z } from 'zod'
import { dateSchema } from '@/lib/engine/design'
import { DISPLAY_LENGTH_UNITS } from '@/lib/engine/units'
import { sheetKindSchema, TABLE_SHEET_KINDS } from '@/lib/fabrication'
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

export const SHEET_FILE_FORMATS = ['csv', 'xlsx'] as const
/** Sheets that are lists of rows, and so may come from a file and go into one. */
const tableKindSchema = z.enum(TABLE_SHEET_KINDS)

/** A file of a sheet's rows, by itself in place of what was kept, or on top of it. */
const sheetFileFields = {
  companyId: recordIdSchema,
  kind: tableKindSchema,
  fileName: z.string().trim().min(1, 'is missing').max(200, 'is longer than 200 characters'),
  bytes: z.instanceof(Uint8Array<ArrayBuffer>, { error: 'is not a file' }),
  mode: z.enum(['replace', 'add-and-change']),
}

/** Shows what a file would do. Nothing is written, so the key of the request is of no account. */
export const previewSheetFileInput = z.strictObject({ ...sheetFileFields, requestKey: requestKeySchema })
export type PreviewSheetFileInput = z.infer<typeof previewSheetFileInput>

/** Takes the file's rows as a new version. */
export const importSheetFileInput = z.strictObject({
  ...sheetFileFields,
  /** Bad rows are left out, as the preview named them; without it a file with a bad row is refused. */
  leaveOutBadRows: z.boolean(),
  seenVersion: seenVersionSchema,
  issuedOn: dateSchema,
  note: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type ImportSheetFileInput = z.infer<typeof importSheetFileInput>

export const exportSheetFileInput = z.strictObject({
  companyId: recordIdSchema,
  kind: tableKindSchema,
  format: z.enum(SHEET_FILE_FORMATS),
  /** Unit of the lengths in it; without one, the sheet's own. */
  unit: z.enum(DISPLAY_LENGTH_UNITS).optional(),
})
export type ExportSheetFileInput = z.infer<typeof exportSheetFileInput>

const sheetVersionSchema = z.coerce.number().int('must be a whole number').min(1)

/** One version of a sheet, and the one that it is held against; null is the one in force, or the one before it. */
export const sheetVersionInput = z.strictObject({
  companyId: recordIdSchema,
  kind: tableKindSchema,
  version: sheetVersionSchema,
  against: sheetVersionSchema.nullable(),
})

/** Saves what an earlier version holds as a new one; those between stay. */
export const restoreSheetVersionInput = z.strictObject({
  companyId: recordIdSchema,
  kind: tableKindSchema,
  version: sheetVersionSchema,
  seenVersion: seenVersionSchema,
  issuedOn: dateSchema,
  note: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type RestoreSheetVersionInput = z.infer<typeof restoreSheetVersionInput>
