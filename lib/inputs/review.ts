import { z } from 'zod'
import { LAYER_ROLES } from '@/lib/artwork'
import { ANCHOR_KINDS } from '@/lib/review'
import {
  nameSchema,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
  seenVersionSchema,
} from './common'
import { optionalConfirmationFields } from './confirmation'
import { doneInput } from './done'

const itemIdSchema = z.string().min(1, 'is missing').max(80)

/** `seenVersion` is the item's `answerVersion`; 0 where the item has no answer yet. */
export const answerItemInput = z.strictObject({
  revisionId: recordIdSchema,
  itemId: itemIdSchema,
  seenVersion: seenVersionSchema,
  state: z.enum(['open', 'meets', 'concern', 'not-applicable']),
  reason: optionalTextSchema,
  /** Where the person looked; needed where the answer states what they saw. Absent otherwise, or blank. */
  lookedAt: z
    .strictObject({
      sheet: z.string().trim().max(200),
      layer: z.string().trim().max(200),
      /** SHA-256 of artwork of the revision, or of a file attached to the item; empty for none. */
      sha256: z.string().regex(/^([0-9a-f]{64})?$/, 'is not the hash of a file'),
    })
    .optional(),
  requestKey: requestKeySchema,
})
export type AnswerItemInput = z.infer<typeof answerItemInput>

/** One answer to several items. An answer that has to say where somebody looked is given item by item. */
export const answerItemsInput = z.strictObject({
  revisionId: recordIdSchema,
  items: z
    .array(z.strictObject({ itemId: itemIdSchema, seenVersion: seenVersionSchema }))
    .min(1, 'choose at least one item')
    .max(100, 'are more than 100')
    .refine((items) => new Set(items.map(({ itemId }) => itemId)).size === items.length, 'names an item twice'),
  state: z.enum(['open', 'meets', 'concern', 'not-applicable']),
  reason: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type AnswerItemsInput = z.infer<typeof answerItemsInput>

export const proposeWaiverInput = z.strictObject({
  revisionId: recordIdSchema,
  itemId: itemIdSchema,
  reason: saidTextSchema,
  /** What may happen to the parts because of it. */
  consequence: optionalTextSchema.optional(),
  /** The last day on which it counts; empty without an end. */
  validUntil: z.union([z.literal(''), z.iso.date('is not a date such as 2027-03-01')]).optional(),
  quantityLimit: z
    .number()
    .int('must be a whole number')
    .min(1, 'must be at least 1')
    .max(1_000_000_000)
    .nullable()
    .optional(),
  needsCustomerConsent: z.boolean().optional(),
  requestKey: requestKeySchema,
})
export type ProposeWaiverInput = z.infer<typeof proposeWaiverInput>

export const decideWaiverInput = z
  .strictObject({
    waiverId: recordIdSchema,
    decision: z.enum(['approve', 'decline'], 'choose approve or decline'),
    reason: optionalTextSchema,
    /** Who of the customer agreed, and where that is on record: needed where the waiver asks for it. */
    customerConsent: optionalTextSchema.optional(),
    ...optionalConfirmationFields,
    requestKey: requestKeySchema,
  })
  .refine((input) => input.decision === 'approve' || input.reason !== '', {
    path: ['reason'],
    message: 'is empty: state why the waiver is declined',
  })
  .refine((input) => input.decision === 'decline' || (input.password ?? '') !== '', {
    path: ['password'],
    message: 'is empty: approving a waiver requires your password',
  })
export type DecideWaiverInput = z.infer<typeof decideWaiverInput>

/** 10 m either way: no circuit is longer, and a slip of units shows. */
const coordinateSchema = z.number('is not a number').min(-10_000, 'is below -10 m').max(10_000, 'is above 10 m')

export const anchorSchema = z
  .strictObject({
    kind: z.enum(ANCHOR_KINDS).exclude(['proposal']),
    /** Of the item, file or place, as `ANCHOR_KINDS` says it; empty for the revision as a whole. */
    id: z.string().max(250),
    /** A place on an artwork file, in mm, in the file's own coordinates. */
    place: z.strictObject({ xMm: coordinateSchema, yMm: coordinateSchema }).optional(),
  })
  .refine(({ kind, place }) => place === undefined || kind === 'artwork', {
    path: ['place'],
    message: 'applies to artwork only',
  })

/** Who is to answer, and by when; empty where nobody in particular is asked, or no day is known. */
const wantedFields = {
  ownerId: z.union([z.literal(''), recordIdSchema]),
  dueOn: z.union([z.literal(''), z.iso.date('is not a date such as 2027-03-01')]),
}

export const openThreadInput = z.strictObject({
  revisionId: recordIdSchema,
  anchor: anchorSchema,
  kind: z.enum(['note', 'should-change', 'must-change', 'engineering-query']),
  title: nameSchema,
  text: saidTextSchema,
  /** Which fabricator takes part; absent keeps the thread within the team. A fabricator's own is always used. */
  companyId: recordIdSchema.optional(),
  ownerId: wantedFields.ownerId.optional(),
  dueOn: wantedFields.dueOn.optional(),
  requestKey: requestKeySchema,
})
export type OpenThreadInput = z.infer<typeof openThreadInput>

/** Who is to answer a thread, and by when. */
export const assignThreadInput = z.strictObject({
  threadId: recordIdSchema,
  seenVersion: seenVersionSchema,
  ...wantedFields,
  requestKey: requestKeySchema,
})
export type AssignThreadInput = z.infer<typeof assignThreadInput>

/** A note of the drawing, in the words that were agreed in a thread. `seenVersion` is the design's. */
export const noteOnDrawingInput = z.strictObject({
  threadId: recordIdSchema,
  seenVersion: seenVersionSchema,
  text: saidTextSchema,
  requestKey: requestKeySchema,
})
export type NoteOnDrawingInput = z.infer<typeof noteOnDrawingInput>

export const replyInput = z.strictObject({
  threadId: recordIdSchema,
  text: saidTextSchema,
  /** Marks the reply as the answer to what was asked. */
  isAnswer: z.boolean().default(false),
  requestKey: requestKeySchema,
})
export type ReplyInput = z.infer<typeof replyInput>

/** A must-change or an engineering query needs a reason and `done`; a note, or a change that was only advised, needs neither. */
export const closeThreadInput = z.strictObject({
  threadId: recordIdSchema,
  seenVersion: seenVersionSchema,
  reason: optionalTextSchema,
  done: doneInput.optional(),
  requestKey: requestKeySchema,
})
export type CloseThreadInput = z.infer<typeof closeThreadInput>

export const reopenThreadInput = z.strictObject({
  threadId: recordIdSchema,
  seenVersion: seenVersionSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type ReopenThreadInput = z.infer<typeof reopenThreadInput>

export const editCommentInput = z.strictObject({
  commentId: recordIdSchema,
  seenVersion: seenVersionSchema,
  text: saidTextSchema,
  requestKey: requestKeySchema,
})
export type EditCommentInput = z.infer<typeof editCommentInput>

/** A file's content, at once or as it arrives. */
const fileBytesSchema = z.custom<Uint8Array | AsyncIterable<Uint8Array>>(
  (value) =>
    typeof value === 'object' && value !== null && (value instanceof Uint8Array || Symbol.asyncIterator in value),
  'is not a file',
)

/** A file that was sent; `bytes` are the file's content. */
const fileFields = {
  fileName: z.string().trim().min(1, 'is empty').max(200, 'is longer than 200 characters'),
  bytes: fileBytesSchema,
}

/** Beside an item's answer, a comment or an action. */
export const attachFileInput = z.strictObject({
  revisionId: recordIdSchema,
  target: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('item'), itemId: itemIdSchema }),
    z.strictObject({ kind: z.literal('comment'), commentId: recordIdSchema }),
    z.strictObject({ kind: z.literal('action'), actionId: recordIdSchema }),
    z.strictObject({ kind: z.literal('need'), needId: recordIdSchema }),
  ]),
  ...fileFields,
  requestKey: requestKeySchema,
})
export type AttachFileInput = z.infer<typeof attachFileInput>

