import { z } from 'zod'
import type { Result } from '@/lib/engine'
import { readSignedJson, refuseSigned, signJson, toSignedBytes } from './signed-json'
import { getKeyFingerprint, isSignatureOf, readVerifyingKey } from './signing'

export const STATUS_LIST_FORM = 'bendworthy-status-list'

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in hexadecimal')

const entrySchema = z.strictObject({
  /** As the manifest of the package names it. */
  revisionId: z.string(),
  partNumber: z.string(),
  revision: z.string(),
  status: z.enum(['released', 'superseded', 'withdrawn']),
  since: z.iso.datetime(),
  /** The revision that replaced it; null where none did. */
  supersededBy: z.string().nullable(),
  /** YYYY-MM-DD: the last day of a release with a date limit. */
  validUntil: z.string().nullable(),
  quantityLimit: z.int().nullable(),
})
export type StatusEntry = z.infer<typeof entrySchema>

const statusListSchema = z.strictObject({
  form: z.literal(STATUS_LIST_FORM),
  formatVersion: z.literal(1),
  workspace: z.string(),
  /** ISO 8601 in UTC. */
  issuedAt: z.iso.datetime(),
  /** Afterwards the list is too old to go by. */
  nextUpdateBy: z.iso.datetime(),
  keyFingerprint: sha256Schema,
  entries: z.array(entrySchema),
  /** Base64, over the canonical form (RFC 8785) of all other fields. */
  signature: z.string(),
})
export type StatusList = z.infer<typeof statusListSchema>

/** A list goes out of date: what happened since is not on it. */
const DAYS_CURRENT = 30

/**
 * Which issued revisions are in force, signed with the installation's key: it tells anybody who holds a package, without
 * asking the server, what became of it. It holds what its reader may see and nothing else.
 */
export function makeStatusList(
  content: { readonly workspace: string; readonly issuedAt: Date; readonly entries: readonly StatusEntry[] },
  keys: { readonly signingKeyPem: string; readonly verifyingKeyPem: string },
): StatusList {
  const key = readVerifyingKey(keys.verifyingKeyPem)
  if (key === null) throw new TypeError('the installation has no Ed25519 key')
  const unsigned = {
    form: STATUS_LIST_FORM as typeof STATUS_LIST_FORM,
    formatVersion: 1 as const,
    workspace: content.workspace,
    issuedAt: content.issuedAt.toISOString(),
    nextUpdateBy: new Date(content.issuedAt.getTime() + DAYS_CURRENT * 86_400_000).toISOString(),
    keyFingerprint: getKeyFingerprint(key),
    entries: [...content.entries],
  }
  return { ...unsigned, signature: signJson(unsigned, keys.signingKeyPem) }
}

/** Reads a list, and refuses one that does not bear the key's signature. */
export function readStatusList(text: string, verifyingKeyPem: string): Result<StatusList> {
  const parsed = readSignedJson(text, statusListSchema, 'the status list')
  if (!parsed.ok) return parsed
  const key = readVerifyingKey(verifyingKeyPem)
  if (key === null) return refuseSigned('bad-key', 'the key to judge the status list by is not an Ed25519 public key')
  const { signature, ...unsigned } = parsed.value
  if (!isSignatureOf(toSignedBytes(unsigned), `${signature}\n`, key)) {
    return refuseSigned(
      'bad-signature',
      `the status list does not bear the signature of the key ${getKeyFingerprint(key)}`,
    )
  }
  return { ok: true, value: parsed.value }
}

/** What became of a package. `unknown` is never good news. */
export interface PackageStatus {
  readonly word: 'in force' | 'superseded' | 'withdrawn' | 'expired' | 'unknown'
  readonly sentence: string
}

const day = (iso: string) => iso.slice(0, 10)

/** @param list  null where nobody has given one */
export function judgeStatus(revisionId: string, list: StatusList | null, now: Date, releasedAt: string): PackageStatus {
  if (list === null) {
    return {
      word: 'unknown',
      sentence: `status unknown as of ${day(now.toISOString())}: no status list was given; the package itself says that it was released ${day(releasedAt)}`,
    }
  }
  const entry = list.entries.find((known) => known.revisionId === revisionId)
  if (entry === undefined) {
    return {
      word: 'unknown',
      sentence: `status unknown as of ${day(list.issuedAt)}: the status list of that day does not name this revision`,
    }
  }
  const found = describeEntry(entry, now)
  // What is obsolete stays obsolete, however old the list is.
  if (found.word !== 'in force' || now.toISOString() <= list.nextUpdateBy) return found
  return {
    word: 'unknown',
    sentence: `status unknown as of ${day(now.toISOString())}: the status list is of ${day(list.issuedAt)} and was to be renewed by ${day(list.nextUpdateBy)}; on its day the revision was in force`,
  }
}

/** An entry in words, as of a day. */
export function describeEntry(entry: StatusEntry, now: Date): PackageStatus {
  const name = `${entry.partNumber === '' ? 'the part' : entry.partNumber}, revision ${entry.revision}`
  if (entry.status === 'withdrawn') {
    return {
      word: 'withdrawn',
      sentence: `WITHDRAWN: ${name}, was withdrawn on ${day(entry.since)}; do not build from it`,
    }
  }
  if (entry.status === 'superseded') {
    const by = entry.supersededBy === null ? '' : ` by revision ${entry.supersededBy}`
    return {
      word: 'superseded',
      sentence: `SUPERSEDED: ${name}, was superseded${by} on ${day(entry.since)}; do not build from it`,
    }
  }
  if (entry.validUntil !== null && entry.validUntil < day(now.toISOString())) {
    return {
      word: 'expired',
      sentence: `EXPIRED: the conditional release of ${name}, ended on ${entry.validUntil}; do not build from it`,
    }
  }
  const limits = [
    ...(entry.quantityLimit === null ? [] : [`for at most ${entry.quantityLimit} parts`]),
    ...(entry.validUntil === null ? [] : [`until ${entry.validUntil}`]),
  ]
  return { word: 'in force', sentence: `in force: ${name}${limits.length === 0 ? '' : `, ${limits.join(', ')}`}` }
}
