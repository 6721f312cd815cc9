/** Declarations, signatures, moves and packages. */
import type { Stage } from '@/lib/review'
import type { CompanyView, PersonView } from './people'

export interface DeclarationView {
  readonly id: string
  readonly company: CompanyView
  readonly isBuildable: boolean
  readonly note: string
  readonly madeBy: PersonView
  readonly madeAt: string
  /** Was it made on the present content? */
  readonly stands: boolean
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
