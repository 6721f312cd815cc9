/** Minutes of meetings, and the matrix of needs. */
import type { Meeting, Need, NeedState } from '@/lib/review'

/** An item of the review, as it is cited. */
export interface CitedItemView {
  readonly itemId: string
  readonly question: string
}

export interface MeetingsView {
  readonly meetings: readonly Meeting[]
  /** Of the project, fabricators too. */
  readonly people: readonly {
    readonly userId: string
    readonly name: string
    readonly companyName: string
    readonly isTeam: boolean
  }[]
  readonly items: readonly CitedItemView[]
  /** YYYY-MM-DD */
  readonly today: string
  readonly mayRecord: boolean
}

export interface NeedView extends Need {
  readonly state: NeedState
  readonly mayReport: boolean
  readonly mayAccept: boolean
  readonly mayDrop: boolean
}

export interface NeedsView {
  readonly needs: readonly NeedView[]
  readonly items: readonly CitedItemView[]
  readonly mayState: boolean
}
