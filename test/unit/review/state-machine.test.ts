import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  decideSigning,
  decideTransition,
  findBlockers,
  findSignaturesToVoid,
  getRevisionSubject,
  hashDeclaredContent,
  hashDesign,
  hashSignedContent,
  hashWaiverBasis,
  isAllowed,
  isStage,
  listLiveSignatures,
  type Move,
  type ReviewSnapshot,
  type Rights,
} from '@/lib/review'
import {
  ADMIN,
  BRACKENFOLD,
  FABRICATOR,
  LEAD,
  MEMBER,
  makeDesign,
  makeEvaluation,
  makeResult,
  makeSnapshot,
  OBSERVER,
  OUTSIDER,
  SECOND_LEAD,
} from './snapshot-factory'

const ACTORS = {
  lead: LEAD,
  second: SECOND_LEAD,
  member: MEMBER,
  fabricator: FABRICATOR,
  observer: OBSERVER,
  admin: ADMIN,
  outsider: OUTSIDER,
}
type ActorName = keyof typeof ACTORS

type Step =
  | { kind: 'move'; move: Move; actor: ActorName; reason: string }
  | { kind: 'sign'; actor: ActorName }
  | { kind: 'edit'; actor: ActorName; radiusMm: number }
  | { kind: 'evaluate' }
  | { kind: 'answer'; actor: ActorName; state: 'meets' | 'concern' | 'open' }
  | { kind: 'declare'; verdict: 'buildable' | 'not-buildable' }
  | { kind: 'query'; state: 'open' | 'answered' }
  | { kind: 'waive' }

/** A small radius fails its calculation, so edits move the revision in and out of being releasable. */
const FAILS_BELOW_MM = 3

function evaluateModel(snapshot: ReviewSnapshot): ReviewSnapshot {
  const radiusMm = snapshot.design.bends[0]?.insideRadiusMm ?? 0
  return {
    ...snapshot,
    evaluation: {
      designHash: hashDesign(snapshot.design),
      limitsHash: snapshot.limitsHash,
      engineVersion: snapshot.engineVersion,
      evaluatedAt: '2027-03-01T09:00:00.000Z',
      results: makeEvaluation([
        makeResult('bend-strain', radiusMm < FAILS_BELOW_MM ? 'fails' : 'meets', 1 / radiusMm),
        makeResult('inside-corners', 'meets'),
        makeResult('packing-notes', 'needs-judgment'),
      ]),
    },
  }
}

/** Applies a change as the data layer does: signatures left on other content are voided in the same step. */
function withVoids(before: ReviewSnapshot, after: ReviewSnapshot): ReviewSnapshot {
  const voids = new Map(findSignaturesToVoid(before, after).map((entry) => [entry.signatureId, entry]))
  for (const entry of voids.values()) expect(entry.changes.length).toBeGreaterThan(0)
  return {
    ...after,
    version: before.version + 1,
    signatures: after.signatures.map((signature) => {
      const entry = voids.get(signature.id)
      return entry === undefined
        ? signature
        : { ...signature, voided: { at: '2027-03-05T09:00:00.000Z', reason: entry.reason, changes: entry.changes } }
    }),
  }
}

