import type { KeyObject } from 'node:crypto'
import { z } from 'zod'
import type { Issue, Result } from '@/lib/engine'
import { canonicalJson, checkTrail } from '@/lib/review'
import { readAnyArchive } from './any-archive'
import { readArchive } from './archive'
import { checkTrailWithCheckpoints } from './checkpoints'
import { parseChecksums } from './checksums'
import {
  CHECKSUMS_PATH,
  CHECKSUMS_SIGNATURE_PATH,
  MANIFEST_PATH,
  type PackageFile,
  SIGNATURE_PATH,
  SIGNED_CONTENT_PATH,
  VERIFYING_KEY_PATH,
} from './content'
import { hashBytes } from './file-hash'
import { judgeKey, type KeyFinding, type KeyRegister } from './key-register'
import { type Manifest, manifestSchema } from './manifest'
import { getKeyFingerprint, isRawSignatureOf, isSignatureOf, readVerifyingKey } from './signing'
import { checkStamp, TIME_STAMP_PATH } from './stamped-release'
import type { TimeStamp } from './time-stamp'
import { parseTrailFile } from './trail-file'
import { checkSignedParts } from './verify-parts'

export interface VerifyOptions {
  /** Public key (SPKI PEM) that the signature must be made with; without it the package's own is taken on trust. */
  readonly trustedKeyPem?: string
  /** Keys of the installation with their dates: the package must be signed by one that counted when it was released. */
  readonly register?: Pick<KeyRegister, 'keys'>
  /** Certificates (PEM) that are trusted for time stamps. */
  readonly timeStampCaPem?: string | undefined
}

/** Byte for byte as written; packed by somebody else; or a folder. */
export type PackageForm = 'as written' | 'repacked' | 'unpacked'

export interface VerifiedPackage {
  readonly form: PackageForm
  readonly manifest: Manifest
  readonly keyFingerprint: string
  /** The key inside the package, SPKI PEM. */
  readonly keyPem: string
  /** The key was compared with one that the caller trusts. */
  readonly isKeyTrusted: boolean
  /** What the register says of the key; null where none was given. */
  readonly keyFinding: KeyFinding | null
  /** When an authority saw the signature on what was released; null where the package has no time stamp. */
  readonly timeStamp: TimeStamp | null
  readonly trailRecordCount: number
  readonly signatureCount: number
}

const add = (issues: Issue[], code: string, file: string | null, message: string) =>
  issues.push({ code, path: file === null ? [] : [file], message })

/**
 * Checks a release package: every file, manifest, signature, checksums, trail, and what the signatures cover. Needs
 * nothing but the bytes. Contents that are whole are accepted in an archive that somebody else packed, which the answer
 * says; `isStrict` accepts the archive alone as it was written, byte for byte.
 *
 * @returns every problem found, each with the file that it is about
 */
export function verifyPackage(
  bytes: Uint8Array,
  options: VerifyOptions & { readonly isStrict?: boolean } = {},
): Result<VerifiedPackage> {
  const strict = readArchive(bytes)
  if (strict.ok) return verifyFiles(strict.value, 'as written', options)
  const general = readAnyArchive(bytes)
  if (!general.ok) {
    // What begins as a ZIP archive and cannot be unpacked is one that was damaged: the strict reader says where.
    const isDamaged = isZip(bytes) && general.issues.every(({ code }) => code === 'unreadable')
    return { ok: false, issues: options.isStrict === true || isDamaged ? strict.issues : general.issues }
  }
  const verified = verifyFiles(general.value, 'repacked', options)
  if (options.isStrict !== true) return verified
  return {
    ok: false,
    issues: [...strict.issues, ...(verified.ok ? [] : withoutDoubles(verified.issues, strict.issues))],
  }
}

const isZip = (bytes: Uint8Array) => bytes[0] === 0x50 && bytes[1] === 0x4b

function withoutDoubles(issues: readonly Issue[], told: readonly Issue[]): Issue[] {
  const places = new Set(told.map(({ code, path }) => `${code} ${path.join('/')}`))
  return issues.filter(({ code, path }) => !places.has(`${code} ${path.join('/')}`))
}

