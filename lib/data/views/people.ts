/** Accounts, companies and invitations. */
import type {
  PublicKeyCredentialCreationOptionsJSON,
  PublicKeyCredentialRequestOptionsJSON,
} from '@simplewebauthn/server'
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
  readonly hasSecondFactor: boolean
  readonly createdAt: string
  readonly memberships: readonly {
    readonly projectId: string
    readonly projectName: string
    readonly role: ProjectRole
    readonly companyName: string
  }[]
}

/** A link that sets a new password once; shown to the person who made it, and stored nowhere. */
export interface ResetLink {
  readonly link: string
  readonly expiresAt: string
}

export interface ResetOffer {
  readonly email: string
  readonly expiresAt: string
}

export interface AddressOffer {
  readonly email: string
}

/** A secret for one-time codes, shown once. */
export interface CodeSetUp {
  readonly token: string
  /** Base32, to type by hand. */
  readonly secret: string
  /** `otpauth:` address, for a QR code. */
  readonly address: string
}

/** Shown once; only their hashes are kept. */
export interface RecoveryCodes {
  readonly recoveryCodes: readonly string[]
}

export interface PasskeyView {
  readonly id: string
  readonly name: string
  readonly createdAt: string
  readonly usedAt: string | null
}

export interface SecondFactorView {
  readonly hasCodes: boolean
  readonly recoveryCodesLeft: number
  readonly passkeys: readonly PasskeyView[]
}

export interface PasskeySetUp {
  readonly token: string
  readonly options: PublicKeyCredentialCreationOptionsJSON
}

export interface PasskeyChallenge {
  readonly challenge: string
  readonly options: PublicKeyCredentialRequestOptionsJSON
}

/** What the authenticator of somebody who is signed in is to answer; the token goes back with its answer. */
export interface PasskeyConfirmation {
  readonly token: string
  readonly options: PublicKeyCredentialRequestOptionsJSON
}

/** The person's account at the sign-in provider of this workspace. */
export interface IdentityView {
  readonly issuer: string
  readonly email: string
  readonly createdAt: string
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

/** An attempt to sign in that was refused. */
export interface RefusedSignInView {
  readonly id: string
  readonly at: string
  /** Whose account was meant; null where the address has none. */
  readonly name: string | null
  /** The field that was wrong, or `clash`. */
  readonly reason: string
  readonly device: string
  /** Tells one source from another, and no more. */
  readonly source: string
}
