/** What an act comes to, and files to download. */
import type { Issue } from '@/lib/engine/results'
import type { Blocker } from '@/lib/review'

export interface FileDownload {
  readonly fileName: string
  readonly mediaType: string
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** Who changed what since the version that the person saw. */
export interface ChangeSince {
  readonly by: string
  readonly at: string
  readonly what: readonly string[]
}

/** A refusal that the person can act on. Nothing was written. */
export type ActRefusal =
  | { readonly kind: 'invalid'; readonly message: string; readonly issues: readonly Issue[] }
  | { readonly kind: 'blocked'; readonly message: string; readonly blockers: readonly Blocker[] }
  | {
      readonly kind: 'stale'
      readonly message: string
      readonly seenVersion: number
      readonly currentVersion: number
      readonly changes: readonly ChangeSince[]
    }
  /** The record is not in a state in which this can be done, or another one stands in the way. */
  | { readonly kind: 'clash'; readonly message: string; readonly issues: readonly Issue[] }
  /** The server is busy for some seconds. */
  | { readonly kind: 'busy'; readonly message: string }
  /** Too many attempts; later it may be tried again. */
  | { readonly kind: 'too-many'; readonly message: string }

export type ActResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: ActRefusal }
