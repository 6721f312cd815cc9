import { z } from 'zod'
import {
  itemChangeSchema,
  MAX_CATALOGUE_CHARACTERS,
  newOwnItemSchema,
  newProfileSchema,
  ownItemSchema,
  profileSchema,
} from '@/lib/engine/catalogue'
import { flexTestRowSchema, MAX_FLEX_TEST_ROWS } from '@/lib/engine/flex-tests'
import { onRevision, recordIdSchema, requestKeySchema, saidTextSchema, seenVersionSchema } from './common'

/** Of one project; more is a mistake of a program. */
const MAX_FOLLOWED = 20
const profileIdSchema = z.string().min(1).max(80)

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
  ...onRevision,
  /** The newest version, as it was shown. */
  toVersion: z.int().nonnegative(),
  /** Profiles that the project follows, as they were shown. */
  toProfileIds: z.array(profileIdSchema).max(MAX_FOLLOWED),
})
export type UpdateTemplateInput = z.infer<typeof updateTemplateInput>

/** A profile of the workspace's own; its id is made by the server. */
export const addProfileInput = z.strictObject({ ...editBase, profile: newProfileSchema, reason: saidTextSchema })
export type AddProfileInput = z.infer<typeof addProfileInput>

export const changeProfileInput = z.strictObject({ ...editBase, profile: profileSchema, reason: saidTextSchema })
export type ChangeProfileInput = z.infer<typeof changeProfileInput>

/** Refused while a project follows it. */
export const removeProfileInput = z.strictObject({ ...editBase, profileId: profileIdSchema, reason: saidTextSchema })
export type RemoveProfileInput = z.infer<typeof removeProfileInput>

/** The profiles that a project follows from now on; `seenVersion` counts the project's choices. */
export const chooseProfilesInput = z.strictObject({
  projectId: recordIdSchema,
  seenVersion: seenVersionSchema,
  profileIds: z.array(profileIdSchema).max(MAX_FOLLOWED, `holds more than ${MAX_FOLLOWED} profiles`),
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type ChooseProfilesInput = z.infer<typeof chooseProfilesInput>

const catalogueTextSchema = z
  .string()
  .min(1, 'is empty')
  .max(MAX_CATALOGUE_CHARACTERS, `is longer than ${MAX_CATALOGUE_CHARACTERS} characters`)

/** A catalogue out of a file, before anything is changed. */
export const previewCatalogueInput = z.strictObject({ text: catalogueTextSchema, requestKey: requestKeySchema })
export type PreviewCatalogueInput = z.infer<typeof previewCatalogueInput>

/** In place of the workspace's catalogue; `seenVersion` is the version that the preview was made against. */
export const importCatalogueInput = z.strictObject({ ...editBase, text: catalogueTextSchema, reason: saidTextSchema })
export type ImportCatalogueInput = z.infer<typeof importCatalogueInput>