export const addArtworkInput = z.strictObject({
  revisionId: recordIdSchema,
  ...fileFields,
  requestKey: requestKeySchema,
})
export type AddArtworkInput = z.infer<typeof addArtworkInput>

/** The artwork of a revision as a whole. */
export const artworkRevisionInput = z.strictObject({ revisionId: recordIdSchema, requestKey: requestKeySchema })
export type ArtworkRevisionInput = z.infer<typeof artworkRevisionInput>

/** What a file of the artwork, or of an archive in it, is for. `role` null: what the files say counts again. */
export const setArtworkRoleInput = z.strictObject({
  revisionId: recordIdSchema,
  fileName: z.string().min(1, 'is empty').max(400, 'is longer than 400 characters'),
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'is no SHA-256'),
  role: z.enum(LAYER_ROLES).nullable(),
  side: z.enum(['top', 'bottom', 'inner']).nullable(),
  /** Of copper, 1 at the top. */
  layerNumber: z.int('must be a whole number').min(1, 'counts from 1').max(64, 'is at most 64').nullable(),
  requestKey: requestKeySchema,
})
export type SayArtworkRoleInput = z.infer<typeof setArtworkRoleInput>

export const removeFileInput = z.strictObject({ fileId: recordIdSchema, requestKey: requestKeySchema })
export type RemoveFileInput = z.infer<typeof removeFileInput>

/** `companyId` absent: the workspace's limit. `value` null takes the limit away, so that the next owner's holds. */
export const limitInput = z.strictObject({
  companyId: recordIdSchema.optional(),
  key: z.string().min(1).max(80),
  /** The limit's `version`; 0 where it is not set yet. */
  seenVersion: seenVersionSchema,
  value: z.number().nullable(),
  note: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type LimitInput = z.infer<typeof limitInput>