/** Checks the files of a package that somebody unpacked, or that were read from an archive. */
export function verifyFiles(
  list: readonly PackageFile[],
  form: PackageForm,
  options: VerifyOptions = {},
): Result<VerifiedPackage> {
  const files = new Map(list.map((file) => [file.path, file]))
  const issues: Issue[] = []

  const manifestFile = files.get(MANIFEST_PATH)
  if (manifestFile === undefined) {
    add(issues, 'missing', MANIFEST_PATH, 'manifest.json is missing: this is not a release package')
    return { ok: false, issues }
  }
  const key = readKey(files, options, issues)
  checkSignature(files, manifestFile, key, issues)
  const manifest = readManifest(manifestFile, issues)
  if (manifest === null) return { ok: false, issues }
  const { fingerprint } = key
  if (fingerprint !== null && manifest.keyFingerprint !== fingerprint) {
    add(issues, 'wrong-key', VERIFYING_KEY_PATH, 'the manifest names another key than the one in the package')
  }
  const timeStamp = findStamp(files, manifest, key, options, issues)
  const keyFinding = findKey(manifest, key, timeStamp, options, issues)
  checkFiles(files, manifest, issues)
  if (manifest.formatVersion > 1) checkChecksums(files, manifest, key, issues)
  const trailRecordCount = checkTrailFile(files, issues)
  const signatureCount = checkSignedContent(files, manifest, issues)
  if (issues.length > 0 || fingerprint === null) return { ok: false, issues }
  return {
    ok: true,
    value: {
      form,
      manifest,
      keyFingerprint: fingerprint,
      keyPem: readText(files.get(VERIFYING_KEY_PATH) ?? { path: '', bytes: new Uint8Array() }) ?? '',
      isKeyTrusted: options.trustedKeyPem !== undefined || keyFinding !== null,
      keyFinding,
      timeStamp,
      trailRecordCount,
      signatureCount,
    },
  }
}

/** What the register says of the package's key, and whether its signature counts for what the package says of its release. */
function findKey(
  { releasedAt }: Manifest,
  { fingerprint }: Keys,
  timeStamp: TimeStamp | null,
  { register }: VerifyOptions,
  issues: Issue[],
): KeyFinding | null {
  if (register === undefined || fingerprint === null) return null
  // A stamp of an authority that nobody vouches for is no witness: whoever has the key may have made it as well.
  const found = judgeKey(register, fingerprint, releasedAt, timeStamp?.isTrusted === true ? timeStamp.at : null)
  if (found === null) {
    add(issues, 'wrong-key', VERIFYING_KEY_PATH, `the key ${fingerprint} is not in the key register`)
  } else if (found.refusal !== '') {
    add(issues, `key-${found.state.replace(' ', '-')}`, VERIFYING_KEY_PATH, found.refusal)
  }
  return found
}

function findStamp(
  files: ReadonlyMap<string, PackageFile>,
  { revision, contentHash }: Manifest,
  { fingerprint, judge }: Keys,
  { timeStampCaPem }: VerifyOptions,
  issues: Issue[],
): TimeStamp | null {
  const signed = contentHash ?? readLiveSignatures(files.get('signatures.json'))?.[0]?.contentHash ?? ''
  const expected = { revisionId: revision.id, contentHash: signed, keyFingerprint: fingerprint ?? '' }
  const found = checkStamp(files, expected, judge, timeStampCaPem ?? null)
  if (typeof found !== 'string') return found
  add(issues, 'time-stamp', TIME_STAMP_PATH, found)
  return null
}

interface Keys {
  /** Of the package's own key; null where it cannot be read. */
  readonly fingerprint: string | null
  /** The key that signatures are judged by: the trusted one where there is one. */
  readonly judge: KeyObject | null
}

function readKey(files: ReadonlyMap<string, PackageFile>, options: VerifyOptions, issues: Issue[]): Keys {
  const keyFile = files.get(VERIFYING_KEY_PATH)
  if (keyFile === undefined) add(issues, 'missing', VERIFYING_KEY_PATH, 'verifying-key.pem is missing')
  const key = keyFile === undefined ? null : readVerifyingKey(readText(keyFile) ?? '')
  if (keyFile !== undefined && key === null) {
    add(issues, 'bad-key', VERIFYING_KEY_PATH, 'verifying-key.pem is not an Ed25519 public key')
  }
  const fingerprint = key === null ? null : getKeyFingerprint(key)
  if (options.trustedKeyPem === undefined) return { fingerprint, judge: key }
  const judge = readVerifyingKey(options.trustedKeyPem)
  if (judge === null) {
    add(issues, 'bad-key', null, 'the key to compare with is not an Ed25519 public key in PEM form')
  } else if (fingerprint !== null && getKeyFingerprint(judge) !== fingerprint) {
    add(
      issues,
      'wrong-key',
      VERIFYING_KEY_PATH,
      `the package was signed with the key ${fingerprint}, not with the trusted one, ${getKeyFingerprint(judge)}`,
    )
  }
  return { fingerprint, judge }
}

