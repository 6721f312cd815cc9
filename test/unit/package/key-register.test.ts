import { generateKeyPairSync } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { endorseKey, isRegisterTrusted, type KeyEntry, makeKeyRegister, readKeyRegister } from '@/lib/package'
import { judgeKey } from '@/lib/package/key-register'
import { getKeyFingerprint, readVerifyingKey } from '@/lib/package/signing'

/**
 * That a key has a period of use, that what it signed before its end stays valid, and that of a compromised one only what is shown to be older, is NIST SP
 * 800-57 part 1 revision 5 (2020), 5.3 and 5.5 (from memory); the form of the register is ours.
 */
function makeKey() {
  const { publicKey, privateKey } = generateKeyPairSync('ed25519')
  const verifyingKeyPem = publicKey.export({ type: 'spki', format: 'pem' }).toString()
  const key = readVerifyingKey(verifyingKeyPem)
  if (key === null) throw new Error('no key')
  const signingKeyPem = privateKey.export({ type: 'pkcs8', format: 'pem' }).toString()
  return { verifyingKeyPem, signingKeyPem, fingerprint: getKeyFingerprint(key) }
}

const [first, second, third, stranger] = [makeKey(), makeKey(), makeKey(), makeKey()]
const TIMES = ['2026-01-01T08:00:00.000Z', '2027-01-01T08:00:00.000Z', '2028-01-01T08:00:00.000Z'] as const

function entry(own: typeof first, index: number, change: Partial<KeyEntry> = {}): KeyEntry {
  const before = [null, first, second][index] ?? null
  const since = TIMES[index] ?? ''
  const { fingerprint, verifyingKeyPem } = own
  return {
    fingerprint,
    verifyingKeyPem,
    since,
    retiredAt: TIMES[index + 1] ?? null,
    compromisedAt: null,
    reason: '',
    endorsement: before === null ? '' : endorseKey({ fingerprint, since }, before.signingKeyPem),
    ...change,
  }
}

const keys = [entry(first, 0), entry(second, 1), entry(third, 2)]
const issue = (list: readonly KeyEntry[], signer = third) =>
  makeKeyRegister({ workspace: 'Quillmoor Instruments', issuedAt: TIMES[2], keys: [...list] }, signer.signingKeyPem)
const codeOf = (value: object) => {
  const read = readKeyRegister(JSON.stringify(value))
  return read.ok ? 'ok' : read.issues[0]?.code
}

describe('the key register', () => {
  it('is read where it is whole, and refused where anything of it was changed', () => {
    const register = issue(keys)
    expect(codeOf(register)).toBe('ok')
    expect(codeOf({ ...register, workspace: 'Elsewhere' })).toBe('bad-signature')
    expect(codeOf({ ...register, keys: [entry(first, 0, { compromisedAt: TIMES[0] }), ...keys.slice(1)] })).toBe(
      'bad-signature',
    )
    expect(codeOf({ ...register, keys: keys.slice(0, 2) })).toBe('malformed')
    // Another key under a known fingerprint.
    const forged = [entry(first, 0), { ...entry(stranger, 1), fingerprint: second.fingerprint }, entry(third, 2)]
    expect(codeOf(issue(forged))).toBe('bad-key')
    expect(codeOf(issue(keys, stranger))).toBe('bad-signature')
  })

  it('follows from a trusted key where each was endorsed by the one before', () => {
    const register = issue(keys)
    for (const { fingerprint } of [first, second, third]) expect(isRegisterTrusted(register, fingerprint)).toBe(true)
    expect(isRegisterTrusted(register, stranger.fingerprint)).toBe(false)
    // Somebody who hangs a key of their own behind a real one.
    const own = [entry(first, 0, { retiredAt: TIMES[1] }), entry(stranger, 1, { retiredAt: null, endorsement: '' })]
    expect(isRegisterTrusted(issue(own, stranger), first.fingerprint)).toBe(false)
  })

  it('follows from no key that was compromised: whoever has it endorses a key of their own', () => {
    const list = [entry(first, 0, { compromisedAt: '2026-06-01T00:00:00.000Z' }), entry(second, 1), entry(third, 2)]
    const register = issue(list)
    expect(isRegisterTrusted(register, first.fingerprint)).toBe(false)
    expect(isRegisterTrusted(register, second.fingerprint)).toBe(true)
  })

  it('counts a signature for what was released while its key was in use', () => {
    const judge = (key: typeof first, releasedAt: string) => judgeKey({ keys }, key.fingerprint, releasedAt)
    expect(judge(first, '2026-05-05T00:00:00.000Z')).toMatchObject({ state: 'retired', refusal: '' })
    expect(judge(first, '2027-05-05T00:00:00.000Z')?.refusal).toContain('in use from 2026-01-01 to 2027-01-01')
    expect(judge(second, '2026-05-05T00:00:00.000Z')?.refusal).not.toBe('')
    expect(judge(third, '2028-05-05T00:00:00.000Z')).toMatchObject({ state: 'in use', refusal: '' })
    expect(judge(stranger, '2026-05-05T00:00:00.000Z')).toBeNull()
  })

  it('counts none of a compromised key, whatever date it bears, but what a witness shows to be older', () => {
    const list = { keys: [entry(first, 0, { compromisedAt: '2026-06-01T00:00:00.000Z', reason: 'a disk was lost' })] }
    const judge = (provenBy: string | null) =>
      judgeKey(list, first.fingerprint, '2026-02-02T00:00:00.000Z', provenBy)?.refusal
    expect(judge(null)).toContain('compromised on 2026-06-01')
    expect(judge('2026-06-02T00:00:00.000Z')).not.toBe('')
    expect(judge('2026-05-31T00:00:00.000Z')).toBe('')
  })
})
