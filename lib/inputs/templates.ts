import { z } from 'zod'
import { itemChangeSchema, newOwnItemSchema, ownItemSchema } from '@/lib/engine/catalogue'
import { flexTestRowSchema, MAX_FLEX_TEST_ROWS } from '@/lib/engine/flex-tests'
import { recordIdSchema, requestKeySchema, saidTextSchema, seenVersionSchema } from './common'

/** `seenVersion` is the version of the workspace's catalogue that the person saw; each change makes a new one. */
const editBase = { seenVersion: seenVersionSchema, requestKey: requestKeySchema }

/** Adds an own item; `item.id` is made by the server. */
export const addOwnItemInput = z.strictObject({ ...editBase, item: newOwnItemSchema })
export type AddOwnItemInput = z.infer<typeof addOwnItemInput>

export const changeOwnItemInput = z.strictObject({ ...editBase, item: ownItemSchema, reason: saidTextSchema })
export type ChangeOwnItemInput = z.infer<typeof changeOwnItemInput>

/** Reviews that go by an earlier version keep the item. */
export const removeOwnItemInput = z.strictObject({
  ...editBase,
  itemId: z.string().min(1).max(80),
  reason: saidTextSchema,
})
export type RemoveOwnItemInput = z.infer<typeof removeOwnItemInput>

/** Wording, roles, or whether it is asked at all. With nothing changed it goes back to what was delivered. */
export const changeDeliveredItemInput = z.strictObject({ ...editBase, change: itemChangeSchema })
export type ChangeDeliveredItemInput = z.infer<typeof changeDeliveredItemInput>

/** The workspace's flex tests as a whole, in place of those that were there. */
export const saveWorkspaceFlexTestsInput = z.strictObject({
  ...editBase,
  rows: z.array(flexTestRowSchema).max(MAX_FLEX_TEST_ROWS, `at most ${MAX_FLEX_TEST_ROWS} specimens`),
  reason: saidTextSchema,
})
export type SaveWorkspaceFlexTestsInput = z.infer<typeof saveWorkspaceFlexTestsInput>

/** Brings one review up to a version of the catalogue; `seenVersion` is the revision's. */
export const updateTemplateInput = z.strictObject({
  revisionId: recordIdSchema,
  seenVersion: seenVersionSchema,
  /** The newest version, as it was shown. */
  toVersion: z.int().positive(),
  requestKey: requestKeySchema,
})
export type UpdateTemplateInput = z.infer<typeof updateTemplateInput>
