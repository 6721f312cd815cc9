import { z } from 'zod'
import {
  emailSchema,
  nameSchema,
  newPasswordSchema,
  passwordSchema,
  recordIdSchema,
  requestKeySchema,
  seenVersionSchema,
} from './common'

/** First visit to an empty installation: the first admin, their team and their first project. */
export const firstAdminInput = z.strictObject({
  workspaceName: nameSchema,
  companyName: nameSchema,
  projectName: nameSchema,
  name: nameSchema,
  email: emailSchema,
  password: newPasswordSchema,
  /** The one-time code that the server prints on its console while nobody has an account. */
  setupCode: z.string().trim().min(1, 'is empty').max(40, 'is too long for a code'),
  requestKey: requestKeySchema,
})
export type FirstAdminInput = z.infer<typeof firstAdminInput>

export const signInInput = z.strictObject({ email: emailSchema, password: passwordSchema })
export type SignInInput = z.infer<typeof signInInput>

export const changePasswordInput = z.strictObject({
  currentPassword: passwordSchema,
  newPassword: newPasswordSchema,
  requestKey: requestKeySchema,
})
export type ChangePasswordInput = z.infer<typeof changePasswordInput>

/** Signs one device of the person out. */
export const endSessionInput = z.strictObject({ sessionId: recordIdSchema, requestKey: requestKeySchema })
export type EndSessionInput = z.infer<typeof endSessionInput>

/** A visitor who cannot sign in; the answer is the same for every address. */
export const askForResetInput = z.strictObject({ email: emailSchema, requestKey: requestKeySchema })
export type AskForResetInput = z.infer<typeof askForResetInput>

/** Of a link that works once. */
export const tokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'is not a link of ours')

export const tokenInput = z.strictObject({ token: tokenSchema, requestKey: requestKeySchema })
export type TokenInput = z.infer<typeof tokenInput>

export const setPasswordInput = z.strictObject({
  token: tokenSchema,
  newPassword: newPasswordSchema,
  requestKey: requestKeySchema,
})
export type SetPasswordInput = z.infer<typeof setPasswordInput>

/** The new password twice: a typing slip in a hidden field would lock its owner out. */
const again = { repeated: z.string() }
const isRepeated = (values: { readonly newPassword: string; readonly repeated: string }) =>
  values.newPassword === values.repeated
const notTheSame = { path: ['repeated'], message: 'is not the same' }

/** As the forms ask for it; what is sent has it once. */
export const changePasswordForm = changePasswordInput.extend(again).refine(isRepeated, notTheSame)
export const setPasswordForm = setPasswordInput.extend(again).refine(isRepeated, notTheSame)

export const changeAddressInput = z.strictObject({
  email: emailSchema,
  password: passwordSchema,
  requestKey: requestKeySchema,
})
export type ChangeAddressInput = z.infer<typeof changeAddressInput>

/** By an admin, of one account. */
export const accountInput = z.strictObject({ userId: recordIdSchema, requestKey: requestKeySchema })
export type AccountInput = z.infer<typeof accountInput>

/** What changes how somebody signs in asks for the password again. */
export const ownPasswordInput = z.strictObject({ password: passwordSchema, requestKey: requestKeySchema })
export type OwnPasswordInput = z.infer<typeof ownPasswordInput>

export const codeSchema = z.string().trim().min(1, 'is empty').max(20, 'is too long for a code')

export const codeSetUpInput = z.strictObject({
  token: tokenSchema,
  code: codeSchema.transform((code) => code.replaceAll(/\s/g, '')),
  requestKey: requestKeySchema,
})
export type CodeSetUpInput = z.infer<typeof codeSetUpInput>

/** A one-time code or a recovery code. */
export const secondStepInput = z.strictObject({ token: tokenSchema, code: codeSchema })
export type SecondStepInput = z.infer<typeof secondStepInput>

/** What the browser's authenticator answered; the library that checks it reads it whole. */
const authenticatorAnswerSchema = z.looseObject({ id: z.string().max(1_400), response: z.looseObject({}) })

export const passkeySetUpInput = z.strictObject({
  token: tokenSchema,
  name: nameSchema,
  response: authenticatorAnswerSchema,
  requestKey: requestKeySchema,
})
export type PasskeySetUpInput = z.infer<typeof passkeySetUpInput>

export const passkeyAnswerInput = authenticatorAnswerSchema
export type PasskeyAnswer = z.infer<typeof passkeyAnswerInput>

export const removePasskeyInput = z.strictObject({
  passkeyId: z.string().min(1, 'is missing').max(1_400, 'is not an id'),
  password: passwordSchema,
  requestKey: requestKeySchema,
})
export type RemovePasskeyInput = z.infer<typeof removePasskeyInput>

/** Who somebody is at an identity provider, as the session library found it. */
export interface ProvidedIdentity {
  readonly issuer: string
  readonly subject: string
  readonly email: string
  readonly isEmailVerified: boolean
}

export const accountStateInput = z.strictObject({
  userId: recordIdSchema,
  isDisabled: z.boolean(),
  requestKey: requestKeySchema,
})
export type AccountStateInput = z.infer<typeof accountStateInput>

export const adminRightInput = z.strictObject({
  userId: recordIdSchema,
  isAdmin: z.boolean(),
  requestKey: requestKeySchema,
})
export type AdminRightInput = z.infer<typeof adminRightInput>

export const requiredSignaturesSchema = z
  .int('must be a whole number')
  .min(1, 'must be at least 1')
  .max(5, 'must be at most 5')

export const areDifferent = (names: readonly string[]) =>
  new Set(names.map((name) => name.toLowerCase())).size === names.length

export const settingsInput = z.strictObject({
  seenVersion: seenVersionSchema,
  workspaceName: nameSchema,
  /** Release needs at least one artwork file. */
  artworkRequired: z.boolean(),
  /** What a project's sign-off policy begins with: how many different people must sign. */
  requiredSignatures: requiredSignaturesSchema,
  /** The same: capacities in which somebody must sign, each by another person. */
  signingCapacities: z
    .array(z.strictObject({ name: nameSchema }))
    .max(5, 'must be at most 5')
    .refine((list) => areDifferent(list.map(({ name }) => name)), 'names a capacity twice'),
  invitationDays: z.int('must be a whole number').min(1, 'must be at least 1 day').max(60, 'must be at most 60 days'),
  requestKey: requestKeySchema,
})
export type SettingsInput = z.infer<typeof settingsInput>
