import type { Picture } from '@/lib/drawing'
import type { PackageContent } from './content'
import type { QuotationRequest } from './quotation'
import type { PdfIdentity } from './report/pdf-writer'

/** A trail to be laid out, in words alone. */
export interface TrailPage {
  readonly heading: string
  readonly facts: readonly (readonly [label: string, text: string])[]
  readonly entries: readonly {
    readonly sequence: number
    /** ISO 8601, UTC. */
    readonly at: string
    readonly actorName: string
    readonly sentence: string
    readonly details: readonly { readonly label: string; readonly text: string }[]
    readonly hash: string
  }[]
}

/** What is to be made: plain data, since it goes to another thread. */
export type DocumentOrder =
  | { readonly kind: 'package'; readonly content: PackageContent }
  | { readonly kind: 'trail'; readonly page: TrailPage; readonly identity: PdfIdentity }
  | {
      readonly kind: 'quotation'
      readonly request: QuotationRequest
      /** The part in the flat; null where it has no outline. */
      readonly outline: Picture | null
      readonly identity: PdfIdentity
    }
  | {
      readonly kind: 'sheets' /** Pictures in mm, a page each. */
      readonly sheets: readonly Picture[]
      readonly identity: PdfIdentity
    }
