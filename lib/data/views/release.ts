/** Declarations, signatures, moves and packages. */
import type { ConditionState, DeclarationVerdict, Stage, StandingKind } from '@/lib/review'
import type { CompanyView, PersonView } from './people'
import type { DoneOptions } from './threads'

export interface DeclarationView {
  readonly id: string
  readonly company: CompanyView
  readonly verdict: DeclarationVerdict
  /** From before conditions were lines of their own: its note may hold one. */
  readonly isFromBefore: boolean
  readonly note: string
  readonly conditions: readonly ConditionView[]
  readonly madeBy: PersonView
  readonly madeAt: string
  /** Was it made on the present content? */
  readonly stands: boolean
}

export interface ConditionView {
  readonly id: string
  readonly version: number
  /** With the field and the value that it names. */
  readonly text: string
  readonly state: ConditionState
  /** What became of it, in words; empty while it is open. */
  readonly decision: string
  readonly decidedBy: string | null
  readonly decidedAt: string | null
  /** What the person asking can point to when taking it over; null where it is not theirs to decide. */
  readonly options: DoneOptions | null
}

/** How a fabricator stands to the present content. */
export interface StandingView {
  readonly company: CompanyView
  readonly kind: StandingKind
  readonly takenOffBecause: string
  readonly takenOffBy: string
}

export interface SignatureView {
  readonly id: string
  readonly signer: PersonView
  readonly capacity: string
  /** Whose word the capacity is; null in signatures from before capacities were granted. */
  readonly grantedBy: string | null
  readonly statement: string
  readonly contentHash: string
  readonly signedAt: string
  /** May the person asking take it back? */
  readonly mayWithdraw: boolean
  readonly voidedAt: string | null
  /** The signer withdrew it; else the application voided it. */
  readonly isWithdrawn: boolean
  /** Whose change brought it about. */
  readonly voidedBy: PersonView | null
  readonly voidReason: string | null
  /** Which signed fields changed, in the trade's words. */
  readonly changes: readonly string[]
}

export interface StageMoveView {
  readonly from: Stage
  readonly to: Stage
  readonly reason: string
  readonly by: PersonView
  readonly at: string
}

export interface PackageView {
  readonly sha256: string
  readonly sizeBytes: number
  readonly fileName: string
  readonly releasedBy: PersonView
  readonly releasedAt: string
}
