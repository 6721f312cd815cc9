/** The catalogue in versions, limits, settings, trail. */

import type { RevisionTarget } from '@/lib/addresses'
import type { CatalogueEdition, CatalogueTemplate, Profile, SwitchedOffItem } from '@/lib/engine/catalogue'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import type { TrailDetail } from '@/lib/review'
import type { CompanyView, PersonView } from './people'

/** The workspace's version of the catalogue that the review began with, or was brought up to. */
export interface RevisionTemplateView {
  /** 0 is the catalogue as delivered. */
  readonly version: number
  readonly latestVersion: number
  /** Own items, changed wording, and the profiles that the review follows; limits of the workspace are left out. */
  readonly content: CatalogueEdition
  readonly profiles: readonly { readonly id: string; readonly name: string }[]
  /** Has the workspace's catalogue, or the project's choice of profiles, moved on? */
  readonly isBehind: boolean
  readonly switchedOff: readonly SwitchedOffItem[]
}

/** The workspace's catalogue as it is now, with the history of its versions, newest first. */
export interface TemplateView {
  readonly version: number
  readonly content: CatalogueTemplate
  readonly mayEdit: boolean
  readonly versions: readonly {
    readonly version: number
    readonly summary: string
    readonly reason: string
    readonly changedBy: PersonView
    readonly changedAt: string
    /** Reviews in progress that go by it. */
    readonly openReviewCount: number
  }[]
}

/** The profiles that a project follows, and those that it may choose from. */
export interface ProjectProfilesView {
  readonly projectId: string
  readonly projectName: string
  /** Counts choices; a choice names the one that the person saw. */
  readonly version: number
  readonly followed: readonly { readonly id: string; readonly name: string; readonly purpose: string }[]
  /** Empty for those who may not choose. */
  readonly choices: readonly Profile[]
  readonly mayChoose: boolean
}

/** What a file would make of the workspace's catalogue, before it does. */
export interface CatalogueImportView {
  readonly version: number
  /** Differences from the catalogue as it is, in words; empty where there are none. */
  readonly changes: readonly string[]
  readonly counts: {
    readonly ownItems: number
    readonly itemChanges: number
    readonly limits: number
    readonly profiles: number
  }
}

/** What bringing a review up to the newest version of the catalogue would do, before it is done. */
export interface TemplateUpdateView {
  readonly fromVersion: number
  readonly toVersion: number
  /** Profiles that the project follows now. */
  readonly toProfiles: readonly { readonly id: string; readonly name: string }[]
  /** Differences between the two versions, in words. */
  readonly changes: readonly string[]
  readonly verdictMoves: readonly {
    readonly itemId: string
    readonly question: string
    readonly before: string
    readonly after: string
  }[]
  /** Questions whose answers are asked for again. */
  readonly reopened: readonly string[]
  /** Signatures that would be voided. */
  readonly voidedSignatures: number
  readonly mayUpdate: boolean
}

export interface LimitView {
  readonly key: string
  readonly value: number
  readonly note: string
  readonly version: number
  readonly setBy: PersonView
  readonly setAt: string
}

export interface LimitListView {
  /** Null for the workspace's own. */
  readonly company: CompanyView | null
  readonly mayEdit: boolean
  /** Only limits that were set; the dictionary of limits has the keys, units and published values. */
  readonly limits: readonly LimitView[]
}

export interface SettingsView {
  readonly version: number
  readonly workspaceName: string
  readonly artworkRequired: boolean
  readonly requiredSignatures: number
  readonly signingCapacities: readonly { readonly name: string }[]
  readonly invitationDays: number
}

export interface TrailEntryView {
  readonly sequence: number
  readonly at: string
  readonly actorName: string
  readonly action: string
  readonly sentence: string
  /** Kind of the thing that it is about, in words. */
  readonly thing: string
  /** Where that thing is shown; null for what has no place on the revision. */
  readonly target: RevisionTarget | null
  /** All that the record carries besides, what was before and after among it. */
  readonly details: readonly TrailDetail[]
  readonly revisionId: string | null
  readonly hash: string
}

export interface RevisionTrailView {
  /** Newest first; those that the filter lets pass. */
  readonly entries: readonly TrailEntryView[]
  /** Of all records. */
  readonly count: number
  readonly choices: {
    readonly people: readonly string[]
    readonly acts: readonly string[]
    readonly things: readonly string[]
  }
}

/** Flex tests of the workspace's own, as the newest version of its catalogue has them. */
export interface WorkspaceFlexTestsView {
  /** Of the catalogue: `seenVersion` of a save. */
  readonly version: number
  readonly workspaceName: string
  readonly rows: readonly FlexTestRow[]
  readonly mayEdit: boolean
}
