import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type ConditionState,
  type Declaration,
  type DeclarationCondition,
  type DeclarationVerdict,
  decideSigning,
  decideTransition,
  explainNoApproval,
  findBlockers,
  findSignaturesToVoid,
  getRevisionSubject,
  hashDeclaredContent,
  hashDesign,
  hashSignedContent,
  hashWaiverBasis,
  isAllowed,
  isAuthor,
  isStage,
  listLiveSignatures,
  type Move,
  type ReviewSnapshot,
  type ReviewThread,
  type Rights,
  type SignOffPolicy,
  type ThreadKind,
  type ThreadState,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'
import {
  ADMIN,
  AUDITOR,
  BRACKENFOLD,
  FABRICATOR,
  LEAD,
  MEMBER,
  makeDesign,
  makeEvaluation,
  makeResult,
  makeSnapshot,
  OBSERVER,
  OSTREL,
  OTHER_FABRICATOR,
  OUTSIDER,
  QUALITY,
  SECOND_LEAD,
} from './snapshot-factory'

const ACTORS = {
  lead: LEAD,
  second: SECOND_LEAD,
  member: MEMBER,
  quality: QUALITY,
  auditor: AUDITOR,
  fabricator: FABRICATOR,
  observer: OBSERVER,
  admin: ADMIN,
  outsider: OUTSIDER,
}
type ActorName = keyof typeof ACTORS

const FABRICATORS = {
  brackenfold: { companyId: BRACKENFOLD, companyName: 'Brackenfold Circuits', rights: FABRICATOR },
  ostrel: { companyId: OSTREL, companyName: 'Ostrel Flexible', rights: OTHER_FABRICATOR },
}
type CompanyName = keyof typeof FABRICATORS

const makeCondition = (id: string): DeclarationCondition => ({
  id,
  text: 'Only with an inside radius of 8 mm.',
  field: '',
  fieldLabel: '',
  value: '',
  state: 'open',
  decidedByName: null,
  decidedAt: null,
  decisionNote: '',
  done: null,
})

