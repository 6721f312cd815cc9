import { z } from 'zod'
import { COMPANY_ROLES, MATRIX_SHARINGS, SHEET_SHARINGS } from '@/lib/review'
import { optionalTextSchema, recordIdSchema, requestKeySchema, seenVersionSchema } from './common'

const companyPerson = { companyId: recordIdSchema, userId: recordIdSchema }

export const companyRoleInput = z.strictObject({
  ...companyPerson,
  role: z.enum(COMPANY_ROLES),
  requestKey: requestKeySchema,
})
export type CompanyRoleInput = z.infer<typeof companyRoleInput>

export const removeCompanyPersonInput = z.strictObject({ ...companyPerson, requestKey: requestKeySchema })
export type RemoveCompanyPersonInput = z.infer<typeof removeCompanyPersonInput>

/** Brings one of the company's people into a project in which it takes part. */
export const bringToProjectInput = z.strictObject({
  ...companyPerson,
  projectId: recordIdSchema,
  requestKey: requestKeySchema,
})
export type BringToProjectInput = z.infer<typeof bringToProjectInput>

/** Of the matrix and limits, of the shelf, of rates and panel formats. */
const sharingFields = {
  matrix: z.enum(MATRIX_SHARINGS),
  shelf: z.enum(SHEET_SHARINGS),
  rates: z.enum(SHEET_SHARINGS),
}

/** What one project's team gets; without a project, what is offered when the company takes part in a further one. */
export const companySharingInput = z.strictObject({
  companyId: recordIdSchema,
  projectId: recordIdSchema.optional(),
  ...sharingFields,
  /** Of the company's part in the project; 0 without a project. */
  seenVersion: seenVersionSchema,
  requestKey: requestKeySchema,
})
export type CompanySharingInput = z.infer<typeof companySharingInput>

export const decideParticipationInput = z.strictObject({
  companyId: recordIdSchema,
  projectId: recordIdSchema,
  decision: z.enum(['take-part', 'decline', 'end']),
  reason: optionalTextSchema,
  seenVersion: seenVersionSchema,
  requestKey: requestKeySchema,
})
export type DecideParticipationInput = z.infer<typeof decideParticipationInput>

/** In a form: the name stands for a company of its own. */
export const OWN_COMPANY = 'own'

/** Which company a name stands for that somebody typed: one that the workspace did not know, or a known one. */
export const confirmCompanyInput = z.strictObject({
  companyId: recordIdSchema,
  /** The known company that it is; left out, or `own`, where it becomes a known one itself. */
  knownCompanyId: z.union([z.literal(OWN_COMPANY).transform(() => undefined), recordIdSchema]).optional(),
  requestKey: requestKeySchema,
})
export type ConfirmCompanyInput = z.infer<typeof confirmCompanyInput>
