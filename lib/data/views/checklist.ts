/** Items with their answers, waivers and files. */
import type { ItemResult } from '@/lib/engine/results'
import type { AnswerState, LookedAt, ViewedFile } from '@/lib/review'
import type { PersonView } from './people'

export interface AttachmentView {
  readonly id: string
  readonly fileName: string
  readonly sizeBytes: number
  readonly mediaType: string
  readonly sha256: string
  readonly uploadedBy: PersonView
  readonly at: string
}

export interface AnswerView {
  readonly state: AnswerState
  readonly reason: string
  readonly version: number
  readonly by: PersonView
  readonly at: string
  /** Where it states what the person saw. */
  readonly lookedAt?: LookedAt | null
}

export interface WaiverView {
  readonly id: string
  readonly itemId: string
  readonly state: 'proposed' | 'approved' | 'declined'
  /** Does it cover what the item comes to now? A waiver covers the numbers that it was proposed on, and no others. */
  readonly covers: boolean
  readonly reason: string
  readonly proposedBy: PersonView
  readonly proposedAt: string
  readonly decidedBy: PersonView | null
  readonly decidedAt: string | null
  readonly decisionNote: string
  readonly consequence: string
  /** YYYY-MM-DD; null without an end. */
  readonly validUntil: string | null
  readonly isLapsed: boolean
  readonly quantityLimit: number | null
  readonly needsCustomerConsent: boolean
  readonly customerConsent: string
  /** May the person asking approve or decline it? */
  readonly mayDecide: boolean
  /** Why the policy does not let the person asking approve it; empty where it does, and once it is decided. */
  readonly whyNotApprove: string
}

/** One item of the checklist for one revision. Wording, sources and section come from the catalogue by `itemId`. */
export interface ItemView {
  readonly itemId: string
  readonly result: ItemResult
  /** The state that counts: the answer's, or `waived` under an approved waiver, or what the computation says. */
  readonly state: AnswerState
  readonly answer: AnswerView | null
  /** 0 where there is no answer yet: the `seenVersion` of an answer. */
  readonly answerVersion: number
  /** Label of the revision that the answer was taken over from; null where it was given here. */
  readonly carriedFrom: string | null
  /** Inputs of the item that changed since the answer was given, in the trade's words. */
  readonly changedInputs: readonly string[]
  readonly history: readonly AnswerView[]
  readonly waivers: readonly WaiverView[]
  readonly attachments: readonly AttachmentView[]
  readonly threadIds: readonly string[]
  /** Where an answer that states what somebody saw may have been looked at. */
  readonly viewableFiles: readonly ViewedFile[]
  /** Answers that may be given against the computed verdict. */
  readonly legalStates: readonly AnswerState[]
  readonly mayAnswer: boolean
  /** Why the person asking cannot answer, and who can; empty where they can. */
  readonly whyNoAnswer: string
  /** Why a recorded answer or waiver does not count; empty where all counts. */
  readonly setAside: string
  /** Whether the concern must be waived before release. */
  readonly needsWaiver: boolean
  /** Items whose failure brings this one's; empty where it stands by itself. */
  readonly follows: readonly { readonly itemId: string; readonly question: string }[]
  /** Items that follow from this one. */
  readonly followers: readonly { readonly itemId: string; readonly question: string }[]
}