function checkSignature(
  files: ReadonlyMap<string, PackageFile>,
  manifest: PackageFile,
  { judge }: Keys,
  issues: Issue[],
): void {
  const signatureFile = files.get(SIGNATURE_PATH)
  if (signatureFile === undefined) {
    add(issues, 'missing', SIGNATURE_PATH, 'manifest.sig is missing')
  } else if (judge !== null && !isSignatureOf(manifest.bytes, readText(signatureFile) ?? '', judge)) {
    add(
      issues,
      'bad-signature',
      SIGNATURE_PATH,
      'the signature does not match the manifest: one of the two was changed, or another key was used',
    )
  }
}

/** What general tools go by must say the same as the manifest: nobody should be told two things by one package. */
function checkChecksums(
  files: ReadonlyMap<string, PackageFile>,
  manifest: Manifest,
  { judge }: Keys,
  issues: Issue[],
): void {
  const sumsFile = files.get(CHECKSUMS_PATH)
  const signatureFile = files.get(CHECKSUMS_SIGNATURE_PATH)
  if (sumsFile === undefined) add(issues, 'missing', CHECKSUMS_PATH, 'SHA256SUMS is missing')
  if (signatureFile === undefined) add(issues, 'missing', CHECKSUMS_SIGNATURE_PATH, 'SHA256SUMS.sig is missing')
  if (sumsFile === undefined) return
  const hasSignature = signatureFile !== undefined && judge !== null
  if (hasSignature && !isRawSignatureOf(sumsFile.bytes, signatureFile.bytes, judge)) {
    const message = 'the signature does not match SHA256SUMS: one of the two was changed, or another key was used'
    add(issues, 'bad-signature', CHECKSUMS_SIGNATURE_PATH, message)
  }
  const sums = parseChecksums(readText(sumsFile) ?? '')
  const expected = new Map(manifest.files.map(({ path, sha256 }) => [path, sha256]))
  for (const path of [MANIFEST_PATH, SIGNATURE_PATH]) {
    const file = files.get(path)
    // A manifest or signature that is missing or changed is reported as such already.
    expected.set(path, file === undefined ? (sums?.get(path) ?? '') : hashBytes(file.bytes))
  }
  const differing =
    sums === null
      ? [CHECKSUMS_PATH]
      : [...new Set([...expected.keys(), ...sums.keys()])].filter((path) => sums.get(path) !== expected.get(path))
  if (differing.length > 0 && !isBlamed(issues, differing)) {
    add(issues, 'changed', CHECKSUMS_PATH, `SHA256SUMS and the manifest differ for ${differing.join(', ')}`)
  }
}

const isBlamed = (issues: readonly Issue[], paths: readonly string[]) =>
  paths.every((path) => issues.some((issue) => issue.path[0] === path))

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
  const apart = manifest.formatVersion > 1 ? [CHECKSUMS_PATH, CHECKSUMS_SIGNATURE_PATH] : []
  const listed = new Set<string>([MANIFEST_PATH, SIGNATURE_PATH, ...apart])
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
    if (!listed.has(path)) add(issues, 'extra', path, `${path} is in the package but not in the manifest`)
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
  for (const { file, message } of checkSignedParts(
    files,
    live.map(({ contentHash }) => contentHash),
  )) {
    if (!isBlamed(issues, [file])) add(issues, 'other-content', file, message)
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
  if (!isBlamed(issues, ['design.json']) && !isSameDesign(files.get('design.json'), content)) {
    add(issues, 'other-content', 'design.json', 'design.json is not the design that was signed')
  }
  for (const { name, contentHash } of live) {
    if (contentHash !== manifest.contentHash) {
      add(
        issues,
        'other-content',
        'signatures.json',
        `the signature of ${name} covers other content than the package contains`,
      )
    }
  }
  return live.length
}

const signedSchema = z.looseObject({ design: z.json() })

function isSameDesign(designFile: PackageFile | undefined, content: PackageFile): boolean {
  if (designFile === undefined) return true // reported as missing already
  try {
    const signed = signedSchema.parse(JSON.parse(readText(content) ?? ''))
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
