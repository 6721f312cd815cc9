/** The issue register: what was issued under which part number, to whom, and what became of it. */
import type { ReleasePurpose } from '@/lib/review'

export interface IssueView {
  readonly revisionId: string
  readonly partNumber: string
  readonly revision: string
  readonly status: 'released' | 'superseded' | 'withdrawn'
  /** The last day of a conditional release is over. */
  readonly isExpired: boolean
  readonly since: string
  readonly supersededBy: string | null
  /** Why it was withdrawn or superseded; empty while it is in force. */
  readonly because: string
  readonly releasedAt: string
  readonly releasedByName: string
  /** Null for a release from before terms were recorded. */
  readonly terms: {
    readonly isConditional: boolean
    readonly purpose: ReleasePurpose | null
    readonly quantityLimit: number | null
    readonly validUntil: string | null
    readonly conditions: string
    readonly changeNumber: string
    readonly reason: string
    readonly effectivity: string
  } | null
  readonly replaces: string | null
  /** Of what was signed. */
  readonly contentHash: string
  readonly openActionCount: number
  readonly editions: readonly {
    readonly name: string
    readonly sha256: string
    readonly receipts: readonly {
      readonly name: string
      readonly companyName: string
      readonly at: string
      readonly stage: string
    }[]
  }[]
}
