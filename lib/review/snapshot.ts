import type { Design, Evaluation, ItemSection, ReviewFacts } from '@/lib/engine'
import type { DecidedWhen, SwitchedOffItem } from '@/lib/engine/catalogue'
import type { ThreadAnchor } from './anchor-kinds'
import type { Declaration, Done, TakenOff } from './declared'
import type { ProjectRole } from './policy'
import type { ReviewAction } from './review-actions'
import type { PinnedSignOffPolicy } from './sign-off-policy'
import type { Stage } from './stages'

/** What a decision needs to know of a catalogue item; the item's calculation lives in the engine. */
export interface ReviewItem {
  readonly id: string
  readonly section: ItemSection
  readonly question: string
  readonly severity: string
  /** By when it must be answered: before the fabricator looks, before their review is left, or before anybody signs. */
  readonly decidedWhen: DecidedWhen
  /** Who may answer it; a lead may answer whatever a member may. */
  readonly answeredBy: readonly ProjectRole[]
  /** Whether a person's concern on this item must be waived before release (a failed calculation always must). */
  readonly concernNeedsWaiver: boolean
  /** What the project's profiles changed about it, as sentences. */
  readonly becauseOf?: readonly string[]
}

/** States of an item's answer. `waived` is reached only through an approved waiver. */
export const ANSWER_STATES = ['open', 'meets', 'concern', 'waived', 'not-applicable'] as const
export type AnswerState = (typeof ANSWER_STATES)[number]

/** The one record of what answers are called. */
export const ANSWER_WORDS: Readonly<Record<AnswerState, string>> = {
  open: 'open',
  meets: 'meets',
  concern: 'concern',
  waived: 'waived',
  'not-applicable': 'not applicable',
}

/** Where somebody looked who states what they saw. The file is one of the revision: artwork, or evidence attached to the item. */
export interface LookedAt {
  readonly sheet: string
  readonly layer: string
  readonly fileName: string
  readonly sha256: string
}

/** A person's answer to an item. Times are ISO 8601 in UTC, here and below. */
export interface RecordedAnswer {
  readonly itemId: string
  readonly state: AnswerState
  readonly reason: string
  readonly answeredBy: string
  readonly answeredByName: string
  readonly answeredAt: string
  /** SHA-256 of the attached evidence. */
  readonly evidence: readonly { readonly fileName: string; readonly sha256: string }[]
  /** What a statement rests on; null or absent for any other answer. */
  readonly lookedAt?: LookedAt | null
  /** Label of the revision that it was taken over from with a copy; absent where it was given here. */
  readonly carriedFrom?: string
  /** The file that was looked at is no longer one of the revision. */
  readonly isFileGone?: boolean
  /** Inputs of the item that changed since, in the trade's words; empty or absent while it rests on what it rested on. */
  readonly changedInputs?: readonly string[]
  /** Given to another question, which this item replaces: to be confirmed. Absent where it was given to this one. */
  readonly earlierQuestion?: string
  /** Taken over with a copy from a fabricator with whom this revision is not shared. */
  readonly isFromElsewhere?: boolean
}

export type WaiverState = 'proposed' | 'approved' | 'declined'

export interface Waiver {
  readonly id: string
  readonly itemId: string
  readonly state: WaiverState
  readonly reason: string
  readonly proposedBy: string
  readonly proposedByName: string
  readonly proposedAt: string
  /** Who approved or declined it, when, and in which words; null while proposed. */
  readonly decidedBy: string | null
  readonly decidedByName: string | null
  readonly decidedAt: string | null
  readonly decisionNote: string
  /** What the person who decided was in the project then; null or absent before that was kept. */
  readonly decidedAsRole?: string | null
  /** What may happen to the parts because of it; absent in older ones. */
  readonly consequence?: string
  /** YYYY-MM-DD: the last day on which it counts; null or absent without an end. */
  readonly validUntil?: string | null
  /** For so many parts; null or absent without a limit. */
  readonly quantityLimit?: number | null
  readonly needsCustomerConsent?: boolean
  /** Who of the customer agreed, and where that is on record; empty while nobody has. */
  readonly customerConsent?: string
  /** Its last day is over while the revision is under review: it counts no longer. */
  readonly isLapsed?: boolean
  /** `hashWaiverBasis` of the item's result when the waiver was proposed: it covers these numbers and no others. */
  readonly basisHash: string
}

