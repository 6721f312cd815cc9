import { describe, expect, test } from 'vitest'
import { settingsInput } from '@/lib/inputs'
import {
  decideSignatureWithdrawal,
  decideSigning,
  findBlockers,
  hashSignedContent,
  listSigningCapacities,
  type ReviewSnapshot,
  type Signature,
} from '@/lib/review'
import { LEAD, MEMBER, makeSnapshot, OBSERVER, OUTSIDER, SECOND_LEAD } from './snapshot-factory'

const LEAD_AND_QUALITY = [
  { name: 'lead engineer', role: 'lead' },
  { name: 'quality engineer', role: 'member' },
] as const

function makeWith(capacities: ReviewSnapshot['settings']['signingCapacities']): ReviewSnapshot {
  const base = makeSnapshot()
  return { ...base, settings: { ...base.settings, signingCapacities: capacities } }
}

const sign = (snapshot: ReviewSnapshot, userId: string, capacity: string): Signature => ({
  id: `by-${userId}`,
  userId,
  name: userId,
  capacity,
  statement: 'Reviewed.',
  signedAt: '2027-03-04T09:00:00.000Z',
  contentHash: hashSignedContent(snapshot),
  voided: null,
})

const sentences = (snapshot: ReviewSnapshot) => findBlockers(snapshot).map(({ sentence }) => sentence)

describe('capacities that the workspace names', () => {
  const snapshot = makeWith(LEAD_AND_QUALITY)

  test('each blocks until a person of its own has signed in it', () => {
    expect(sentences(snapshot)).toEqual([
      'No valid signature as lead engineer on the current content',
      'No valid signature as quality engineer on the current content',
    ])
    const half = { ...snapshot, signatures: [sign(snapshot, 'lead', 'lead engineer')] }
    expect(sentences(half)).toEqual(['No valid signature as quality engineer on the current content'])
    const both = { ...snapshot, signatures: [...half.signatures, sign(snapshot, 'member', 'quality engineer')] }
    expect(sentences(both)).toEqual([])
  })

  test('two in the same capacity do not stand for the other, and a third person may be asked for besides', () => {
    const twice = [sign(snapshot, 'lead', 'lead engineer'), sign(snapshot, 'second-lead', 'lead engineer')]
    expect(sentences({ ...snapshot, signatures: twice })).toHaveLength(1)
    const three = { ...snapshot, settings: { ...snapshot.settings, requiredSignatures: 3 } }
    const two = [sign(three, 'lead', 'lead engineer'), sign(three, 'member', 'quality engineer')]
    expect(sentences({ ...three, signatures: two })).toEqual(['2 of 3 required signatures on the current content'])
  })

  test('a lead signs in any of them, a member in those of members, others in none', () => {
    expect(listSigningCapacities(snapshot, LEAD)).toEqual(['lead engineer', 'quality engineer'])
    expect(listSigningCapacities(snapshot, MEMBER)).toEqual(['quality engineer'])
    for (const actor of [OBSERVER, OUTSIDER]) expect(listSigningCapacities(snapshot, actor)).toEqual([])
    expect(decideSigning(snapshot, MEMBER, 'quality engineer').ok).toBe(true)
    expect(decideSigning(snapshot, MEMBER).ok).toBe(true)
    expect(decideSigning(snapshot, MEMBER, 'lead engineer')).toMatchObject({
      refusal: { kind: 'illegal', sentence: 'Only a lead may sign as lead engineer' },
    })
    expect(decideSigning(snapshot, LEAD, 'director')).toMatchObject({
      refusal: { sentence: 'In this workspace, revisions are signed as lead engineer, quality engineer' },
    })
    expect(decideSigning(snapshot, OBSERVER, 'quality engineer')).toMatchObject({ refusal: { kind: 'not-allowed' } })
  })

  test('without them a member signs in none, and a lead in words of their own', () => {
    expect(decideSigning(makeWith([]), MEMBER, 'quality engineer')).toMatchObject({ refusal: { kind: 'not-allowed' } })
    expect(decideSigning(makeWith([]), LEAD, 'head of design').ok).toBe(true)
  })

  test('nobody signs for two of them', () => {
    const signed = { ...snapshot, signatures: [sign(snapshot, 'lead', 'lead engineer')] }
    expect(decideSigning(signed, LEAD, 'quality engineer')).toMatchObject({ refusal: { kind: 'illegal' } })
  })

  test('settings need a lead among them, each name once', () => {
    const check = (signingCapacities: unknown) => {
      const read = settingsInput.safeParse({
        seenVersion: 1,
        workspaceName: 'Quillmoor Instruments',
        secondPairOfEyes: true,
        waiverNeedsSecondPerson: true,
        artworkRequired: false,
        requiredSignatures: 1,
        invitationDays: 14,
        signingCapacities,
      })
      return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`)
    }
    expect(check([])).toEqual([])
    expect(check(LEAD_AND_QUALITY)).toEqual([])
    expect(check([LEAD_AND_QUALITY[1]])[0]).toContain('signingCapacities must have one that is a lead')
    expect(check([LEAD_AND_QUALITY[0], { name: 'Lead Engineer', role: 'member' }])).toEqual([
      'signingCapacities names a capacity twice',
    ])
  })
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
