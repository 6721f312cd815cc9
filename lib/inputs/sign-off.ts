import { z } from 'zod'
import { SIGN_OFF_RULES, type SignOffRule } from '@/lib/review'
import { areDifferent, requiredSignaturesSchema } from './accounts'
import {
  nameSchema,
  onRevision,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
  seenVersionSchema,
} from './common'
import { confirmationFields, confirmedReasonFields } from './confirmation'

const choiceOf = <K extends SignOffRule>(key: K) => {
  type Value = (typeof SIGN_OFF_RULES)[K]['choices'][number]['value']
  return z.enum(SIGN_OFF_RULES[key].choices.map(({ value }) => value) as [Value, ...Value[]], 'choose one')
}

const policyFields = {
  waiverBlocking: choiceOf('waiverBlocking'),
  waiverMajor: choiceOf('waiverMajor'),
  waiverMinor: choiceOf('waiverMinor'),
  review: choiceOf('review'),
  authorSigns: choiceOf('authorSigns'),
  authorReleases: choiceOf('authorReleases'),
  differences: choiceOf('differences'),
  requiredSignatures: requiredSignaturesSchema,
  requiredCapacities: z
    .array(z.strictObject({ name: nameSchema }))
    .max(5, 'must be at most 5')
    .refine((list) => areDifferent(list.map(({ name }) => name)), 'names a capacity twice'),
}

/** `seenVersion` counts the project's policies. What is loosened by it needs the reason; it is asked for always. */
export const setSignOffPolicyInput = z.strictObject({
  projectId: recordIdSchema,
  seenVersion: seenVersionSchema,
  ...policyFields,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type SetSignOffPolicyInput = z.infer<typeof setSignOffPolicyInput>

/** Puts a revision under the project's present policy. `seenVersion` is the revision's, `toVersion` the policy's. */
export const followSignOffPolicyInput = z.strictObject({
  ...onRevision,
  toVersion: seenVersionSchema,
  reason: saidTextSchema,
})
export type FollowSignOffPolicyInput = z.infer<typeof followSignOffPolicyInput>

export const grantCapacityInput = z.strictObject({
  projectId: recordIdSchema,
  userId: recordIdSchema,
  /** As a signature will name it. */
  capacity: nameSchema,
  /** What the person answers for in it. */
  statement: saidTextSchema,
  requestKey: requestKeySchema,
})
export type GrantCapacityInput = z.infer<typeof grantCapacityInput>

export const withdrawCapacityInput = z.strictObject({
  grantId: recordIdSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type WithdrawCapacityInput = z.infer<typeof withdrawCapacityInput>

/** `key` names the difference by its words and numbers: one that reads otherwise by now is another. */
export const acknowledgeDifferenceInput = z.strictObject({
  revisionId: recordIdSchema,
  seenVersion: seenVersionSchema,
  key: z.string().length(64, 'is not a difference of this revision'),
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type AcknowledgeDifferenceInput = z.infer<typeof acknowledgeDifferenceInput>

export const takeUpDifferenceInput = z.strictObject({
  acknowledgementId: recordIdSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type TakeUpDifferenceInput = z.infer<typeof takeUpDifferenceInput>

export const declareReviewedInput = z.strictObject({ ...onRevision, note: optionalTextSchema, ...confirmationFields })
export type DeclareReviewedInput = z.infer<typeof declareReviewedInput>

export const withdrawReviewInput = z.strictObject({ reviewId: recordIdSchema, ...confirmedReasonFields })
export type WithdrawReviewInput = z.infer<typeof withdrawReviewInput>
