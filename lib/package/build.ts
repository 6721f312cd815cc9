import { createPublicKey } from 'node:crypto'
import { writeArchive } from './archive'
import { makeChecksums } from './checksums'
import {
  CHECKSUMS_SIGNATURE_PATH,
  MANIFEST_PATH,
  type PackageContent,
  type PackageFile,
  SIGNATURE_PATH,
  type SigningKeys,
  VERIFYING_KEY_PATH,
} from './content'
import { makeDataFiles, makeReadme, makeTrailDataFile } from './data-files'
import { type DocumentMaker, makeDocumentsHere } from './documents'
import { makeManifest, writeManifest } from './manifest'
import { getKeyFingerprint, signBytes, signBytesRaw } from './signing'

/**
 * Builds a release package: a ZIP archive with report, drawing, data, artwork, trail and a signed manifest.
 *
 * Reproducible: the same content and keys give the same bytes, whenever and wherever (dates come from the release,
 * nothing is compressed, Ed25519 signatures are deterministic).
 *
 * @param makeDocuments  who lays out report and drawing; a server has it done in a thread
 * @throws RangeError when the bytes of an artwork file are missing or are not what the snapshot records
 */
export async function buildPackage(
  content: PackageContent,
  keys: SigningKeys,
  makeDocuments: DocumentMaker = makeDocumentsHere,
): Promise<Uint8Array> {
  return assemblePackage(await makePackageParts(content, keys, makeDocuments), content, keys)
}

/** Everything of a package but the trail and what covers all files: what takes its time, and does not wait for the release. */
export interface PackageParts {
  readonly files: readonly PackageFile[]
}

export async function makePackageParts(
  content: PackageContent,
  keys: SigningKeys,
  makeDocuments: DocumentMaker = makeDocumentsHere,
): Promise<PackageParts> {
  const fingerprint = getKeyFingerprint(createPublicKey(keys.verifyingKeyPem))
  const data = makeDataFiles(content)
  return {
    files: [
      // Documents name artwork and show none of it: its bytes stay here.
      ...(await makeDocuments({ kind: 'package', content: { ...content, artwork: [] } })),
      ...data,
      makeReadme(content, fingerprint, data),
      { path: VERIFYING_KEY_PATH, bytes: new TextEncoder().encode(keys.verifyingKeyPem) },
    ],
  }
}

/** Puts the trail to the parts, once it holds the release itself, and signs the whole. */
export function assemblePackage(parts: PackageParts, content: PackageContent, keys: SigningKeys): Uint8Array {
  const fingerprint = getKeyFingerprint(createPublicKey(keys.verifyingKeyPem))
  const encoder = new TextEncoder()
  const files = [...parts.files, makeTrailDataFile(content)]
  const manifest = writeManifest(makeManifest(content, files, fingerprint))
  const signed: PackageFile[] = [
    ...files,
    { path: MANIFEST_PATH, bytes: manifest },
    { path: SIGNATURE_PATH, bytes: encoder.encode(signBytes(manifest, keys.signingKeyPem)) },
  ]
  const checksums = makeChecksums(signed)
  return writeArchive([
    ...signed,
    checksums,
    { path: CHECKSUMS_SIGNATURE_PATH, bytes: signBytesRaw(checksums.bytes, keys.signingKeyPem) },
  ])
}
