import { describe, expect, test } from 'vitest'
import {
  decideSigning,
  decideTransition,
  hashPresentSubstance,
  hashSignedContent,
  type Move,
  type ReviewSnapshot,
  type Rights,
} from '@/lib/review'
import { ADMIN, LEAD, MEMBER, makeSnapshot } from '../snapshot-factory'

describe('moves one by one', () => {
  const refusal = (snapshot: ReviewSnapshot, who: Rights, move: Move, reason = '') => {
    const decision = decideTransition(snapshot, who, { move, reason })
    return decision.ok ? decision.value.to : decision.refusal.kind
  }

  test('each refusal has its own kind', () => {
    const waiting = makeSnapshot()
    expect(refusal(waiting, LEAD, 'advance')).toBe('blocked')
    expect(refusal(waiting, MEMBER, 'advance')).toBe('not-allowed')
    expect(refusal(waiting, ADMIN, 'withdraw', 'why')).toBe('not-allowed')
    expect(refusal(waiting, LEAD, 'send-back')).toBe('reason-missing')
    expect(refusal(waiting, LEAD, 'send-back', 'wrong foil')).toBe('fabricator-review')
    expect(refusal(waiting, LEAD, 'supersede')).toBe('illegal')
    expect(refusal(makeSnapshot({ stage: 'withdrawn' }), LEAD, 'advance')).toBe('illegal')
    expect(refusal(makeSnapshot({ stage: 'released' }), LEAD, 'supersede')).toBe('superseded')
    expect(refusal(makeSnapshot({ stage: 'released' }), MEMBER, 'supersede')).toBe('not-allowed')
  })

  test('a stage that does not exist is illegal, not a crash', () => {
    expect(refusal(makeSnapshot({ stage: 'draft' as never }), LEAD, 'advance')).toBe('illegal')
    expect(refusal(makeSnapshot({ stage: 'constructor' as never }), LEAD, 'advance')).toBe('illegal')
  })

  test('sending back voids the signatures with the reason', () => {
    const base = makeSnapshot()
    const signature = {
      id: 's1',
      userId: 'lead',
      name: 'Ines Calder',
      capacity: 'lead engineer',
      statement: 'Reviewed.',
      signedAt: '2027-03-04T09:00:00.000Z',
      contentHash: hashSignedContent(base),
      substanceHash: hashPresentSubstance(base),
      voided: null,
    }
    const decision = decideTransition({ ...base, signatures: [signature] }, LEAD, {
      move: 'send-back',
      reason: 'wrong foil',
    })
    expect(decision).toMatchObject({
      ok: true,
      value: { voids: [{ signatureId: 's1', reason: 'sent back to fabricator review: wrong foil' }] },
    })
  })

  test('signing twice, too early or by others is refused', () => {
    const base = makeSnapshot()
    expect(decideSigning(base, LEAD).ok).toBe(true)
    // The member made the design.
    expect(decideSigning(base, MEMBER)).toMatchObject({ ok: false, refusal: { kind: 'blocked' } })
    expect(decideSigning(base, ADMIN)).toMatchObject({ ok: false, refusal: { kind: 'not-allowed' } })
    expect(decideSigning(makeSnapshot({ stage: 'early-review' }), LEAD)).toMatchObject({ refusal: { kind: 'illegal' } })
    const signed = {
      ...base,
      signatures: [
        {
          id: 's',
          userId: 'lead',
          name: '',
          capacity: '',
          statement: '',
          signedAt: '',
          contentHash: hashSignedContent(base),
          substanceHash: hashPresentSubstance(base),
          voided: null,
        },
      ],
    }
    expect(decideSigning(signed, LEAD)).toMatchObject({ ok: false, refusal: { kind: 'illegal' } })
  })
})
