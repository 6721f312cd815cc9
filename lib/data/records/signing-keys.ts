import 'server-only'
import { z } from 'zod'
import { getSecrets, readSigningKeyFile } from '@/lib/config'
import { readStoredJson } from '@/lib/engine'
import { getKeyFingerprint, type KeyEntry, readVerifyingKey } from '@/lib/package'
import type { TransactionClient } from '../store/client'

/** Both halves of the key in use, with the name by which people know it. */
export interface SigningKeys {
  readonly signingKeyPem: string
  readonly verifyingKeyPem: string
  readonly fingerprint: string
  /** From when on it is in use, ISO 8601 in UTC. */
  readonly since: string
}

/** What a rotation records. The keys of an installation are what its trail says: there is no second list to fall out of step. */
const rotatedSchema = z.looseObject({
  fingerprint: z.string(),
  verifyingKeyPem: z.string(),
  since: z.string(),
  /** Until when the key before counts; absent in records from before, where it is `since`. */
  previousUntil: z.string().optional(),
  previous: z.looseObject({ fingerprint: z.string(), verifyingKeyPem: z.string(), since: z.string() }),
  reason: z.string(),
  compromisedAt: z.string().nullable(),
  endorsement: z.string(),
})
const compromisedSchema = z.looseObject({ fingerprint: z.string(), compromisedAt: z.string(), reason: z.string() })

/** Every key of the installation, oldest first; the last one is in use. */
export async function loadKeys(tx: TransactionClient): Promise<KeyEntry[]> {
  const rows = await tx.trailRecord.findMany({
    where: { projectId: null, action: { in: ['signing-key-rotated', 'signing-key-compromised'] } },
    orderBy: { sequence: 'asc' },
  })
  const keys = new Map<string, KeyEntry>()
  const change = (fingerprint: string, changed: Partial<KeyEntry>) => {
    const known = keys.get(fingerprint)
    if (known !== undefined) keys.set(fingerprint, { ...known, ...changed })
  }
  for (const { action, detailsJson } of rows) {
    if (action === 'signing-key-compromised') {
      const { fingerprint, compromisedAt, reason } = readStoredJson('a compromised key', compromisedSchema, detailsJson)
      change(fingerprint, { compromisedAt, reason })
      continue
    }
    const { previous, previousUntil, reason, compromisedAt, ...next } = readStoredJson(
      'a change of keys',
      rotatedSchema,
      detailsJson,
    )
    const { fingerprint, verifyingKeyPem, since, endorsement } = next
    if (!keys.has(previous.fingerprint)) keys.set(previous.fingerprint, makeFirst(previous))
    change(previous.fingerprint, { retiredAt: previousUntil ?? since, compromisedAt, reason })
    keys.set(fingerprint, { ...makeFirst({ fingerprint, verifyingKeyPem, since }), endorsement })
  }
  if (keys.size > 0) return [...keys.values()]
  const { verifyingKeyPem } = getSecrets()
  const first = await tx.trailRecord.findFirst({ orderBy: { sequence: 'asc' }, select: { at: true } })
  const since = first?.at ?? new Date(0).toISOString()
  return [makeFirst({ fingerprint: nameKey(verifyingKeyPem), verifyingKeyPem, since })]
}

const makeFirst = (key: Pick<KeyEntry, 'fingerprint' | 'verifyingKeyPem' | 'since'>): KeyEntry => ({
  fingerprint: key.fingerprint,
  verifyingKeyPem: key.verifyingKeyPem,
  since: key.since,
  retiredAt: null,
  compromisedAt: null,
  reason: '',
  endorsement: '',
})

export function nameKey(verifyingKeyPem: string): string {
  const key = readVerifyingKey(verifyingKeyPem)
  if (key === null) throw new TypeError('the installation has no Ed25519 key')
  return getKeyFingerprint(key)
}

/**
 * Until when a key counts that is retired now. What it signed while the server's clock was ahead bears a later date than now, and stays good.
 *
 * @param key  the one in use
 */
export async function findRetirement(
  tx: TransactionClient,
  { since }: Pick<KeyEntry, 'since'>,
  now: Date,
): Promise<string> {
  const [releases, checkpoints] = await Promise.all([
    tx.release.aggregate({ where: { releasedAt: { gte: new Date(since) } }, _max: { releasedAt: true } }),
    tx.trailCheckpoint.aggregate({ where: { at: { gte: since } }, _max: { at: true } }),
  ])
  const signed = [releases._max.releasedAt?.toISOString(), checkpoints._max.at]
  return signed.reduce<string>((last, one) => (one != null && one > last ? one : last), now.toISOString())
}

/** The key to sign with now: its private half lies beside the other secrets, and which one it is stands in the trail. */
export async function loadSigningKeys(tx: TransactionClient): Promise<SigningKeys> {
  const keys = await loadKeys(tx)
  const current = keys.at(-1)
  if (current === undefined) throw new Error('the installation has no signing key')
  const { fingerprint, verifyingKeyPem, since } = current
  const signingKeyPem = keys.length === 1 ? getSecrets().signingKeyPem : readSigningKeyFile(fingerprint)
  return { signingKeyPem, verifyingKeyPem, fingerprint, since }
}
