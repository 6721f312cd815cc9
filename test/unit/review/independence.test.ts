import { describe, expect, test } from 'vitest'
import {
  type Author,
  combinePolicies,
  comparePolicies,
  decideTransition,
  explainNoApproval,
  findBlockers,
  findSigningBlockers,
  hashPresentSubstance,
  hashSignedContent,
  hashWaiverBasis,
  listItemStates,
  listLoosenedUses,
  listPolicyRows,
  type ReviewSnapshot,
  SIGN_OFF_RULE_KEYS,
  SIGN_OFF_RULES,
  type SignOffPolicy,
  USUAL_SIGN_OFF_POLICY,
  type Waiver,
} from '@/lib/review'
import { LEAD, makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

const codes = (snapshot: ReviewSnapshot) => findBlockers(snapshot).map(({ code }) => code)

const author = (userId: string): Author => ({ userId, name: userId, parts: ['design'], changes: null })

const under = (rules: Partial<SignOffPolicy>) => ({ version: 1, rules: { ...USUAL_SIGN_OFF_POLICY, ...rules } })

function sign(snapshot: ReviewSnapshot, userId = 'lead'): ReviewSnapshot {
  const signature = {
    id: `by-${userId}`,
    userId,
    name: userId,
    capacity: 'lead engineer',
    statement: 'Reviewed.',
    signedAt: '2027-03-04T09:00:00.000Z',
    contentHash: hashSignedContent(snapshot),
    substanceHash: hashPresentSubstance(snapshot),
    voided: null,
  }
  return { ...snapshot, signatures: [...snapshot.signatures, signature] }
}

describe('who signs and releases', () => {
  const byLead = makeSnapshot({ authors: [author('member'), author('lead')] })

  test('an author neither signs nor, should a signature of theirs stand, does it count', () => {
    expect(findSigningBlockers(byLead, 'lead').map(({ code }) => code)).toEqual(['author-signs'])
    expect(findSigningBlockers(byLead, 'second-lead')).toEqual([])
    expect(codes(sign(byLead))).toEqual(['author-signs', 'signature-missing'])
    expect(codes(sign(byLead, 'second-lead'))).toEqual([])
  })

  test('people who answered, commented or declared for a fabricator are no second author, and no second pair of eyes', () => {
    // One person made it all and signs; a fabricator's "ok." and a colleague's answer change nothing.
    const alone = makeSnapshot({
      authors: [author('lead')],
      editors: [
        { userId: 'lead', name: 'Ines Calder' },
        { userId: 'fabricator', name: 'Joss Pell' },
        { userId: 'member', name: 'Mara Tolland' },
      ],
    })
    expect(codes(sign(alone))).toContain('author-signs')
  })

  test('beside another signer only where the policy says so; alone only where it says that', () => {
    const beside = { ...byLead, signOffPolicy: under({ authorSigns: 'beside' }) }
    expect(findSigningBlockers(beside, 'lead')).toEqual([])
    expect(codes(sign(beside))).toEqual(['author-signs'])
    expect(codes(sign(sign(beside), 'second-lead'))).toEqual([])
    const yes = { ...byLead, signOffPolicy: under({ authorSigns: 'yes' }) }
    expect(codes(sign(yes))).toEqual([])
    expect(listLoosenedUses(sign(yes), null)).toEqual(['lead, an author of the content, signed it'])
    expect(listLoosenedUses(sign(byLead, 'second-lead'), null)).toEqual([])
  })

  test('an author does not release, unless the policy lets them', () => {
    const signed = sign(byLead, 'second-lead')
    expect(decideTransition(signed, LEAD, { move: 'advance' })).toMatchObject({
      refusal: { kind: 'blocked', blockers: [{ code: 'author-releases' }] },
    })
    const loosened = sign({ ...byLead, signOffPolicy: under({ authorReleases: 'yes' }) }, 'second-lead')
    expect(decideTransition(loosened, LEAD, { move: 'advance' }).ok).toBe(true)
  })
})

describe('who reviews', () => {
  const base = makeSnapshot()
  const [review] = base.reviews
  if (review === undefined) throw new Error('no review')

  test('without a review by somebody who is not an author nobody signs and nothing is released', () => {
    const none = { ...base, reviews: [] }
    expect(codes(sign(none))).toEqual(['review-missing'])
    expect(findSigningBlockers(none, 'lead').map(({ code }) => code)).toEqual(['review-missing'])
  })

  test.each([
    ['by an author', { ...review, userId: 'member' }],
    ['on other content', { ...review, contentHash: 'f'.repeat(64) }],
    ['that was withdrawn', { ...review, withdrawnAt: '2027-03-03T09:00:00.000Z' }],
  ])('one %s does not count', (_which, other) => {
    expect(codes(sign({ ...base, reviews: [other] }))).toEqual(['review-missing'])
  })

  test('quality alone, where the policy says so; nobody, where it says that, and the documents print it', () => {
    const byMember = { ...base, reviews: [{ ...review, userId: 'second-lead', role: 'lead' }] }
    expect(codes(sign({ ...byMember, signOffPolicy: under({ review: 'quality' }) }))).toEqual(['review-missing'])
    expect(codes(sign({ ...base, signOffPolicy: under({ review: 'quality' }) }))).toEqual([])
    const none = sign({ ...base, reviews: [], signOffPolicy: under({ review: 'none' }) })
    expect(codes(none)).toEqual([])
    expect(listLoosenedUses(none, null)).toEqual(['no review by someone other than the authors was required'])
  })
})

describe('who approves a waiver', () => {
  const result = makeResult('bend-strain', 'fails', 0.7)
  const waiver: Waiver = {
    id: 'w1',
    itemId: 'bend-strain',
    state: 'approved',
    reason: 'tested',
    proposedBy: 'second-lead',
    proposedByName: 'Halka Brannoch',
    proposedAt: '2027-03-01T09:00:00.000Z',
    decidedBy: 'lead',
    decidedByName: 'Ines Calder',
    decidedAt: '2027-03-01T10:00:00.000Z',
    decisionNote: '',
    decidedAsRole: 'lead',
    basisHash: hashWaiverBasis(result),
  }
  function makeWaived(change: Partial<ReviewSnapshot> = {}, own: Partial<Waiver> = {}): ReviewSnapshot {
    const base = makeSnapshot({ waivers: [{ ...waiver, ...own }], ...change })
    if (base.evaluation === null) throw new Error('no evaluation')
    const items = base.evaluation.results.items.map((item) => (item.itemId === 'bend-strain' ? result : item))
    return { ...base, evaluation: { ...base.evaluation, results: makeEvaluation(items) } }
  }
  const stateOf = (snapshot: ReviewSnapshot) => listItemStates(snapshot).find(({ item }) => item.id === 'bend-strain')

  test('an independent approval counts', () => {
    expect(stateOf(makeWaived())?.state).toBe('waived')
    expect(codes(sign(makeWaived()))).toEqual([])
  })

  test.each([
    ['of the proposer', {}, { proposedBy: 'lead' }, 'the proposer of a waiver cannot approve it'],
    ['of an author of the design', { authors: [author('lead')] }, {}, 'an author of design or artwork'],
    [
      'of the person who answered the item',
      {
        answers: [
          ...makeSnapshot().answers,
          {
            itemId: 'bend-strain',
            state: 'concern' as const,
            reason: 'too tight',
            answeredBy: 'lead',
            answeredByName: 'Ines Calder',
            answeredAt: '2027-03-01T08:00:00.000Z',
            evidence: [],
          },
        ],
      },
      {},
      'the person who answered the item',
    ],
    [
      'of a lead, where quality alone approves',
      { signOffPolicy: under({ waiverBlocking: 'quality' }) },
      {},
      'quality alone',
    ],
  ])('the approval %s does not count, and the item blocks again', (_which, change, own, why) => {
    const snapshot = makeWaived(change, own)
    const itemState = stateOf(snapshot)
    expect(itemState?.state).not.toBe('waived')
    expect(itemState?.setAside).toContain(why)
    expect(codes(snapshot)).toContain('failure-unwaived')
  })

  test('by severity: what a blocking item refuses, a minor one may allow', () => {
    const snapshot = makeSnapshot({ authors: [author('lead')] })
    const ask = (severity: string) =>
      explainNoApproval(snapshot, { id: 'x', severity }, { proposedBy: 'member', userId: 'lead', role: 'lead' })
    expect([ask('blocking') !== '', ask('major') !== '', ask('minor'), ask('advice')]).toEqual([true, true, '', ''])
    // A severity that this version does not know is for quality alone.
    expect(ask('fatal')).not.toBe('')
  })

  test('a loosened rule that was made use of is printed with the waiver', () => {
    const loosened = makeWaived({ signOffPolicy: under({ waiverBlocking: 'anyone' }) }, { proposedBy: 'lead' })
    expect(stateOf(loosened)?.state).toBe('waived')
    expect(listLoosenedUses(loosened, null)).toEqual([
      'waiver of "Does the copper stay below its allowable strain?": the approval by Ines Calder was allowed: the proposer of a waiver cannot approve it',
    ])
  })
})

describe('the policy', () => {
  test('is part of what is signed', () => {
    const base = makeSnapshot()
    const other = { ...base, signOffPolicy: under({ authorSigns: 'yes' }) }
    const before = { ...base, signOffPolicy: null }
    expect(new Set([base, other, before].map(hashSignedContent)).size).toBe(3)
  })

  test('a review that is under none is neither signed nor released', () => {
    expect(codes(sign(makeSnapshot({ signOffPolicy: null })))).toContain('policy-missing')
  })

  test('each step down a rule loosens it, each step up tightens it, and the stricter of two is the usual one or stricter', () => {
    for (const key of SIGN_OFF_RULE_KEYS) {
      const values = SIGN_OFF_RULES[key].choices.map(({ value }) => value)
      values.forEach((value, at) => {
        const next = values[at + 1]
        if (next === undefined) return
        const [strict, loose] = [value, next].map((chosen) => ({ ...USUAL_SIGN_OFF_POLICY, [key]: chosen }))
        if (strict === undefined || loose === undefined) return
        expect(comparePolicies(strict, loose).map(({ direction }) => direction)).toEqual(['loosened'])
        expect(comparePolicies(loose, strict).map(({ direction }) => direction)).toEqual(['tightened'])
        expect(combinePolicies(loose, strict)).toEqual(strict)
        expect(combinePolicies(strict, loose)).toEqual(strict)
      })
    }
    expect(listPolicyRows(USUAL_SIGN_OFF_POLICY).filter(({ isLoosened }) => isLoosened)).toEqual([])
    const fewer = { ...USUAL_SIGN_OFF_POLICY, requiredSignatures: 2, requiredCapacities: ['quality engineer'] }
    expect(comparePolicies(fewer, USUAL_SIGN_OFF_POLICY).map(({ direction }) => direction)).toEqual([
      'loosened',
      'loosened',
    ])
  })
})
