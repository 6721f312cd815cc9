import { describe, expect, test } from 'vitest'
import type { ItemResult } from '@/lib/engine'
import { DELIVERED_PROFILES } from '@/lib/engine/catalogue'
import {
  type AnswerState,
  findBlockers,
  getSignOffPolicy,
  hashPresentSubstance,
  hashSignedContent,
  listReviewPolicyRows,
  type ReviewItem,
  type ReviewSnapshot,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'
import { ITEMS, makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

const MEDICAL = { id: 'medical', name: 'Medical', requiredSignatures: 2 }
const withProfiles = (...profiles: NonNullable<ReviewSnapshot['template']['profiles']>): ReviewSnapshot => {
  const base = makeSnapshot()
  return { ...base, template: { ...base.template, profiles } }
}

describe('a second signer that a profile wants', () => {
  const signed = (snapshot: ReviewSnapshot, ...userIds: string[]): ReviewSnapshot => ({
    ...snapshot,
    signatures: userIds.map((userId) => ({
      id: `signature-${userId}`,
      userId,
      name: userId,
      capacity: 'lead engineer',
      statement: 'I have reviewed this revision.',
      signedAt: '2027-03-03T09:00:00.000Z',
      contentHash: hashSignedContent(snapshot),
      substanceHash: hashPresentSubstance(snapshot),
      voided: null,
    })),
  })
  const sentences = (snapshot: ReviewSnapshot) => findBlockers(snapshot).map(({ sentence }) => sentence)

  test('keeps the revision until two people have signed, and is named', () => {
    const snapshot = withProfiles(MEDICAL)
    expect(sentences(signed(snapshot, 'lead'))).toEqual([
      '1 of 2 required signatures on the current content (required by profile Medical)',
    ])
    expect(sentences(signed(snapshot, 'lead', 'second-lead'))).toEqual([])
    expect(listReviewPolicyRows(snapshot)).toContainEqual({
      label: 'People who must sign',
      words: '2, required by profile Medical',
      isLoosened: false,
    })
  })

  test('is two people for patients and for what nobody can fetch back; other parts go by the policy of their project', () => {
    const two = DELIVERED_PROFILES.filter(({ requiredSignatures }) => requiredSignatures === 2).map(({ id }) => id)
    expect(two).toEqual(['medical', 'aerospace-space'])
    expect(DELIVERED_PROFILES.filter(({ requiredSignatures }) => requiredSignatures != null)).toHaveLength(2)
  })

  test('is the strictest of policy and profiles, and never fewer than the policy wants', () => {
    const other = { id: 'own-a', name: 'Flight', requiredSignatures: 3 }
    expect(getSignOffPolicy(withProfiles(MEDICAL, other)).requiredSignatures).toBe(3)
    expect(getSignOffPolicy(withProfiles(other, MEDICAL)).requiredSignatures).toBe(3)
    const rules = { ...USUAL_SIGN_OFF_POLICY, requiredSignatures: 4 }
    const strict = { ...withProfiles(MEDICAL), signOffPolicy: { version: 1, rules } }
    expect(getSignOffPolicy(strict).requiredSignatures).toBe(4)
    expect(JSON.stringify(listReviewPolicyRows(strict))).not.toContain('Medical')
    expect(getSignOffPolicy(makeSnapshot()).requiredSignatures).toBe(1)
  })
})

describe('a field that a profile requires', () => {
  const item: ReviewItem = { ...(ITEMS[0] as ReviewItem), id: 'profile-fields', decidedWhen: 'early' }
  const result: ItemResult = {
    ...makeResult('profile-fields', 'not-computed'),
    outcomes: [
      {
        kind: 'not-computed',
        missing: [{ path: ['brief', 'performanceClass'], label: 'performance class' }],
        places: [],
        summary: 'Not computed: performance class is missing, required by profile Medical.',
        rests: 'typed',
      },
    ],
  }
  const withResult = (state: AnswerState | null): ReviewSnapshot => {
    const base = makeSnapshot({ stage: 'early-review' })
    const items = [...(base.evaluation?.results.items ?? []), result]
    const answer = {
      itemId: 'profile-fields',
      state: state ?? 'open',
      reason: 'We know it.',
      answeredBy: 'lead',
      answeredByName: 'Lead',
      answeredAt: '2027-03-01T10:00:00.000Z',
      evidence: [],
    }
    return {
      ...base,
      items: [...base.items, item],
      answers: state === null ? base.answers : [...base.answers, answer],
      evaluation: base.evaluation === null ? null : { ...base.evaluation, results: makeEvaluation(items) },
    }
  }

  test.each([null, 'meets', 'concern', 'not-applicable'] as const)(
    'keeps the revision in early review with the answer %s, and names the profile',
    (state) => {
      expect(findBlockers(withResult(state))).toContainEqual({
        code: 'profile-requirement',
        sentence: 'Performance class is missing, required by profile Medical',
        target: { tab: 'checklist', id: 'profile-fields' },
      })
    },
  )
})
