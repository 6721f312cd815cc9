import type { DrawnSheet } from '@/lib/drawing'
import type { PackageContent } from './content'
import type { PdfIdentity } from './report/pdf-writer'

/** What is to be made: plain data, since it goes to another thread. */
export type DocumentOrder =
  | { readonly kind: 'package'; readonly content: PackageContent }
  | { readonly kind: 'sheets'; readonly sheets: readonly DrawnSheet[]; readonly identity: PdfIdentity }
