import type { Issue, Result } from '@/lib/engine'
import { canonicalJson, checkTrail } from '@/lib/review'
import { readArchive } from './archive'
import { checkTrailWithCheckpoints } from './checkpoints'
import { MANIFEST_PATH, type PackageFile, SIGNATURE_PATH, SIGNED_CONTENT_PATH, VERIFYING_KEY_PATH } from './content'
import { hashBytes } from './file-hash'
import { type Manifest, manifestSchema } from './manifest'
import { getKeyFingerprint, isSignatureOf, readVerifyingKey } from './signing'
import { parseTrailFile } from './trail-file'

export interface VerifyOptions {
  /** Public key (SPKI PEM) that the signature must be made with; without it the package's own is taken on trust. */
  readonly trustedKeyPem?: string
}

export interface VerifiedPackage {
  readonly manifest: Manifest
  readonly keyFingerprint: string
  /** The key was compared with one that the caller trusts. */
  readonly isKeyTrusted: boolean
  readonly trailRecordCount: number
  readonly signatureCount: number
}

const add = (issues: Issue[], code: string, file: string | null, message: string) =>
  issues.push({ code, path: file === null ? [] : [file], message })

/**
 * Checks a release package: structure, every file, manifest, signature, trail, and what the signatures cover. Needs
 * nothing but the bytes.
 *
 * @returns every problem found, each with the file that it is about
 */
export function verifyPackage(bytes: Uint8Array, options: VerifyOptions = {}): Result<VerifiedPackage> {
  const archive = readArchive(bytes)
  if (!archive.ok) return archive
  const files = new Map(archive.value.map((file) => [file.path, file]))
  const issues: Issue[] = []

  const manifestFile = files.get(MANIFEST_PATH)
  if (manifestFile === undefined) {
    add(issues, 'missing', MANIFEST_PATH, 'manifest.json is missing: this is not a release package')
    return { ok: false, issues }
  }
  const fingerprint = checkSignature(files, manifestFile, options, issues)
  const manifest = readManifest(manifestFile, issues)
  if (manifest === null) return { ok: false, issues }
  if (fingerprint !== null && manifest.keyFingerprint !== fingerprint) {
    add(issues, 'wrong-key', VERIFYING_KEY_PATH, 'the manifest names another key than the one in the package')
  }
  checkFiles(files, manifest, issues)
  const trailRecordCount = checkTrailFile(files, issues)
  const signatureCount = checkSignedContent(files, manifest, issues)
  if (issues.length > 0 || fingerprint === null) return { ok: false, issues }
  return {
    ok: true,
    value: {
      manifest,
      keyFingerprint: fingerprint,
      isKeyTrusted: options.trustedKeyPem !== undefined,
      trailRecordCount,
      signatureCount,
    },
  }
}

/** @returns the fingerprint of the package's key; null where it cannot be read */
function checkSignature(
  files: ReadonlyMap<string, PackageFile>,
  manifest: PackageFile,
  options: VerifyOptions,
  issues: Issue[],
): string | null {
  const keyFile = files.get(VERIFYING_KEY_PATH)
  const signatureFile = files.get(SIGNATURE_PATH)
  if (keyFile === undefined) add(issues, 'missing', VERIFYING_KEY_PATH, 'verifying-key.pem is missing')
  if (signatureFile === undefined) add(issues, 'missing', SIGNATURE_PATH, 'manifest.sig is missing')
  const key = keyFile === undefined ? null : readVerifyingKey(readText(keyFile) ?? '')
  if (keyFile !== undefined && key === null) {
    add(issues, 'bad-key', VERIFYING_KEY_PATH, 'verifying-key.pem is not an Ed25519 public key')
  }
  let judge = key
  if (options.trustedKeyPem !== undefined) {
    judge = readVerifyingKey(options.trustedKeyPem)
    if (judge === null) {
      add(issues, 'bad-key', null, 'the key to compare with is not an Ed25519 public key in PEM form')
    } else if (key !== null && getKeyFingerprint(judge) !== getKeyFingerprint(key)) {
      add(
        issues,
        'wrong-key',
        VERIFYING_KEY_PATH,
        `the package was signed with the key ${getKeyFingerprint(key)}, not with the trusted one, ${getKeyFingerprint(judge)}`,
      )
    }
  }
  if (judge !== null && signatureFile !== undefined) {
    if (!isSignatureOf(manifest.bytes, readText(signatureFile) ?? '', judge)) {
      add(
        issues,
        'bad-signature',
        SIGNATURE_PATH,
        'the signature does not fit the manifest: one of the two was changed, or another key signed',
      )
    }
  }
  return key === null ? null : getKeyFingerprint(key)
}

function readManifest(file: PackageFile, issues: Issue[]): Manifest | null {
  const text = readText(file)
  let value: unknown
  try {
    value = JSON.parse(text ?? '')
  } catch {
    add(issues, 'malformed', MANIFEST_PATH, 'manifest.json is not JSON')
    return null
  }
  const parsed = manifestSchema.safeParse(value)
  if (parsed.success) return parsed.data
  for (const issue of parsed.error.issues.slice(0, 10)) {
    const field = issue.path.map(String).join('.')
    add(issues, 'malformed', MANIFEST_PATH, `manifest.json, ${field === '' ? 'as a whole' : field}: ${issue.message}`)
  }
  return null
}

