import { z } from 'zod'
import type { Result } from '@/lib/engine'
import { readSignedJson, refuseSigned, signJson, toSignedBytes } from './signed-json'
import { getKeyFingerprint, isSignatureOf, readVerifyingKey, signBytes } from './signing'

export const KEY_REGISTER_FORM = 'bendworthy-key-register'

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in hexadecimal')

const entrySchema = z.strictObject({
  /** SHA-256 of the key's SPKI DER form. */
  fingerprint: sha256Schema,
  /** SPKI PEM. */
  verifyingKeyPem: z.string(),
  /** From when on the installation signed with it. */
  since: z.iso.datetime(),
  /** When another key took its place; null for the key in use. */
  retiredAt: z.iso.datetime().nullable(),
  /** From when on somebody else may have had it; null where nothing is known of that. */
  compromisedAt: z.iso.datetime().nullable(),
  /** Why it was retired or reported. */
  reason: z.string(),
  /** Signature of the key before over this one's fingerprint and date; empty for the first, and where the key before was compromised. */
  endorsement: z.string(),
})
export type KeyEntry = z.infer<typeof entrySchema>

const registerSchema = z.strictObject({
  form: z.literal(KEY_REGISTER_FORM),
  formatVersion: z.literal(1),
  workspace: z.string(),
  issuedAt: z.iso.datetime(),
  /** Oldest first; the last one is in use. */
  keys: z.array(entrySchema).min(1),
  /** Base64, by the key in use, over the canonical form (RFC 8785) of all other fields. */
  signature: z.string(),
})
export type KeyRegister = z.infer<typeof registerSchema>

/** What the key before signs of its successor. The name of the form keeps it from being taken for a signature of something else. */
const toEndorsed = ({ fingerprint, since }: Pick<KeyEntry, 'fingerprint' | 'since'>) =>
  toSignedBytes({ form: 'bendworthy-key-endorsement', fingerprint, since })

/** @param signingKeyPem  of the key before, PKCS #8 PEM */
export function endorseKey(next: Pick<KeyEntry, 'fingerprint' | 'since'>, signingKeyPem: string): string {
  return signBytes(toEndorsed(next), signingKeyPem).trim()
}

/** @param signingKeyPem  of the key in use */
export function makeKeyRegister(
  content: Pick<KeyRegister, 'workspace' | 'issuedAt' | 'keys'>,
  signingKeyPem: string,
): KeyRegister {
  const unsigned = { form: KEY_REGISTER_FORM, formatVersion: 1, ...content } as const
  return { ...unsigned, keys: [...content.keys], signature: signJson(unsigned, signingKeyPem) }
}

/** Reads a register, and refuses one that contradicts itself or does not bear the signature of its key in use. */
export function readKeyRegister(text: string): Result<KeyRegister> {
  const parsed = readSignedJson(text, registerSchema, 'the key register')
  if (!parsed.ok) return parsed
  const { signature, ...unsigned } = parsed.value
  for (const [index, entry] of parsed.value.keys.entries()) {
    const key = readVerifyingKey(entry.verifyingKeyPem)
    const isLast = index === parsed.value.keys.length - 1
    if (key === null || getKeyFingerprint(key) !== entry.fingerprint) {
      return refuseSigned(
        'bad-key',
        `the key register: the key ${entry.fingerprint} is not the one that stands under it`,
      )
    }
    if ((entry.retiredAt === null) !== isLast) {
      return refuseSigned('malformed', 'the key register: one key is in use, and it is the last')
    }
    if (isLast && !isSignatureOf(toSignedBytes(unsigned), `${signature}\n`, key)) {
      return refuseSigned(
        'bad-signature',
        `the key register does not bear the signature of the key ${entry.fingerprint}`,
      )
    }
  }
  return { ok: true, value: parsed.value }
}

/**
 * Does the register follow from a key that the reader trusts? Each later key must be endorsed by the one before it, and none on the way be
 * compromised: whoever has such a key can endorse one of their own.
 */
export function isRegisterTrusted({ keys }: KeyRegister, trustedFingerprint: string): boolean {
  const at = keys.findIndex(({ fingerprint }) => fingerprint === trustedFingerprint)
  if (at === -1) return false
  return keys.slice(at + 1).every((entry, index) => {
    const before = keys[at + index]
    const key = before === undefined || before.compromisedAt !== null ? null : readVerifyingKey(before.verifyingKeyPem)
    return key !== null && isSignatureOf(toEndorsed(entry), `${entry.endorsement}\n`, key)
  })
}

/** What the register says of the key of a package. */
export interface KeyFinding {
  readonly state: 'in use' | 'retired' | 'compromised'
  readonly sentence: string
  /** Why the signature does not count; empty where it does. */
  readonly refusal: string
}

const day = (iso: string) => iso.slice(0, 10)

/**
 * @param releasedAt  as the package says, ISO 8601 in UTC
 * @param provenBy  a moment at which the package existed, by a witness that does not need this key (a trusted time stamp); null where there is none
 * @returns null where the register does not know the key
 */
export function judgeKey(
  { keys }: Pick<KeyRegister, 'keys'>,
  fingerprint: string,
  releasedAt: string,
  provenBy: string | null = null,
): KeyFinding | null {
  const entry = keys.find((known) => known.fingerprint === fingerprint)
  if (entry === undefined) return null
  const { since, retiredAt, compromisedAt, reason } = entry
  const period = retiredAt === null ? `in use since ${day(since)}` : `in use from ${day(since)} to ${day(retiredAt)}`
  const why = reason === '' ? '' : ` (${reason})`
  if (compromisedAt !== null) {
    const sentence = `COMPROMISED since ${day(compromisedAt)}${why}; ${period}`
    const isProven = provenBy !== null && provenBy < compromisedAt
    return {
      state: 'compromised',
      sentence,
      refusal: isProven
        ? ''
        : `the key was compromised on ${day(compromisedAt)}: whoever has it can sign with any date, and no trusted time stamp shows that this package is older`,
    }
  }
  const isOutside = releasedAt < since || (retiredAt !== null && releasedAt > retiredAt)
  return {
    state: retiredAt === null ? 'in use' : 'retired',
    sentence: retiredAt === null ? period : `retired: ${period}${why}`,
    refusal: isOutside ? `the package says that it was released ${day(releasedAt)}, and the key was ${period}` : '',
  }
}
