import 'server-only'
import type { JsonValue } from '@/lib/review'

/** What happened, before it has its place in the chain. */
export interface TrailNote {
  readonly action: string
  readonly subject: { readonly kind: string; readonly id: string }
  readonly projectId?: string
  readonly revisionId?: string
  /** The fabricator that it is about, if any: it stays out of another fabricator's package. */
  readonly companyId?: string | null
  readonly details?: { readonly [key: string]: JsonValue | undefined }
}
