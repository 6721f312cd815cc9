import { z } from 'zod'
import { designSchema } from '@/lib/engine/design'
import { RELEASE_PURPOSES } from '@/lib/review'
import { nameSchema, onRevision, optionalTextSchema, recordIdSchema, requestKeySchema, saidTextSchema } from './common'
import { confirmationFields, confirmedReasonFields } from './confirmation'

const labelSchema = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(20, 'is longer than 20 characters')
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'holds a control character')

/** Where a new revision's design comes from. */
export const revisionOriginSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('starting-construction'), constructionId: z.string().min(1).max(60) }),
  z.strictObject({ kind: z.literal('blank') }),
  /** The text of a design document, as it lies in the file. */
  z.strictObject({ kind: z.literal('import'), designText: z.string().min(1, 'is empty') }),
  /** Of this project, or of another one in which the person makes content: its design alone then. */
  z.strictObject({ kind: z.literal('copy'), revisionId: recordIdSchema }),
  /** One that the workspace keeps. */
  z.strictObject({ kind: z.literal('kept-construction'), entryId: recordIdSchema }),
])

export const newRevisionInput = z.strictObject({
  projectId: recordIdSchema,
  label: labelSchema,
  origin: revisionOriginSchema,
  requestKey: requestKeySchema,
})
export type NewRevisionInput = z.infer<typeof newRevisionInput>

/** `seenVersion` is the view's `designVersion`. References inside the design are checked when it is saved. */
export const saveDesignInput = z.strictObject({ ...onRevision, design: designSchema })
export type SaveDesignInput = z.infer<typeof saveDesignInput>

/** Replaces the design by an imported document. */
export const importDesignInput = z.strictObject({ ...onRevision, designText: z.string().min(1, 'is empty') })
export type ImportDesignInput = z.infer<typeof importDesignInput>

export const shareRevisionInput = z.strictObject({
  revisionId: recordIdSchema,
  companyId: recordIdSchema,
  requestKey: requestKeySchema,
})
export type ShareRevisionInput = z.infer<typeof shareRevisionInput>

export const evaluateAgainInput = z.strictObject({ revisionId: recordIdSchema, requestKey: requestKeySchema })
export type EvaluateAgainInput = z.infer<typeof evaluateAgainInput>

export const advanceInput = z.strictObject({ ...onRevision, note: optionalTextSchema.optional() })
export type AdvanceInput = z.infer<typeof advanceInput>

export const sendBackInput = z.strictObject({ ...onRevision, reason: saidTextSchema })
export type SendBackInput = z.infer<typeof sendBackInput>

export const withdrawInput = z.strictObject({ ...onRevision, reason: saidTextSchema, ...confirmationFields })
export type WithdrawInput = z.infer<typeof withdrawInput>

export const signInputSchema = z.strictObject({
  ...onRevision,
  /** Hash of the content that was shown beside the statement. */
  contentHash: z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256'),
  capacity: nameSchema,
  statement: saidTextSchema,
  ...confirmationFields,
})
export type SignInput = z.infer<typeof signInputSchema>

/** The signer withdraws their own signature. */
export const withdrawSignatureInput = z.strictObject({
  signatureId: recordIdSchema,
  ...confirmedReasonFields,
})
export type WithdrawSignatureInput = z.infer<typeof withdrawSignatureInput>

export const releaseInput = z.strictObject({
  ...onRevision,
  ...confirmationFields,
  /** With a limit of quantity or date. */
  isConditional: z.boolean().optional(),
  purpose: z
    .enum(RELEASE_PURPOSES, 'choose what it may be used for')
    .nullable()
    .refine((purpose) => purpose !== null, 'choose what it may be used for'),
  quantityLimit: z
    .number()
    .int('must be a whole number')
    .min(1, 'must be at least 1')
    .max(1_000_000_000)
    .nullable()
    .optional(),
  /** The last day; empty without an end. */
  validUntil: z.union([z.literal(''), z.iso.date('is not a date such as 2027-03-01')]).optional(),
  conditions: optionalTextSchema.optional(),
  changeNumber: z.string().trim().max(60, 'is longer than 60 characters').optional(),
  /** Why there is this revision: needed where it replaces an earlier issue. */
  reason: optionalTextSchema.optional(),
  /** From which lot, serial number or date it takes effect. */
  effectivity: optionalTextSchema.optional(),
})
export type ReleaseInput = z.infer<typeof releaseInput>

/** Remedies for a bend of a draft, which need not be saved; by one fabricator's panels, rates and shelf, or by none. */
export const remediesInput = z.strictObject({
  revisionId: recordIdSchema,
  design: designSchema,
  bendId: z.string().min(1, 'is missing').max(200),
  /** Changes of the inside radius are not tried. */
  isRadiusFixed: z.boolean(),
  companyId: recordIdSchema.nullable(),
})
export type RemediesInput = z.infer<typeof remediesInput>

/** A small set of changes with which nothing calculated fails, for a draft, which need not be saved. */
export const wayOutInput = remediesInput.omit({ bendId: true })
export type WayOutInput = z.infer<typeof wayOutInput>