function apply(snapshot: ReviewSnapshot, step: Step): ReviewSnapshot {
  const subject = getRevisionSubject(snapshot)
  switch (step.kind) {
    case 'move': {
      const decision = decideTransition(snapshot, ACTORS[step.actor], step)
      if (!decision.ok) return snapshot
      if (step.move === 'advance') expect(findBlockers(snapshot)).toEqual([])
      const voided = new Map(decision.value.voids.map(({ signatureId, reason }) => [signatureId, reason]))
      return {
        ...snapshot,
        stage: decision.value.to,
        signatures: snapshot.signatures.map((signature) => {
          const reason = voided.get(signature.id)
          return reason === undefined || signature.voided !== null
            ? signature
            : { ...signature, voided: { at: '2027-03-05T09:00:00.000Z', reason, changes: [] } }
        }),
      }
    }
    case 'sign': {
      const actor: Rights = ACTORS[step.actor]
      if (!decideSigning(snapshot, actor).ok) return snapshot
      return {
        ...snapshot,
        signatures: [
          ...snapshot.signatures,
          {
            id: `signature-${snapshot.signatures.length}`,
            userId: actor.userId,
            name: actor.userId,
            capacity: 'lead engineer',
            statement: 'Reviewed.',
            signedAt: '2027-03-04T09:00:00.000Z',
            contentHash: hashSignedContent(snapshot),
            voided: null,
          },
        ],
      }
    }
    case 'edit': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'revision:edit', subject)) return snapshot
      const design = makeDesign((d) => Object.assign(d.bends[0] ?? {}, { insideRadiusMm: step.radiusMm }))
      const editors = snapshot.editors.some(({ userId }) => userId === actor.userId)
        ? snapshot.editors
        : [...snapshot.editors, { userId: actor.userId, name: actor.userId }]
      return withVoids(snapshot, { ...snapshot, design, editors })
    }
    case 'evaluate':
      return subject.stage === 'released' ? snapshot : withVoids(snapshot, evaluateModel(snapshot))
    case 'answer': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'item:answer', { ...subject, kind: 'item', answeredBy: ['member', 'lead'] }))
        return snapshot
      const answers = [
        {
          itemId: 'packing-notes',
          state: step.state,
          reason: '',
          answeredBy: actor.userId,
          answeredByName: actor.userId,
          answeredAt: '2027-03-02T09:00:00.000Z',
          evidence: [],
        },
      ]
      return withVoids(snapshot, { ...snapshot, answers })
    }
    case 'declare': {
      if (!isAllowed(FABRICATOR, 'declaration:make', subject)) return snapshot
      return {
        ...snapshot,
        declarations: [
          ...snapshot.declarations,
          {
            id: `declaration-${snapshot.declarations.length}`,
            companyId: BRACKENFOLD,
            companyName: 'Brackenfold Circuits',
            verdict: step.verdict,
            note: '',
            madeBy: 'fabricator',
            madeByName: 'Joss Pell',
            madeAt: `2027-03-02T09:00:00.${String(snapshot.declarations.length).padStart(3, '0')}Z`,
            contentHash: hashDeclaredContent(snapshot),
          },
        ],
      }
    }
    case 'query': {
      if (!isAllowed(FABRICATOR, 'revision:raise-query', subject)) return snapshot
      return {
        ...snapshot,
        threads: [
          {
            id: 'thread-1',
            kind: 'engineering-query',
            state: step.state,
            title: 'Which face carries the stiffener?',
            anchor: { kind: 'revision', id: 'revision-b', label: 'revision' },
            audienceCompanyId: BRACKENFOLD,
            openedBy: 'fabricator',
            openedByName: 'Joss Pell',
            openedAt: '2027-03-01T10:00:00.000Z',
            openedByCompanyId: BRACKENFOLD,
            openedByCompanyName: 'Brackenfold Circuits',
            comments: [],
          },
        ],
      }
    }
    case 'waive': {
      const result = snapshot.evaluation?.results.items.find(({ itemId }) => itemId === 'bend-strain')
      if (result === undefined || !isAllowed(SECOND_LEAD, 'waiver:propose', subject)) return snapshot
      const waivers = [
        {
          id: `waiver-${snapshot.waivers.length}`,
          itemId: 'bend-strain',
          state: 'approved' as const,
          reason: 'Tested',
          proposedBy: 'member',
          proposedByName: 'Mara Tolland',
          proposedAt: '2027-03-02T09:00:00.000Z',
          decidedBy: 'lead',
          decidedByName: 'Ines Calder',
          decidedAt: '2027-03-02T10:00:00.000Z',
          decisionNote: '',
          basisHash: hashWaiverBasis(result),
        },
      ]
      return withVoids(snapshot, { ...snapshot, waivers })
    }
  }
}