type Step =
  | { kind: 'move'; move: Move; actor: ActorName; reason: string }
  | { kind: 'sign'; actor: ActorName }
  | { kind: 'edit'; actor: ActorName; radiusMm: number }
  | { kind: 'evaluate' }
  | { kind: 'answer'; actor: ActorName; state: 'meets' | 'concern' | 'open' }
  | { kind: 'declare'; company: CompanyName; verdict: DeclarationVerdict }
  | { kind: 'decide'; actor: ActorName; state: ConditionState }
  | { kind: 'take-off'; actor: ActorName; company: CompanyName }
  | { kind: 'thread'; thread: ThreadKind; state: ThreadState }
  | { kind: 'review'; actor: ActorName }
  | { kind: 'waive'; proposer: ActorName; approver: ActorName }

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
        : {
            ...signature,
            voided: {
              at: '2027-03-05T09:00:00.000Z',
              reason: entry.reason,
              changes: entry.changes.map(({ sentence }) => sentence),
            },
          }
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
      const isKnown = snapshot.authors.some(({ userId }) => userId === actor.userId)
      const { userId } = actor
      const made = { userId, name: userId, parts: ['design' as const], changes: null }
      const authors = isKnown ? snapshot.authors : [...snapshot.authors, made]
      return withVoids(snapshot, { ...snapshot, design, authors })
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
      const { companyId, companyName, rights } = FABRICATORS[step.company]
      if (!isAllowed(rights, 'declaration:make', subject)) return snapshot
      const at = snapshot.declarations.length
      const declaration: Declaration = {
        id: `declaration-${at}`,
        companyId,
        companyName,
        verdict: step.verdict,
        note: step.verdict === 'not-buildable' ? 'the web is too narrow' : '',
        conditions: step.verdict === 'with-conditions' ? [makeCondition(`condition-${at}`)] : [],
        madeBy: rights.userId,
        madeByName: 'Joss Pell',
        madeAt: `2027-03-02T09:00:00.${String(at).padStart(3, '0')}Z`,
        contentHash: hashDeclaredContent(snapshot),
      }
      return withVoids(snapshot, { ...snapshot, declarations: [...snapshot.declarations, declaration] })
    }
    case 'review': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'review:declare', subject) || isAuthor(snapshot, actor.userId)) return snapshot
      const review = {
        id: `review-${snapshot.reviews.length}`,
        userId: actor.userId,
        name: actor.userId,
        role: actor.memberships[0]?.role ?? '',
        note: '',
        madeAt: '2027-03-02T09:00:00.000Z',
        contentHash: hashDeclaredContent(snapshot),
        withdrawnAt: null,
      }
      return withVoids(snapshot, { ...snapshot, reviews: [...snapshot.reviews, review] })
    }
    case 'decide': {
      if (!isAllowed(ACTORS[step.actor], 'condition:decide', subject)) return snapshot
      const last = snapshot.declarations.at(-1)
      if (last === undefined) return snapshot
      const conditions = last.conditions.map((condition) => ({ ...condition, state: step.state }))
      const declarations = [...snapshot.declarations.slice(0, -1), { ...last, conditions }]
      return withVoids(snapshot, { ...snapshot, declarations })
    }
    case 'take-off': {
      if (!isAllowed(ACTORS[step.actor], 'release:choose-fabricators', subject)) return snapshot
      const { companyId, companyName } = FABRICATORS[step.company]
      const others = snapshot.takenOff.filter((entry) => entry.companyId !== companyId)
      const isOff = others.length < snapshot.takenOff.length
      const entry = {
        companyId,
        companyName,
        reason: 'not this lot',
        byName: 'Ines Calder',
        at: '2027-03-02T09:00:00.000Z',
      }
      return withVoids(snapshot, { ...snapshot, takenOff: isOff ? others : [...others, entry] })
    }
    case 'thread': {
      if (!isAllowed(FABRICATOR, 'revision:raise-query', subject)) return snapshot
      const thread: ReviewThread = {
        id: 'thread-1',
        kind: step.thread,
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
        closed: null,
      }
      return withVoids(snapshot, { ...snapshot, threads: [thread] })
    }
    case 'waive': {
      const result = snapshot.evaluation?.results.items.find(({ itemId }) => itemId === 'bend-strain')
      const item = snapshot.items.find(({ id }) => id === 'bend-strain')
      if (result === undefined || item === undefined) return snapshot
      if (!isAllowed(ACTORS[step.proposer], 'waiver:propose', subject)) return snapshot
      const approver = ACTORS[step.approver]
      const proposedBy = ACTORS[step.proposer].userId
      const role = approver.memberships[0]?.role ?? ''
      const whyNot = explainNoApproval(snapshot, item, { proposedBy, userId: approver.userId, role })
      const waiver = { ...subject, kind: 'waiver', isIndependent: whyNot === '' } as const
      if (!isAllowed(approver, 'waiver:approve', waiver)) return snapshot
      const waivers = [
        {
          id: `waiver-${snapshot.waivers.length}`,
          itemId: 'bend-strain',
          state: 'approved' as const,
          reason: 'Tested',
          proposedBy,
          proposedByName: proposedBy,
          proposedAt: '2027-03-02T09:00:00.000Z',
          decidedBy: approver.userId,
          decidedByName: approver.userId,
          decidedAsRole: role,
          decidedAt: '2027-03-02T10:00:00.000Z',
          decisionNote: '',
          basisHash: hashWaiverBasis(result),
        },
      ]
      return withVoids(snapshot, { ...snapshot, waivers })
    }
  }
}

const reviewer = fc.constantFrom<ActorName>('lead', 'second', 'member', 'quality', 'auditor')

/** Weighted towards what leads to a release: plain draws would hardly ever get there. */
const actor = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom<ActorName>('lead', 'second') },
  { weight: 2, arbitrary: fc.constantFrom<ActorName>('member', 'fabricator', 'observer', 'admin', 'outsider') },
)
const company = fc.constantFrom<CompanyName>('brackenfold', 'ostrel')
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
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('declare' as const),
      company,
      verdict: fc.oneof(
        { weight: 5, arbitrary: fc.constant('buildable' as const) },
        { weight: 1, arbitrary: fc.constantFrom('with-conditions' as const, 'not-buildable' as const) },
      ),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('decide' as const),
      actor,
      state: fc.constantFrom('action' as const, 'taken-over' as const, 'declined' as const),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('take-off' as const), actor, company }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('thread' as const),
      thread: fc.constantFrom('engineering-query' as const, 'must-change' as const, 'note' as const),
      state: fc.constantFrom('open' as const, 'answered' as const, 'closed' as const, 'closed' as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('review' as const), actor: reviewer }) },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('waive' as const), proposer: reviewer, approver: reviewer }),
  },
)