/** Kinds of comment threads. An engineering query is a fabricator's question that needs an answer before the build. */
export const THREAD_KINDS = ['note', 'should-change', 'must-change', 'engineering-query'] as const
export type ThreadKind = (typeof THREAD_KINDS)[number]

/** The one record of what kinds of threads are called: in a list, and as a noun in a sentence (`the should-change "..."`). */
export const THREAD_KIND_WORDS: Readonly<Record<ThreadKind, { readonly label: string; readonly noun: string }>> = {
  note: { label: 'note', noun: 'note' },
  'should-change': { label: 'should change', noun: 'should-change' },
  'must-change': { label: 'must change', noun: 'must-change' },
  'engineering-query': { label: 'engineering query', noun: 'engineering query' },
}

/** A kind as a noun; a word that this version does not know as it is. */
export function nameThreadKind(kind: string): string {
  return Object.hasOwn(THREAD_KIND_WORDS, kind) ? THREAD_KIND_WORDS[kind as ThreadKind].noun : kind
}

export const THREAD_STATES = ['open', 'answered', 'closed'] as const
export type ThreadState = (typeof THREAD_STATES)[number]

export interface ReviewThread {
  readonly id: string
  readonly kind: ThreadKind
  readonly state: ThreadState
  readonly title: string
  readonly anchor: ThreadAnchor
  readonly openedBy: string
  readonly openedByName: string
  readonly openedAt: string
  /** The fabricator that takes part, and whose people alone see it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
  /** Company of the person who opened it: the team's own or a fabricator. */
  readonly openedByCompanyId: string
  readonly openedByCompanyName: string
  readonly comments: readonly ReviewComment[]
  /** How it was settled; null while it is not closed. */
  readonly closed: {
    readonly by: string
    readonly byName: string
    readonly at: string
    readonly reason: string
    /** Null in threads that were closed before this was asked. */
    readonly done: Done | null
  } | null
}

/** What a signature covers of a thread that is not closed. */
export interface SignedThread {
  readonly id: string
  readonly kind: string
  readonly title: string
  readonly state: string
  /** Of the person who opened it. */
  readonly companyName: string
  /** The fabricator that takes part; null is the team alone. */
  readonly audienceCompanyId: string | null
  /** Hash of what was said in it. */
  readonly textHash: string
}

export interface ReviewComment {
  readonly id: string
  readonly authorId: string
  readonly authorName: string
  readonly companyName: string
  readonly at: string
  readonly text: string
  readonly editedAt: string | null
  readonly attachments: readonly { readonly fileName: string; readonly sha256: string }[]
}

/** Parts of the content that have authors. */
export const AUTHORED_PARTS = ['design', 'artwork'] as const

/** Somebody of the company who made or changed design or artwork of the revision, or of one that it was copied from. */
export interface Author {
  readonly userId: string
  readonly name: string
  readonly parts: readonly (typeof AUTHORED_PARTS)[number][]
  /** How many changes of theirs are on record in this revision, and between which versions of it; null where all came with the copy. */
  readonly changes: { readonly count: number; readonly firstVersion: number; readonly lastVersion: number } | null
}

/** Somebody's word that words and numbers differ, and that it may stay so. */
export interface Acknowledgement {
  readonly id: string
  /** Of the difference, as `listDifferences` has it. */
  readonly key: string
  readonly fact: string
  readonly said: string
  readonly against: string
  readonly reason: string
  readonly byId: string
  readonly byName: string
  readonly at: string
}

/** A person's word that they reviewed the content. */
export interface ReviewStatement {
  readonly id: string
  readonly userId: string
  readonly name: string
  /** What the person was in the project then. */
  readonly role: string
  readonly note: string
  readonly madeAt: string
  /** `hashDeclaredContent` of what was reviewed. */
  readonly contentHash: string
  readonly withdrawnAt: string | null
}

/** A capacity in which somebody may sign, with what it means and whose word it is. */
export interface GrantedCapacity {
  readonly userId: string
  readonly capacity: string
  readonly statement: string
  readonly grantedByName: string
  readonly grantedAt: string
}

