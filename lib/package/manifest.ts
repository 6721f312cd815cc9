import { z } from 'zod'
import { canonicalJson, sha256Hex } from '@/lib/review'
import type { PackageContent, PackageFile } from './content'
import { hashBytes } from './file-hash'

export const PACKAGE_FORMAT = 'bendworthy-package'
/** Version 2 holds signed checksums for general tools beside the manifest; version 1 did not. */
export const PACKAGE_FORMAT_VERSION = 2

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in hexadecimal')

/** What a package says about itself, and the SHA-256 of each of its files. */
export const manifestSchema = z.strictObject({
  format: z.literal(PACKAGE_FORMAT),
  formatVersion: z.union([z.literal(1), z.literal(PACKAGE_FORMAT_VERSION)]),
  workspace: z.string(),
  project: z.strictObject({ id: z.string(), name: z.string() }),
  revision: z.strictObject({ id: z.string(), label: z.string() }),
  /** `team`, or the fabricator whose edition this is. */
  edition: z.strictObject({ kind: z.enum(['team', 'fabricator']), companyName: z.string().nullable() }),
  releasedAt: z.iso.datetime(),
  releasedBy: z.string(),
  engineVersion: z.string().nullable(),
  /** SHA-256 of what was signed; the signatures name it. */
  contentHash: sha256Schema.nullable(),
  keyFingerprint: sha256Schema,
  files: z.array(z.strictObject({ path: z.string(), sizeBytes: z.int().nonnegative(), sha256: sha256Schema })),
})

export type Manifest = z.infer<typeof manifestSchema>

export function makeManifest(content: PackageContent, files: readonly PackageFile[], keyFingerprint: string): Manifest {
  const { snapshot, edition, release } = content
  return {
    format: PACKAGE_FORMAT,
    formatVersion: PACKAGE_FORMAT_VERSION,
    workspace: content.workspaceName,
    project: { id: snapshot.projectId, name: snapshot.projectName },
    revision: { id: snapshot.revisionId, label: snapshot.label },
    edition: { kind: edition.kind, companyName: edition.kind === 'fabricator' ? edition.companyName : null },
    releasedAt: release.at,
    releasedBy: release.byName,
    engineVersion: snapshot.evaluation?.engineVersion ?? null,
    contentHash: content.signedContent === null ? null : sha256Hex(content.signedContent),
    keyFingerprint,
    files: files
      .map(({ path, bytes }) => ({ path, sizeBytes: bytes.length, sha256: hashBytes(bytes) }))
      .sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0)),
  }
}

/** The manifest as stored and signed: one line of canonical JSON. */
export function writeManifest(manifest: Manifest): Uint8Array {
  return new TextEncoder().encode(`${canonicalJson(manifest)}\n`)
}
