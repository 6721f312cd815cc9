import { z } from 'zod'
import { ATTENDANCES, NEED_METHODS } from '@/lib/review'
import {
  nameSchema,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
  seenVersionSchema,
} from './common'
import { dueFields, ITS_DATE, needsItsDate } from './review-actions'

const dayField = z.iso.date('is not a date such as 2027-03-01')

const decisionSchema = z.strictObject({
  text: saidTextSchema,
  /** `none`; `action`, which it makes; or `item <id>` or `thread <id>`, which it settles. */
  points: z.string().max(120),
  /** Of the action that it makes. */
  action: z.strictObject(dueFields).refine(needsItsDate, ITS_DATE).optional(),
})

export const recordMeetingInput = z.strictObject({
  revisionId: recordIdSchema,
  title: nameSchema,
  heldOn: dayField,
  agenda: optionalTextSchema,
  people: z
    .array(z.strictObject({ userId: recordIdSchema, attendance: z.enum(ATTENDANCES) }))
    .max(100, 'must be at most 100')
    .refine((people) => people.some(({ attendance }) => attendance === 'present'), 'nobody was present')
    .refine((people) => new Set(people.map(({ userId }) => userId)).size === people.length, 'names somebody twice'),
  decisions: z.array(decisionSchema).max(50, 'must be at most 50'),
  requestKey: requestKeySchema,
})
export type RecordMeetingInput = z.infer<typeof recordMeetingInput>

export const stateNeedInput = z.strictObject({
  revisionId: recordIdSchema,
  text: saidTextSchema,
  itemIds: z.array(z.string().max(80)).max(20, 'must be at most 20'),
  method: z.enum(NEED_METHODS, 'choose how it is shown'),
  /** Empty where no day is planned. */
  plannedOn: z.union([z.literal(''), dayField]),
  requestKey: requestKeySchema,
})
export type StateNeedInput = z.infer<typeof stateNeedInput>

const needFields = { needId: recordIdSchema, seenVersion: seenVersionSchema, requestKey: requestKeySchema }

/** What came of it; the result file is attached apart. */
export const reportNeedInput = z.strictObject({ ...needFields, result: saidTextSchema })
export type ReportNeedInput = z.infer<typeof reportNeedInput>

export const acceptNeedInput = z.strictObject({ ...needFields, reason: optionalTextSchema })
export type AcceptNeedInput = z.infer<typeof acceptNeedInput>

export const dropNeedInput = z.strictObject({ ...needFields, reason: saidTextSchema })
export type DropNeedInput = z.infer<typeof dropNeedInput>
