import type { KeyObject } from 'node:crypto'
import { z } from 'zod'
import { canonicalJson, checkTrail, sha256Hex, type TrailCheck, type TrailFault, type TrailRecord } from '@/lib/review'
import { getKeyFingerprint, isSignatureOf, readVerifyingKey, signBytes } from './signing'

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in hexadecimal')

/** Record and hash that the trail had at a moment, signed with the installation's key (Ed25519, RFC 8032, 2017). */
export const checkpointSchema = z.strictObject({
  /** Of the record that it vouches for. */
  sequence: z.int().positive(),
  hash: sha256Schema,
  /** Hash of the trail's first record: tells one trail from another. */
  trailId: sha256Schema,
  /** ISO 8601 in UTC. */
  at: z.iso.datetime(),
  /** `hashCheckpoint` of the checkpoint before; empty for the first. */
  previousHash: z.union([sha256Schema, z.literal('')]),
  /** Base64. */
  signature: z.string(),
})
export type TrailCheckpoint = z.infer<typeof checkpointSchema>

type Unsigned = Omit<TrailCheckpoint, 'signature'>

/** The bytes that are signed. The name of the form keeps the signature from being taken for one of something else. */
function toSignedBytes({ sequence, hash, trailId, at, previousHash }: Unsigned): Uint8Array {
  const form = { form: 'bendworthy-trail-checkpoint', sequence, hash, trailId, at, previousHash }
  return new TextEncoder().encode(canonicalJson(form))
}

/** @param signingKeyPem  PKCS #8 PEM of an Ed25519 key */
export function makeCheckpoint(unsigned: Unsigned, signingKeyPem: string): TrailCheckpoint {
  return { ...unsigned, signature: signBytes(toSignedBytes(unsigned), signingKeyPem).trim() }
}

export function hashCheckpoint(checkpoint: TrailCheckpoint): string {
  return sha256Hex(canonicalJson(checkpoint))
}

/** What checkpoints are held against: the ends of a trail, and the hashes of the records that they name. */
export interface TrailOutline {
  readonly first: { readonly sequence: number; readonly hash: string } | null
  /** Number of the last record; 0 where there is none. */
  readonly end: number
  /** Of the records that checkpoints name, at least. */
  readonly hashes: ReadonlyMap<number, string>
}

/** The checkpoints of a trail, and the keys by which they are judged. */
export interface Checkpoints {
  /** Part of a longer trail: sequence numbers have gaps. */
  readonly isExtract: boolean
  /** Kept with the trail, in order; each names the one before. */
  readonly checkpoints: readonly TrailCheckpoint[]
  /** Kept elsewhere: beside the database, in an export, in a package. Those of another trail are passed over. */
  readonly others: readonly TrailCheckpoint[]
  /** SPKI PEM of the installation's key. */
  readonly verifyingKeyPem: string
  /** Keys that it used before; each vouches for what was written until it was retired. */
  readonly earlierKeys?: readonly { readonly verifyingKeyPem: string; readonly retiredAt: string }[]
}

export interface CheckpointedTrail extends Checkpoints {
  readonly records: readonly TrailRecord[]
}

/**
 * Checks a trail and its checkpoints, and names the first record that does not fit. A chain alone cannot show that its
 * end was cut off, nor that all of it was rewritten; checkpoints can, since nobody without the key makes one.
 */
export function checkTrailWithCheckpoints(trail: CheckpointedTrail): TrailCheck {
  const { records, isExtract } = trail
  const check = checkTrail(records, { allowGaps: isExtract })
  if (!check.ok) return check
  const fault = checkCheckpoints(trail, {
    first: records[0] ?? null,
    end: records.at(-1)?.sequence ?? 0,
    hashes: new Map(records.map(({ sequence, hash }) => [sequence, hash])),
  })
  return fault === null ? check : { ok: false, fault }
}

/** Holds the checkpoints against a trail whose records were followed before. */
export function checkCheckpoints(own: Checkpoints, outline: TrailOutline): TrailFault | null {
  return findCheckpointFault(own, outline) ?? findUnknownCheckpoint(own.checkpoints, own.others)
}

