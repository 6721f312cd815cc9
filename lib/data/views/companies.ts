/** A fabricator as its own people, and an admin of the workspace, see it. */
import type { CompanyRole, Sharing } from '@/lib/review'
import type { CompanyView, InvitationView, PersonView } from './people'

export type ParticipationState = 'asked' | 'takes-part' | 'declined' | 'ended'

/** A company of the person's own, as the main links name it. */
export interface OwnCompanyView {
  readonly company: CompanyView
  /** Projects that await an answer which the person may give. */
  readonly requestCount: number
}

export interface CompanyPersonView {
  readonly user: PersonView
  readonly email: string
  readonly role: CompanyRole
  readonly admittedBy: PersonView | null
  readonly since: string
  readonly projectNames: readonly string[]
}

export interface ParticipationView {
  readonly projectId: string
  readonly projectName: string
  readonly state: ParticipationState
  readonly askedBy: PersonView | null
  readonly askedAt: string
  /** The address that the person who asked would like to see invited; empty where none was named. */
  readonly askedFor: string
  readonly decidedBy: PersonView | null
  readonly decidedAt: string | null
  readonly sharing: Sharing
  readonly sharingSetBy: PersonView | null
  readonly sharingSetAt: string | null
  readonly version: number
  /** The company's people in it. */
  readonly userIds: readonly string[]
}

/** Saves of one day by which a team moved verdicts that rest on limits it is not shown. */
export interface ProbingView {
  /** YYYY-MM-DD */
  readonly day: string
  readonly projectName: string
  readonly revisionLabel: string
  readonly saves: number
  readonly flips: number
}

export interface CompanyRights {
  readonly viewInside: boolean
  readonly viewMatrix: boolean
  readonly viewShelf: boolean
  readonly viewRates: boolean
  readonly viewAccess: boolean
  readonly admit: boolean
  readonly takePart: boolean
  readonly share: boolean
  readonly editSheets: boolean
}

export interface CompanyPageView {
  readonly company: CompanyView
  /** Name of the project that it belongs to alone, by a name that nobody confirmed; null for a known company. */
  readonly ofProjectAlone: string | null
  /** What the person asking is in it. */
  readonly role: CompanyRole | null
  readonly may: CompanyRights
  /** Null for the person who may not look inside. */
  readonly inside: {
    readonly people: readonly CompanyPersonView[]
    readonly participations: readonly ParticipationView[]
    readonly defaultSharing: Sharing
    /** Newest day first. */
    readonly probing: readonly ProbingView[]
    readonly invitations: readonly InvitationView[]
  } | null
}

/** A company as the workspace's admins see it: its people, never its sheets. */
export interface ListedCompanyView {
  readonly company: CompanyView
  /** Of the project alone; null for a known company. */
  readonly project: { readonly id: string; readonly name: string } | null
  readonly people: readonly { readonly user: PersonView; readonly email: string; readonly role: CompanyRole }[]
  readonly participations: readonly { readonly projectName: string; readonly state: ParticipationState }[]
}
