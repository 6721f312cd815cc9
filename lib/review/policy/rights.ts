/** What a person is in one project. Being admin of the workspace is no role in any project. */
export const PROJECT_ROLES = ['lead', 'member', 'quality', 'fabricator', 'observer', 'auditor'] as const
export type ProjectRole = (typeof PROJECT_ROLES)[number]

/** Roles of the project's own company, in the order in which they are offered. Anyone with one of them reads the whole project. */
export const OWN_ROLES = ['member', 'lead', 'quality', 'observer', 'auditor'] as const satisfies readonly ProjectRole[]
export type OwnRole = (typeof OWN_ROLES)[number]

export interface Membership {
  readonly projectId: string
  readonly role: ProjectRole
  readonly companyId: string
}

/**
 * What a person is in a fabricator. Administrators admit people, decide in which projects the company takes part and what
 * each project's team sees; sheet writers keep its sheets and limits.
 */
export const COMPANY_ROLES = ['administrator', 'sheet-writer', 'member'] as const
export type CompanyRole = (typeof COMPANY_ROLES)[number]

export interface CompanyMembership {
  readonly companyId: string
  readonly role: CompanyRole
}

/**
 * What a project's team gets of a fabricator's matrix and limits: nothing; verdicts and bands, never the limit; or all
 * of it.
 */
export const MATRIX_SHARINGS = ['not-shared', 'checked', 'shown'] as const
export type MatrixSharing = (typeof MATRIX_SHARINGS)[number]

export const SHEET_SHARINGS = ['not-shared', 'shown'] as const
export type SheetSharing = (typeof SHEET_SHARINGS)[number]

/** What a fabricator chose to let one project's team have. */
export interface Sharing {
  /** Of the capability matrix and the limits. */
  readonly matrix: MatrixSharing
  readonly shelf: SheetSharing
  /** Of the process rates and the panel formats. */
  readonly rates: SheetSharing
}

export const NOTHING_SHARED: Sharing = { matrix: 'not-shared', shelf: 'not-shared', rates: 'not-shared' }

/** What a person may rests on: their places in projects and companies. Rights come from here and from nowhere else. */
export interface Rights {
  readonly userId: string
  readonly isAdmin: boolean
  readonly memberships: readonly Membership[]
  readonly companies: readonly CompanyMembership[]
}
