import { z } from 'zod'
import { ACTION_DUES } from '@/lib/review'
import { optionalTextSchema, recordIdSchema, requestKeySchema, saidTextSchema, seenVersionSchema } from './common'

export const dueFields = {
  ownerId: recordIdSchema,
  due: z.enum(ACTION_DUES, 'choose what it is due before'),
  /** Empty where no day is known. */
  dueOn: z.union([z.literal(''), z.iso.date('is not a date such as 2027-03-01')]),
}

export const needsItsDate = (input: { due: string; dueOn: string }) => input.due !== 'date' || input.dueOn !== ''
export const ITS_DATE = { path: ['dueOn'], message: 'is empty: state the date' }

export const takeOnActionInput = z
  .strictObject({
    revisionId: recordIdSchema,
    /** What it comes from; the revision as a whole has no id. */
    origin: z.strictObject({
      kind: z.enum(['revision', 'thread', 'waiver', 'item']),
      id: z.string().max(80),
    }),
    text: saidTextSchema,
    ...dueFields,
    /** The fabricator that sees it; absent keeps it within the team. A thread's own is always used. */
    companyId: recordIdSchema.optional(),
    requestKey: requestKeySchema,
  })
  .refine(needsItsDate, ITS_DATE)
export type TakeOnActionInput = z.infer<typeof takeOnActionInput>

const actionFields = { actionId: recordIdSchema, seenVersion: seenVersionSchema, requestKey: requestKeySchema }

/** Another owner or another day. */
export const changeActionInput = z
  .strictObject({ ...actionFields, ...dueFields, reason: saidTextSchema })
  .refine(needsItsDate, ITS_DATE)
export type ChangeActionInput = z.infer<typeof changeActionInput>

/** What shows that it was done; files are attached apart. */
export const reportActionInput = z.strictObject({ ...actionFields, evidence: saidTextSchema })
export type ReportActionInput = z.infer<typeof reportActionInput>

export const closeActionInput = z.strictObject({ ...actionFields, reason: optionalTextSchema })
export type CloseActionInput = z.infer<typeof closeActionInput>

export const dropActionInput = z.strictObject({ ...actionFields, reason: saidTextSchema })
export type DropActionInput = z.infer<typeof dropActionInput>

export const reopenActionInput = z.strictObject({ ...actionFields, reason: saidTextSchema })
export type ReopenActionInput = z.infer<typeof reopenActionInput>
