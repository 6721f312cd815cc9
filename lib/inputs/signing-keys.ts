import { z } from 'zod'
import { requestKeySchema, saidTextSchema } from './common'
import { confirmationFields } from './confirmation'

const daySchema = z.iso.date('is not a day such as 2027-03-31')

/** `compromisedOn` is the first day on which somebody else may have had the key in use; empty where nobody has. */
export const rotateSigningKeyInput = z.strictObject({
  reason: saidTextSchema,
  compromisedOn: z.union([z.literal(''), daySchema]).default(''),
  ...confirmationFields,
  requestKey: requestKeySchema,
})
export type RotateSigningKeyInput = z.infer<typeof rotateSigningKeyInput>

/** Of a key that was retired before. */
export const reportKeyCompromisedInput = z.strictObject({
  fingerprint: z.string().regex(/^[0-9a-f]{64}$/, 'is not the fingerprint of a key'),
  compromisedOn: daySchema,
  reason: saidTextSchema,
  ...confirmationFields,
  requestKey: requestKeySchema,
})
export type ReportKeyCompromisedInput = z.infer<typeof reportKeyCompromisedInput>