function findCheckpointFault(
  { isExtract, checkpoints, others, verifyingKeyPem, earlierKeys = [] }: Checkpoints,
  outline: TrailOutline,
): TrailFault | null {
  const key = readVerifyingKey(verifyingKeyPem)
  if (key === null) throw new TypeError('the key of the checkpoints is not an Ed25519 public key in PEM form')
  const earlier = earlierKeys.flatMap(({ verifyingKeyPem: pem, retiredAt }) => {
    const read = readVerifyingKey(pem)
    return read === null ? [] : [{ key: read, retiredAt }]
  })
  const isSigned = (checkpoint: TrailCheckpoint) => {
    const [bytes, signature] = [toSignedBytes(checkpoint), `${checkpoint.signature}\n`]
    const isOf = (candidate: KeyObject) => isSignatureOf(bytes, signature, candidate)
    return isOf(key) || earlier.some((old) => checkpoint.at <= old.retiredAt && isOf(old.key))
  }
  const trailId = isExtract ? null : (outline.first?.hash ?? null)
  let previous: TrailCheckpoint | null = null
  for (const checkpoint of checkpoints) {
    const { sequence, at } = checkpoint
    const fail = (reason: string): TrailFault => ({ sequence, code: 'checkpoint', reason })
    if (!isSigned(checkpoint)) {
      return fail(
        `the checkpoint of record ${sequence} (${at}) does not bear the signature of the key ${getKeyFingerprint(key)}`,
      )
    }
    if (previous !== null && (previous.sequence >= sequence || checkpoint.previousHash !== hashCheckpoint(previous))) {
      return fail(`the checkpoint before that of record ${sequence} is missing or another one`)
    }
    if (!isExtract && previous === null && checkpoint.previousHash !== '') {
      return fail(`the checkpoint of record ${sequence} is the first one here and names one before it`)
    }
    previous = checkpoint
  }
  const trusted = others.filter(isSigned)
  const forged = others.find((other) => !trusted.includes(other))
  if (forged !== undefined) {
    const reason = `a checkpoint of record ${forged.sequence} that is kept elsewhere does not bear the signature of the key ${getKeyFingerprint(key)}`
    return { sequence: forged.sequence, code: 'checkpoint', reason }
  }
  const ofThisTrail = trusted.filter((other) => trailId === null || other.trailId === trailId)
  return findFirst([...checkpoints, ...ofThisTrail].map((checkpoint) => findUnmet(checkpoint, outline, isExtract)))
}

/** What is wrong with the record that a checkpoint vouches for. */
function findUnmet(
  { sequence, hash, trailId, at }: TrailCheckpoint,
  { first, end, hashes }: TrailOutline,
  isExtract: boolean,
): TrailFault | null {
  if (!isExtract && first !== null && first.hash !== trailId) {
    const reason = `a checkpoint of ${at} knows another first record: its hash is ${trailId}, here it is ${first.hash}`
    return { sequence: first.sequence, code: 'head', reason }
  }
  const found = hashes.get(sequence)
  if (found === undefined) {
    if (isExtract) return null
    const missing = sequence === end + 1 ? `record ${sequence} was` : `records ${end + 1} to ${sequence} were`
    const reason = `the trail ends at record ${end}; a checkpoint of ${at} knows record ${sequence}: ${missing} cut off`
    return { sequence: end + 1, code: 'head', reason }
  }
  if (found === hash) return null
  const reason = `record ${sequence} has the hash ${found}; a checkpoint of ${at} knows ${hash}: the trail was rewritten up to there`
  return { sequence, code: 'head', reason }
}

/** One that is known elsewhere and was taken out of the trail's own. */
function findUnknownCheckpoint(
  checkpoints: readonly TrailCheckpoint[],
  others: readonly TrailCheckpoint[],
): TrailFault | null {
  const [first] = checkpoints
  if (first === undefined && others.length === 0) return null
  const known = new Set(checkpoints.map(({ signature }) => signature))
  const unknown = others.find(
    ({ trailId, signature }) => (first === undefined || trailId === first.trailId) && !known.has(signature),
  )
  if (unknown === undefined) return null
  const reason = `the checkpoint of record ${unknown.sequence} (${unknown.at}) is known elsewhere and missing from the trail's own`
  return { sequence: unknown.sequence, code: 'checkpoint', reason }
}

/** Of several faults that at the earliest record. */
function findFirst(faults: readonly (TrailFault | null)[]): TrailFault | null {
  return faults.reduce((a, b) => (b !== null && (a === null || b.sequence < a.sequence) ? b : a), null)
}
