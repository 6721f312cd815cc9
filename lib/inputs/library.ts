import { z } from 'zod'
import { newMaterialSchema } from '@/lib/engine/design'
import { nameSchema, onRevision, recordIdSchema, requestKeySchema, saidTextSchema, seenVersionSchema } from './common'

/** A material of the workspace's own as a whole; `entryId` and `seenVersion` are null and 0 for a new one. */
export const saveOwnMaterialInput = z.strictObject({
  entryId: recordIdSchema.nullable(),
  seenVersion: seenVersionSchema,
  material: newMaterialSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type SaveOwnMaterialInput = z.infer<typeof saveOwnMaterialInput>

/** Offered no longer; designs keep the copies that they have. */
export const withdrawLibraryEntryInput = z.strictObject({
  entryId: recordIdSchema,
  seenVersion: seenVersionSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type WithdrawLibraryEntryInput = z.infer<typeof withdrawLibraryEntryInput>

/** Keeps layers, zones and bends of a revision's design for other projects; `seenVersion` is the design's. */
export const keepConstructionInput = z.strictObject({
  ...onRevision,
  name: nameSchema,
  /** When one would choose it. */
  purpose: saidTextSchema.pipe(z.string().max(400, 'is longer than 400 characters')),
})
export type KeepConstructionInput = z.infer<typeof keepConstructionInput>