/** The policy once more, by definition and with none of the code that decides: nothing released was approved against it. */
function checkIndependence({
  signOffPolicy,
  authors,
  reviews,
  signatures,
  waivers,
  evaluation,
  items,
}: ReviewSnapshot) {
  if (signOffPolicy === null) throw new Error('released under no policy')
  const { rules } = signOffPolicy
  const made = new Set(authors.map(({ userId }) => userId))
  const signers = signatures.filter(({ voided }) => voided === null).map(({ userId }) => userId)
  if (rules.authorSigns === 'no') expect(signers.filter((userId) => made.has(userId))).toEqual([])
  if (rules.authorSigns === 'beside') expect(signers.some((userId) => !made.has(userId))).toBe(true)
  const judged = reviews.filter(
    ({ userId, role }) => !made.has(userId) && (rules.review !== 'quality' || role === 'quality'),
  )
  if (rules.review !== 'none') expect(judged.length).toBeGreaterThan(0)
  const failed = (evaluation?.results.items ?? []).filter(({ verdict }) => verdict === 'fails')
  for (const { itemId } of failed) {
    const severity = items.find(({ id }) => id === itemId)?.severity
    const rule = severity === 'blocking' ? rules.waiverBlocking : rules.waiverMajor
    const independent = waivers.filter(
      ({ proposedBy, decidedBy, decidedAsRole }) =>
        rule === 'anyone' ||
        (decidedBy !== proposedBy &&
          (rule === 'second-person' ||
            (!made.has(decidedBy ?? '') && (rule === 'no-author' || decidedAsRole === 'quality')))),
    )
    expect(independent.length).toBeGreaterThan(0)
  }
}

/** In words of the test's own: nobody who was not taken off refused, asked for more, or waits for a change. */
function checkRelease({ declarations, takenOff, threads, ...snapshot }: ReviewSnapshot): void {
  const contentHash = hashDeclaredContent(snapshot)
  let yes = 0
  for (const { companyId } of Object.values(FABRICATORS)) {
    if (takenOff.some((entry) => entry.companyId === companyId)) continue
    const last = declarations.findLast((declaration) => declaration.companyId === companyId)
    if (last === undefined) continue
    expect(last.verdict, 'a standing no').not.toBe('not-buildable')
    for (const { state } of last.conditions) expect(['action', 'taken-over'], 'a condition').toContain(state)
    if (last.contentHash === contentHash) yes += 1
  }
  expect(yes, 'a yes on the present content').toBeGreaterThan(0)
  for (const { kind, state } of threads) {
    if (kind === 'must-change') expect(state).toBe('closed')
    if (kind === 'engineering-query') expect(state).not.toBe('open')
  }
}

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
    checkIndependence(after)
    checkRelease(after)
  }
  // What was released is never changed, only superseded or withdrawn.
  if (before.stage === 'released') {
    expect(hashSignedContent(before)).toBe(contentHash)
    expect(['released', 'superseded', 'withdrawn']).toContain(after.stage)
  }
  if (before.stage === 'superseded' || before.stage === 'withdrawn') expect(after.stage).toBe(before.stage)
}

/** The usual policy half of the time, any other otherwise. */
const policy: fc.Arbitrary<SignOffPolicy> = fc.oneof(
  fc.constant(USUAL_SIGN_OFF_POLICY),
  fc.record({
    waiverBlocking: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    waiverMajor: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    waiverMinor: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    review: fc.constantFrom('quality', 'no-author', 'none'),
    authorSigns: fc.constantFrom('no', 'beside', 'yes'),
    authorReleases: fc.constantFrom('no', 'yes'),
    requiredSignatures: fc.constantFrom(1, 1, 2),
    requiredCapacities: fc.constant([]),
  }),
)

describe('random sequences of legal and illegal acts', () => {
  test('never release with a blocker and never leave a live signature on other content', () => {
    let released = 0
    let voided = 0
    fc.assert(
      fc.property(
        fc.constantFrom('preparing' as const, 'fabricator-review' as const, 'awaiting-signature' as const),
        fc.array(step, { minLength: 30, maxLength: 90, size: 'max' }),
        policy,
        (stage, steps, rules) => {
          const signOffPolicy = { version: 1, rules }
          const sharedWith = Object.values(FABRICATORS)
          let snapshot = evaluateModel(makeSnapshot({ stage, design: makeDesign(), signOffPolicy, sharedWith }))
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
      { seed: 20270301, numRuns: 250 },
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
          voided: null,
        },
      ],
    }
    expect(decideSigning(signed, LEAD)).toMatchObject({ ok: false, refusal: { kind: 'illegal' } })
  })
})