function checkFiles(files: ReadonlyMap<string, PackageFile>, manifest: Manifest, issues: Issue[]): void {
  const listed = new Set<string>([MANIFEST_PATH, SIGNATURE_PATH])
  for (const entry of manifest.files) {
    listed.add(entry.path)
    const file = files.get(entry.path)
    if (file === undefined) {
      add(issues, 'missing', entry.path, `${entry.path} is listed in the manifest and missing from the package`)
    } else if (file.bytes.length !== entry.sizeBytes) {
      add(
        issues,
        'changed',
        entry.path,
        `${entry.path} was changed: it has ${file.bytes.length} bytes, the manifest says ${entry.sizeBytes}`,
      )
    } else if (hashBytes(file.bytes) !== entry.sha256) {
      add(issues, 'changed', entry.path, `${entry.path} was changed: its SHA-256 is not the one in the manifest`)
    }
  }
  for (const path of files.keys()) {
    if (!listed.has(path)) add(issues, 'extra', path, `${path} is in the package and not in the manifest`)
  }
}

function checkTrailFile(files: ReadonlyMap<string, PackageFile>, issues: Issue[]): number {
  const file = files.get('trail.json')
  if (file === undefined) {
    if (!issues.some(({ path }) => path[0] === 'trail.json'))
      add(issues, 'missing', 'trail.json', 'trail.json is missing')
    return 0
  }
  const parsed = parseTrailFile(readText(file) ?? '')
  if (!parsed.ok) {
    for (const { path, message } of parsed.issues) {
      add(issues, 'malformed', 'trail.json', `trail.json, ${path.join('.') || 'as a whole'}: ${message}`)
    }
    return 0
  }
  const keyFile = files.get(VERIFYING_KEY_PATH)
  const verifyingKeyPem = keyFile === undefined ? '' : (readText(keyFile) ?? '')
  // Without a readable key, which is reported already, no checkpoint can be judged.
  const check =
    readVerifyingKey(verifyingKeyPem) === null
      ? checkTrail(parsed.value.records, { allowGaps: parsed.value.isExtract })
      : checkTrailWithCheckpoints({ ...parsed.value, others: [], verifyingKeyPem })
  if (!check.ok) add(issues, 'trail', 'trail.json', `trail.json: ${check.fault.reason}`)
  return parsed.value.records.length
}

/** Signatures that stand must name the content that the package holds. */
function checkSignedContent(files: ReadonlyMap<string, PackageFile>, manifest: Manifest, issues: Issue[]): number {
  const live = readLiveSignatures(files.get('signatures.json'))
  if (live === null) {
    add(issues, 'malformed', 'signatures.json', 'signatures.json does not hold a list of signatures')
    return 0
  }
  if (manifest.contentHash === null) return live.length
  const content = files.get(SIGNED_CONTENT_PATH)
  if (content === undefined) {
    if (!manifest.files.some(({ path }) => path === SIGNED_CONTENT_PATH)) {
      add(issues, 'missing', SIGNED_CONTENT_PATH, `${SIGNED_CONTENT_PATH} is missing`)
    }
    return live.length
  }
  if (hashBytes(content.bytes) !== manifest.contentHash) {
    add(issues, 'changed', SIGNED_CONTENT_PATH, `${SIGNED_CONTENT_PATH} is not the content that the manifest names`)
  }
  if (!isSameDesign(files.get('design.json'), content)) {
    add(issues, 'other-content', 'design.json', 'design.json is not the design that was signed')
  }
  for (const { name, contentHash } of live) {
    if (contentHash !== manifest.contentHash) {
      add(
        issues,
        'other-content',
        'signatures.json',
        `the signature of ${name} is on other content than the package holds`,
      )
    }
  }
  return live.length
}

function isSameDesign(designFile: PackageFile | undefined, content: PackageFile): boolean {
  if (designFile === undefined) return true // reported as missing already
  try {
    const signed = JSON.parse(readText(content) ?? '') as { design?: unknown }
    return canonicalJson(JSON.parse(readText(designFile) ?? '')) === canonicalJson(signed.design)
  } catch {
    return false
  }
}

function readLiveSignatures(file: PackageFile | undefined): { name: string; contentHash: string }[] | null {
  try {
    const value: unknown = JSON.parse((file && readText(file)) ?? '')
    if (typeof value !== 'object' || value === null || !('signatures' in value)) return null
    const { signatures } = value
    if (!Array.isArray(signatures)) return null
    return signatures.flatMap((entry: unknown) => {
      if (typeof entry !== 'object' || entry === null) return []
      const { name, contentHash, voided } = entry as { name?: unknown; contentHash?: unknown; voided?: unknown }
      return voided === null ? [{ name: String(name), contentHash: String(contentHash) }] : []
    })
  } catch {
    return null
  }
}

/** Strict UTF-8, or null. */
function readText(file: PackageFile): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(file.bytes)
  } catch {
    return null
  }
}
