import type { OnPlanFacts } from '@/lib/artwork'
import type { LimitOwner } from '@/lib/engine'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import type { Meeting, Need, ReleaseTerms, ReviewSnapshot, TrailRecord } from '@/lib/review'
import type { TrailCheckpoint } from './checkpoints'
import type { DrawingSource } from './drawing-source'
import type { StampedRelease } from './stamped-release'

/** Everything that a release package is made from. The same content gives the same bytes. */
export interface PackageContent {
  readonly workspaceName: string
  /**
   * The revision as released: signatures standing, stage `released` (or `awaiting-signature`, in the transaction that
   * releases it). A fabricator's edition is made from that fabricator's snapshot, which holds nothing of another's.
   */
  readonly snapshot: ReviewSnapshot
  readonly edition: PackageEdition
  /** Specimens of the flex tests of the edition's own side that lives rest on: the workspace's to the team, a fabricator's to that fabricator. */
  readonly flexTests: readonly PackedFlexTests[]
  /** The same in every edition. */
  readonly drawing: DrawingSource
  readonly release: {
    /** ISO 8601 in UTC; also the date inside the PDF files. */
    readonly at: string
    readonly byName: string
    /** Absent in what is built again from older records. */
    readonly byUserId?: string
    /** For what, within which limits, in place of what and why. */
    readonly terms: ReleaseTerms
    /** Label of the revision that it replaces; null where it is the first issue. */
    readonly replaces: string | null
    /** The key's word on what is released, with a trusted time stamp where one could be had; absent where nobody asked. */
    readonly stamped?: StampedRelease
  }
  /** What changed, a sentence each. */
  readonly changes: {
    /** Since the revision that it replaces; null where there is none. */
    readonly sinceIssue: readonly string[] | null
    /** Since each fabricator of this edition last opened it; null where it never did. */
    readonly sinceLooked: readonly { readonly company: string; readonly changes: readonly string[] | null }[]
  }
  /** Main events up to the release, in their order. */
  readonly chronology: readonly { readonly at: string; readonly who: string; readonly what: string }[]
  /** People of the project whom readers of this edition may know, those who did nothing too: all in the team's, its own people in a fabricator's. */
  readonly members: readonly {
    readonly userId: string
    readonly name: string
    readonly companyName: string
    readonly role: string
  }[]
  /** The team's own: minutes, and needs with what was shown of them. Null in a fabricator's edition. */
  readonly minutes: { readonly meetings: readonly Meeting[]; readonly needs: readonly Need[] } | null
  /** Bytes of every artwork file of the snapshot, found by their SHA-256. */
  readonly artwork: readonly { readonly sha256: string; readonly bytes: Uint8Array }[]
  /** Layers of the artwork as they are looked at, and how they lie on the plan; null where nobody has drawn them. */
  readonly artworkPicture: {
    readonly bytes: Uint8Array
    readonly registration: OnPlanFacts['registration']
  } | null
  /** The canonical form that was signed. Null in a fabricator's edition, where parts of it are withheld. */
  readonly signedContent: string | null
  /** The files that prove which design and artwork were signed, in every edition. */
  readonly signedParts: readonly PackageFile[]
  /** The revision's records in order of sequence; an extract of the whole trail, so with gaps. */
  readonly trail: readonly TrailRecord[]
  /** Of the whole trail: later it must still hold the records that they vouch for. */
  readonly checkpoints: readonly TrailCheckpoint[]
}

/** Specimens of one owner whose sets lives of an edition rest on, as entered. */
export interface PackedFlexTests {
  readonly owner: LimitOwner
  readonly rows: readonly FlexTestRow[]
}

export type PackageEdition =
  | { readonly kind: 'team' }
  | { readonly kind: 'fabricator'; readonly companyId: string; readonly companyName: string }

/** Ed25519 (RFC 8032) key pair as PEM: private as PKCS #8, public as SPKI. */
export interface SigningKeys {
  readonly signingKeyPem: string
  readonly verifyingKeyPem: string
}

/** A file of the package: a path with forward slashes, relative to its root. */
export interface PackageFile {
  readonly path: string
  readonly bytes: Uint8Array
}

export const MANIFEST_PATH = 'manifest.json'
export const SIGNATURE_PATH = 'manifest.sig'
/** For general tools: `sha256sum -c` reads the first, `openssl pkeyutl -verify` the second (64 bytes, as they are). */
export const CHECKSUMS_PATH = 'SHA256SUMS'
export const CHECKSUMS_SIGNATURE_PATH = 'SHA256SUMS.sig'
export const VERIFYING_KEY_PATH = 'verifying-key.pem'
export const SIGNED_CONTENT_PATH = 'signed-content.json'