/** Weighted towards what leads to a release: plain draws would hardly ever get there. */
const actor = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom<ActorName>('lead', 'second') },
  { weight: 2, arbitrary: fc.constantFrom<ActorName>('member', 'fabricator', 'observer', 'admin', 'outsider') },
)
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('move' as const),
      move: fc.oneof(
        { weight: 12, arbitrary: fc.constant<Move>('advance') },
        { weight: 2, arbitrary: fc.constant<Move>('send-back') },
        { weight: 1, arbitrary: fc.constantFrom<Move>('withdraw', 'supersede') },
      ),
      actor,
      reason: fc.constantFrom('', 'wrong foil'),
    }),
  },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('sign' as const), actor }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('edit' as const), actor, radiusMm: fc.constantFrom(2, 4, 8) }),
  },
  { weight: 3, arbitrary: fc.constant<Step>({ kind: 'evaluate' }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('answer' as const),
      actor,
      state: fc.constantFrom('meets' as const, 'meets' as const, 'concern' as const, 'open' as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('declare' as const),
      verdict: fc.constantFrom('buildable' as const, 'buildable' as const, 'not-buildable' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('query' as const),
      state: fc.constantFrom('open' as const, 'answered' as const, 'answered' as const),
    }),
  },
  { weight: 1, arbitrary: fc.constant<Step>({ kind: 'waive' }) },
)

function checkInvariants(before: ReviewSnapshot, after: ReviewSnapshot): void {
  expect(isStage(after.stage)).toBe(true)
  // No unvoided signature is ever on other content while the revision can still change.
  const contentHash = hashSignedContent(after)
  for (const signature of after.signatures) {
    if (signature.voided === null) expect(signature.contentHash).toBe(contentHash)
  }
  if (after.stage === 'released') {
    expect(findBlockers(after, 'awaiting-signature')).toEqual([])
    expect(listLiveSignatures(after).length).toBeGreaterThan(0)
  }
  // What was released is never changed, only superseded or withdrawn.
  if (before.stage === 'released') {
    expect(hashSignedContent(before)).toBe(contentHash)
    expect(['released', 'superseded', 'withdrawn']).toContain(after.stage)
  }
  if (before.stage === 'superseded' || before.stage === 'withdrawn') expect(after.stage).toBe(before.stage)
}

describe('random sequences of legal and illegal acts', () => {
  test('never release with a blocker and never leave a live signature on other content', () => {
    let released = 0
    let voided = 0
    fc.assert(
      fc.property(
        fc.constantFrom('preparing' as const, 'fabricator-review' as const, 'awaiting-signature' as const),
        fc.array(step, { minLength: 30, maxLength: 90, size: 'max' }),
        (stage, steps) => {
          let snapshot = evaluateModel(makeSnapshot({ stage, design: makeDesign() }))
          let wasReleased = false
          for (const next of steps) {
            const after = apply(snapshot, next)
            wasReleased ||= after.stage === 'released'
            checkInvariants(snapshot, after)
            snapshot = after
          }
          if (snapshot.signatures.some((signature) => signature.voided !== null)) voided += 1
          if (wasReleased) released += 1
        },
      ),
      { seed: 20270301, numRuns: 150 },
    )
    // The draws must reach what they are about, or the test proves nothing.
    expect(released).toBeGreaterThan(10)
    expect(voided).toBeGreaterThan(10)
  }, 400_000)
})

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
    expect(decideSigning(base, MEMBER)).toMatchObject({ ok: false, refusal: { kind: 'not-allowed' } })
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
          voided: null,
        },
      ],
    }
    expect(decideSigning(signed, LEAD)).toMatchObject({ ok: false, refusal: { kind: 'illegal' } })
  })
})
