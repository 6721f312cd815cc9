/** Actions of a review, before and after its release. */
import type { ActionDue, ActionState, ReviewAction } from '@/lib/review'
import type { AttachmentView } from './checklist'
import type { CompanyView, PersonView } from './people'

export interface ReviewActionView {
  readonly id: string
  readonly revisionId: string
  readonly number: number
  readonly origin: ReviewAction['origin']
  /** The fabricator that sees it beside the team; null is the team alone. */
  readonly company: CompanyView | null
  readonly text: string
  readonly owner: PersonView
  readonly ownerCompanyName: string
  readonly due: ActionDue
  /** YYYY-MM-DD */
  readonly dueOn: string | null
  readonly isOverdue: boolean
  readonly isAfterRelease: boolean
  readonly state: ActionState
  readonly version: number
  readonly takenOnBy: PersonView
  readonly takenOnAt: string
  readonly evidence: string
  readonly attachments: readonly AttachmentView[]
  readonly reportedBy: PersonView | null
  readonly reportedAt: string | null
  readonly closedBy: PersonView | null
  readonly closedAt: string | null
  readonly closeNote: string
  readonly may: {
    readonly change: boolean
    readonly report: boolean
    readonly close: boolean
    readonly drop: boolean
    readonly reopen: boolean
  }
}
