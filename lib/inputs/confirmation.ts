import { z } from 'zod'
import { codeSchema, passkeyAnswerInput, tokenSchema } from './accounts'
import { requestKeySchema, saidTextSchema } from './common'

/** An answer to a challenge that was made for the signed-in person. */
const passkeyConfirmationSchema = z.strictObject({ token: tokenSchema, response: passkeyAnswerInput })

const secondFactorFields = {
  /** A one-time code or a recovery code; empty where the account has none, or a passkey stands in. */
  code: z.union([z.literal(''), codeSchema]).optional(),
  passkey: passkeyConfirmationSchema.optional(),
}

/** What signing, approving a waiver and releasing ask for: the person again, with the second factor where there is one. */
export const confirmationFields = { password: z.string().min(1, 'is empty').max(128), ...secondFactorFields }

/** What withdrawing such an act asks for. */
export const confirmedReasonFields = { reason: saidTextSchema, ...confirmationFields, requestKey: requestKeySchema }

/** The same where only some of the answers need it. */
export const optionalConfirmationFields = { password: z.string().max(128).optional(), ...secondFactorFields }

/** A passkey is asked for by the person who is signed in; there is nothing to say. */
export const passkeyConfirmationInput = z.strictObject({ requestKey: requestKeySchema })

export interface Confirmation {
  readonly password: string
  readonly code?: string | undefined
  readonly passkey?: z.infer<typeof passkeyConfirmationSchema> | undefined
}
