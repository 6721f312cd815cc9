import { describe, expect, test } from 'vitest'
import { settingsInput } from '@/lib/inputs'
import {
  decideSignatureWithdrawal,
  decideSigning,
  findBlockers,
  hashPresentSubstance,
  hashSignedContent,
  listSigningCapacities,
  type ReviewSnapshot,
  type Signature,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'
import { AUDITOR, LEAD, MEMBER, makeSnapshot, OBSERVER, OUTSIDER, QUALITY, SECOND_LEAD } from './snapshot-factory'

const LEAD_AND_QUALITY = ['lead engineer', 'quality engineer'] as const

/** A policy that asks for these capacities. */
function makeWith(requiredCapacities: readonly string[], requiredSignatures = 1): ReviewSnapshot {
  const rules = { ...USUAL_SIGN_OFF_POLICY, requiredCapacities, requiredSignatures }
  return makeSnapshot({ signOffPolicy: { version: 1, rules } })
}

const sign = (snapshot: ReviewSnapshot, userId: string, capacity: string): Signature => ({
  id: `by-${userId}`,
  userId,
  name: userId,
  capacity,
  statement: 'Reviewed.',
  signedAt: '2027-03-04T09:00:00.000Z',
  contentHash: hashSignedContent(snapshot),
  substanceHash: hashPresentSubstance(snapshot),
  voided: null,
})

const sentences = (snapshot: ReviewSnapshot) => findBlockers(snapshot).map(({ sentence }) => sentence)

describe('capacities that the policy asks for', () => {
  const snapshot = makeWith(LEAD_AND_QUALITY)

  test('each blocks until a person of its own has signed in it', () => {
    expect(sentences(snapshot)).toEqual([
      'No valid signature as lead engineer on the current content',
      'No valid signature as quality engineer on the current content',
    ])
    const half = { ...snapshot, signatures: [sign(snapshot, 'lead', 'lead engineer')] }
    expect(sentences(half)).toEqual(['No valid signature as quality engineer on the current content'])
    const both = { ...snapshot, signatures: [...half.signatures, sign(snapshot, 'quality', 'quality engineer')] }
    expect(sentences(both)).toEqual([])
  })

  test('two in the same capacity do not stand for the other, and a third person may be asked for besides', () => {
    const twice = [sign(snapshot, 'lead', 'lead engineer'), sign(snapshot, 'second-lead', 'lead engineer')]
    expect(sentences({ ...snapshot, signatures: twice })).toHaveLength(1)
    const three = makeWith(LEAD_AND_QUALITY, 3)
    const two = [sign(three, 'lead', 'lead engineer'), sign(three, 'quality', 'quality engineer')]
    expect(sentences({ ...three, signatures: two })).toEqual(['2 of 3 required signatures on the current content'])
  })

  test('somebody signs in a capacity that was granted to them, and in no words of their own', () => {
    expect(listSigningCapacities(snapshot, LEAD).map(({ capacity }) => capacity)).toEqual(['lead engineer'])
    expect(decideSigning(snapshot, LEAD, 'lead engineer').ok).toBe(true)
    expect(decideSigning(snapshot, QUALITY, 'quality engineer').ok).toBe(true)
    expect(decideSigning(snapshot, LEAD, 'Chief Medical Officer')).toMatchObject({
      refusal: { sentence: '"Chief Medical Officer" is not granted to you: you may sign as lead engineer' },
    })
    expect(decideSigning({ ...snapshot, capacityGrants: [] }, LEAD)).toMatchObject({
      refusal: { sentence: expect.stringContaining('No capacity is granted to you') },
    })
    // A grant gives an observer or an auditor no right.
    const grants = [...snapshot.capacityGrants, ...['observer', 'auditor', 'outsider'].map(grantTo)]
    for (const actor of [OBSERVER, AUDITOR, OUTSIDER]) {
      const decision = decideSigning({ ...snapshot, capacityGrants: grants }, actor, 'lead engineer')
      expect(decision).toMatchObject({ refusal: { kind: 'not-allowed' } })
    }
  })

  test('nobody signs for two of them', () => {
    const signed = { ...snapshot, signatures: [sign(snapshot, 'lead', 'lead engineer')] }
    expect(decideSigning(signed, LEAD, 'lead engineer')).toMatchObject({ refusal: { kind: 'illegal' } })
  })

  test('settings name each capacity once', () => {
    const check = (signingCapacities: unknown) => {
      const read = settingsInput.safeParse({
        seenVersion: 1,
        workspaceName: 'Quillmoor Instruments',
        artworkRequired: false,
        requiredSignatures: 1,
        invitationDays: 14,
        signingCapacities,
      })
      return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`)
    }
    expect(check([])).toEqual([])
    expect(check([{ name: 'lead engineer' }, { name: 'quality engineer' }])).toEqual([])
    expect(check([{ name: 'lead engineer' }, { name: 'Lead Engineer' }])).toEqual([
      'signingCapacities names a capacity twice',
    ])
  })
})

const grantTo = (userId: string) => ({
  userId,
  capacity: 'lead engineer',
  statement: 'answers for the content of the design',
  grantedByName: 'Rosalind Kettleby',
  grantedAt: '2027-02-01T09:00:00.000Z',
})

describe('taking a signature back', () => {
  const base = makeSnapshot()
  const signed = { ...base, signatures: [sign(base, 'lead', 'lead engineer')] }

  test('is for its signer, with a reason, while the revision awaits signature', () => {
    expect(decideSignatureWithdrawal(signed, LEAD, 'by-lead', ' radius misread ')).toEqual({
      ok: true,
      value: { reason: 'withdrawn by the signer: radius misread' },
    })
    expect(decideSignatureWithdrawal(signed, LEAD, 'by-lead', '  ')).toMatchObject({
      refusal: { kind: 'reason-missing' },
    })
    for (const actor of [SECOND_LEAD, MEMBER, OBSERVER]) {
      expect(decideSignatureWithdrawal(signed, actor, 'by-lead', 'x')).toMatchObject({
        refusal: { kind: 'not-allowed' },
      })
    }
    const released = { ...signed, stage: 'released' as const }
    expect(decideSignatureWithdrawal(released, LEAD, 'by-lead', 'x')).toMatchObject({ refusal: { kind: 'illegal' } })
    expect(decideSignatureWithdrawal(signed, LEAD, 'by-nobody', 'x')).toMatchObject({ refusal: { kind: 'illegal' } })
  })
})

describe('the edition of the catalogue is part of what is signed', () => {
  test('another version, or another content under the same number, is other content', () => {
    const base = makeSnapshot()
    const at = (version: number, contentHash: string) =>
      hashSignedContent({ ...base, template: { version, contentHash, switchedOff: [] } })
    expect(new Set([hashSignedContent(base), at(1, 'a'), at(2, 'a'), at(1, 'b')]).size).toBe(4)
  })
})
