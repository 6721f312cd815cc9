/** Accounts, companies and invitations. */
import type { ProjectRole } from '@/lib/review'

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

export interface InvitationView {
  readonly id: string
  readonly projectId: string
  readonly projectName: string
  readonly role: ProjectRole
  readonly companyName: string
  readonly email: string | null
  readonly state: 'open' | 'used' | 'expired' | 'revoked'
  readonly createdAt: string
  readonly expiresAt: string
}

/** Holds the token, which is shown once and never stored. */
export interface CreatedInvitation {
  readonly invitation: InvitationView
  readonly token: string
  /** Address to hand to the invited person. */
  readonly link: string
}
