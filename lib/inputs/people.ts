import { z } from 'zod'
import { COMPANY_ROLES, OWN_ROLES } from '@/lib/review'
import {
  emailSchema,
  nameSchema,
  newPasswordSchema,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
} from './common'

export const projectInput = z.strictObject({
  name: nameSchema,
  description: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type ProjectInput = z.infer<typeof projectInput>

/** Another name or description; `seenName` is the name that the person saw. */
export const changeProjectInput = z.strictObject({
  projectId: recordIdSchema,
  seenName: nameSchema,
  name: nameSchema,
  description: optionalTextSchema,
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type ChangeProjectInput = z.infer<typeof changeProjectInput>

/** Sets a project aside in lists, or brings it back. */
export const archiveProjectInput = z.strictObject({
  projectId: recordIdSchema,
  isArchived: z.boolean(),
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type ArchiveProjectInput = z.infer<typeof archiveProjectInput>

/** Roles that an invitation can give. A fabricator's invitation names their company. */
export const invitationInput = z
  .strictObject({
    projectId: recordIdSchema,
    role: z.enum([...OWN_ROLES, 'fabricator']),
    /** Of a fabricator: a known one is asked, another name makes a company of this project alone. */
    companyName: nameSchema.optional(),
    /** When given, only a person with this address can accept. */
    email: z.union([z.literal('').transform(() => undefined), emailSchema]).optional(),
    requestKey: requestKeySchema,
  })
  .refine((input) => input.role !== 'fabricator' || input.companyName !== undefined, {
    path: ['companyName'],
    message: 'is needed for a fabricator',
  })
export type InvitationInput = z.infer<typeof invitationInput>

export const revokeInvitationInput = z.strictObject({ invitationId: recordIdSchema, requestKey: requestKeySchema })
export type RevokeInvitationInput = z.infer<typeof revokeInvitationInput>

/** Admits somebody to a company, and to one of its projects where that is named. */
export const companyInvitationInput = z.strictObject({
  companyId: recordIdSchema,
  role: z.enum(COMPANY_ROLES),
  projectId: recordIdSchema.optional(),
  /** When given, only a person with this address can accept. */
  email: z.union([z.literal('').transform(() => undefined), emailSchema]).optional(),
  requestKey: requestKeySchema,
})
export type CompanyInvitationInput = z.infer<typeof companyInvitationInput>

const tokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'is not an invitation')

/** By somebody without an account: creates it. */
export const acceptInvitationInput = z.strictObject({
  token: tokenSchema,
  name: nameSchema,
  email: emailSchema,
  password: newPasswordSchema,
  requestKey: requestKeySchema,
})
export type AcceptInvitationInput = z.infer<typeof acceptInvitationInput>

/** By somebody who is signed in: joins with the account they have. */
export const joinByInvitationInput = z.strictObject({ token: tokenSchema, requestKey: requestKeySchema })
export type JoinByInvitationInput = z.infer<typeof joinByInvitationInput>

export const membershipRoleInput = z.strictObject({
  projectId: recordIdSchema,
  userId: recordIdSchema,
  role: z.enum(OWN_ROLES),
  requestKey: requestKeySchema,
})
export type MembershipRoleInput = z.infer<typeof membershipRoleInput>

export const removeMemberInput = z.strictObject({
  projectId: recordIdSchema,
  userId: recordIdSchema,
  requestKey: requestKeySchema,
})
export type RemoveMemberInput = z.infer<typeof removeMemberInput>
