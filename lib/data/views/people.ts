/** Accounts, companies and invitations. */
import type { CompanyRole, ProjectRole } from '@/lib/review'

export interface PersonView {
  readonly id: string
  readonly name: string
}

export interface CompanyView {
  readonly id: string
  readonly kind: 'team' | 'fabricator'
  readonly name: string
}

export interface AccountView {
  readonly id: string
  readonly email: string
  readonly name: string
  readonly isAdmin: boolean
  readonly isDisabled: boolean
  readonly createdAt: string
  readonly memberships: readonly {
    readonly projectId: string
    readonly projectName: string
    readonly role: ProjectRole
    readonly companyName: string
  }[]
}

/** A browser in which the person is signed in. */
export interface SessionView {
  readonly id: string
  readonly device: string
  readonly createdAt: string
  readonly seenAt: string
  readonly isThisOne: boolean
}

export interface InvitationView {
  readonly id: string
  /** Null where it admits to the company alone. */
  readonly projectId: string | null
  readonly projectName: string | null
  readonly role: ProjectRole
  readonly companyId: string
  readonly companyName: string
  /** What the person becomes in the company, where the company admits by it. */
  readonly companyRole: CompanyRole | null
  readonly email: string | null
  readonly state: 'open' | 'used' | 'expired' | 'revoked'
  readonly createdAt: string
  readonly expiresAt: string
}

/** Holds the token, which is shown once and never stored. */
export interface CreatedInvitation {
  readonly isAsked: false
  readonly invitation: InvitationView
  readonly token: string
  /** Address to hand to the invited person. */
  readonly link: string
}

/** In place of an invitation: the company has people of its own, and an administrator of it decides. */
export interface AskedCompany {
  readonly isAsked: true
  readonly company: CompanyView
}
