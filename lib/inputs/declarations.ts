import { z } from 'zod'
import { DECLARATION_VERDICTS } from '@/lib/review'
import {
  onRevision,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
  seenVersionSchema,
} from './common'
import { confirmationFields } from './confirmation'
import { doneInput } from './done'
import { dueFields, ITS_DATE, needsItsDate } from './review-actions'

const conditionSchema = z.strictObject({
  text: saidTextSchema,
  /** Path of a field of the design; empty for words alone. */
  field: z.string().max(300).default(''),
  /** What that field should be, exactly; a range belongs in the text. */
  value: z.string().trim().max(60, 'is longer than 60 characters').default(''),
})

export const declarationInput = z
  .strictObject({
    ...onRevision,
    verdict: z.enum(DECLARATION_VERDICTS, 'choose whether it can be built'),
    /** Why it cannot be built. A condition is a line of its own, and a remark belongs in a thread. */
    note: optionalTextSchema.default(''),
    conditions: z.array(conditionSchema).max(30, 'has more than 30 lines').default([]),
    ...confirmationFields,
  })
  .refine(({ verdict, note }) => verdict !== 'not-buildable' || note !== '', {
    path: ['note'],
    message: 'is empty: state what cannot be built',
  })
  .refine(({ verdict, note }) => verdict === 'not-buildable' || note === '', {
    path: ['note'],
    message: 'is for what cannot be built: state each condition on a line of its own, and open a thread for a remark',
  })
  .refine(({ verdict, conditions }) => verdict !== 'with-conditions' || conditions.length > 0, {
    path: ['conditions'],
    message: 'is empty: state each condition on a line of its own',
  })
  .refine(({ verdict, conditions }) => verdict === 'with-conditions' || conditions.length === 0, {
    path: ['conditions'],
    message: 'must be empty unless it is buildable with conditions',
  })
  .refine(({ conditions }) => conditions.every(({ field, value }) => field !== '' || value === ''), {
    path: ['conditions'],
    message: 'states a value without the field that it is for',
  })
export type DeclarationInput = z.infer<typeof declarationInput>

/** `seenVersion` is the condition's. */
export const decideConditionInput = z
  .strictObject({
    conditionId: recordIdSchema,
    seenVersion: seenVersionSchema,
    decision: z.enum(['take-over', 'decline', 'action'], 'choose what to do about it'),
    /** Why it is declined; a remark otherwise. */
    reason: optionalTextSchema.default(''),
    /** What was changed, where it is taken over: changes of the design or an accepted proposal. */
    done: doneInput.optional(),
    /** What is to be done, where it becomes an action. */
    action: z
      .strictObject({ text: saidTextSchema, ...dueFields })
      .refine(needsItsDate, ITS_DATE)
      .optional(),
    requestKey: requestKeySchema,
  })
  .refine(({ decision, reason }) => decision !== 'decline' || reason !== '', {
    path: ['reason'],
    message: 'is empty: state why the condition is declined',
  })
  .refine(({ decision, done }) => decision !== 'take-over' || done?.kind === 'fields' || done?.kind === 'proposal', {
    path: ['done'],
    message: 'must name a change of the design or an accepted proposal',
  })
  .refine(({ decision, action }) => (decision === 'action') === (action !== undefined), {
    path: ['action'],
    message: 'is missing: state what is to be done, by whom and when',
  })
export type DecideConditionInput = z.infer<typeof decideConditionInput>

/** `seenVersion` is the revision's. The company reads the reason. */
export const takeOffReleaseInput = z.strictObject({
  ...onRevision,
  companyId: recordIdSchema,
  reason: saidTextSchema,
})
export type TakeOffReleaseInput = z.infer<typeof takeOffReleaseInput>

export const putBackOnReleaseInput = z.strictObject({
  revisionId: recordIdSchema,
  companyId: recordIdSchema,
  requestKey: requestKeySchema,
})
export type PutBackOnReleaseInput = z.infer<typeof putBackOnReleaseInput>
