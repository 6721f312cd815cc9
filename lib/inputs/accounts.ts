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
  setupCode: z.string().trim().min(1, 'is empty').max(40, 'is longer than a code'),
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

export const settingsInput = z.strictObject({
  seenVersion: seenVersionSchema,
  workspaceName: nameSchema,
  /** Nobody releases what only that person has edited and signed. */
  secondPairOfEyes: z.boolean(),
  /** A waiver is approved by somebody else than who proposed it. */
  waiverNeedsSecondPerson: z.boolean(),
  /** Release needs at least one artwork file. */
  artworkRequired: z.boolean(),
  /** How many different people must sign. */
  requiredSignatures: z.int('must be a whole number').min(1, 'must be at least 1').max(5, 'must be at most 5'),
  /** Capacities in which somebody must sign, each by another person; empty: leads sign in a capacity of their own words. */
  signingCapacities: z
    .array(z.strictObject({ name: nameSchema, role: z.enum(['lead', 'member']) }))
    .max(5, 'must be at most 5')
    .refine(
      (list) => new Set(list.map(({ name }) => name.toLowerCase())).size === list.length,
      'names a capacity twice',
    )
    .refine((list) => list.length === 0 || list.some(({ role }) => role === 'lead'), 'must have one that is a lead’s'),
  invitationDays: z.int('must be a whole number').min(1, 'must be at least 1 day').max(60, 'must be at most 60 days'),
  requestKey: requestKeySchema,
})
export type SettingsInput = z.infer<typeof settingsInput>