export interface Signature {
  readonly id: string
  readonly userId: string
  readonly name: string
  /** Signing as: `lead engineer` ... */
  readonly capacity: string
  /** Whose word the capacity is; absent in signatures from before capacities were granted. */
  readonly grant?: Omit<GrantedCapacity, 'userId' | 'capacity'>
  /** The statement signed, word for word. */
  readonly statement: string
  readonly signedAt: string
  /** `hashSignedContent` of what was signed. */
  readonly contentHash: string
  /** `hashSubstance` of the content that is stored with it. */
  readonly substanceHash: string
  readonly voided: {
    readonly at: string
    readonly reason: string
    /** Which fields changed, in the trade's words. */
    readonly changes: readonly string[]
  } | null
}

export interface ArtworkFile {
  readonly id: string
  readonly fileName: string
  readonly sizeBytes: number
  readonly sha256: string
}

/** Results as recorded by the server, with what they were made from. */
export interface RecordedEvaluation {
  readonly designHash: string
  /** Hash of the limits in force (workspace's and fabricator's); an empty string where none are set. */
  readonly limitsHash: string
  readonly engineVersion: string
  readonly evaluatedAt: string
  readonly results: Evaluation
}

/** The workspace's version of the catalogue that the review goes by. */
export interface ReviewTemplate {
  /** 0 is the catalogue as delivered. */
  readonly version: number
  /** Hash of the version's content; empty for the catalogue as delivered. */
  readonly contentHash: string
  readonly switchedOff: readonly SwitchedOffItem[]
  /** Profiles that the review follows, in the order of their ids; absent where it follows none. */
  readonly profiles?: readonly {
    readonly id: string
    readonly name: string
    /** How many different people it wants to sign; absent where it asks for no number. */
    readonly requiredSignatures?: number
  }[]
}

export const DELIVERED_REVIEW_TEMPLATE: ReviewTemplate = { version: 0, contentHash: '', switchedOff: [] }

export interface ReviewSettings {
  /** Release needs at least one artwork file. */
  readonly artworkRequired: boolean
}

export const DEFAULT_REVIEW_SETTINGS: ReviewSettings = { artworkRequired: false }

/**
 * Everything that a decision about a revision depends on, at one moment. Built from stored records by the data layer
 * inside the transaction that acts on the decision.
 */
export interface ReviewSnapshot {
  readonly revisionId: string
  readonly projectId: string
  readonly projectName: string
  /** The revision's label within its project: `A`, `B` ... */
  readonly label: string
  /** Counts every change of the revision; a write names the version that the person saw. */
  readonly version: number
  readonly stage: Stage
  /** YYYY-MM-DD: today, and once it is closed the day on which it was. */
  readonly today: string
  readonly design: Design
  /** The document in the format that it was stored in, which signatures and declarations cover; absent where that is `design` itself. */
  readonly storedDesign?: unknown
  readonly evaluation: RecordedEvaluation | null
  /** Engine and limits in force now: what `evaluation` must have been made with to be current. */
  readonly engineVersion: string
  readonly limitsHash: string
  /** Items of the review's version of the catalogue. */
  readonly items: readonly ReviewItem[]
  readonly template: ReviewTemplate
  readonly answers: readonly RecordedAnswer[]
  readonly waivers: readonly Waiver[]
  readonly threads: readonly ReviewThread[]
  readonly actions: readonly ReviewAction[]
  /** Fabricators with whom the revision is shared. */
  readonly sharedWith: readonly { readonly companyId: string; readonly companyName: string }[]
  readonly declarations: readonly Declaration[]
  /** Fabricators that were taken off this release. */
  readonly takenOff: readonly TakenOff[]
  /** Threads as they were signed, once the revision is released: what people say afterwards is no part of that. */
  readonly signedThreads?: readonly SignedThread[]
  readonly signatures: readonly Signature[]
  readonly artwork: readonly ArtworkFile[]
  /** What the artwork files say; null until they have been read. */
  readonly artworkFacts: ReviewFacts['artwork'] | null
  /** Everybody who created or changed the content (design, artwork, answers). */
  readonly editors: readonly { readonly userId: string; readonly name: string }[]
  /** Who made the design and the artwork, of the company alone, in the order in which they came to it. */
  readonly authors: readonly Author[]
  readonly reviews: readonly ReviewStatement[]
  /** Differences that somebody let stand, and has not taken up again. */
  readonly acknowledgements: readonly Acknowledgement[]
  /** Capacities in which people may sign now. */
  readonly capacityGrants: readonly GrantedCapacity[]
  /** What the review goes by; null where it began before there were policies. */
  readonly signOffPolicy: PinnedSignOffPolicy | null
  readonly settings: ReviewSettings
}
