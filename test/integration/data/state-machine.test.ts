import fc from 'fast-check'
import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { makeIssueKey } from '@/lib/data/records/issued-revision'
import { loadRevision } from '@/lib/data/records/loaded-revision'
import { makeSnapshot } from '@/lib/data/records/snapshot'
import { db, getDatabase } from '@/lib/data/store/client'
import { findBlockers, hashSignedContent, isOpenStage, listItemStates } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { PASSWORD, type Team, type TeamPersonName } from '@/test/factories/people'
import { answerEverything, declareByBoth, makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** What a draw works on, and what it has seen happen. */
interface Real {
  readonly team: Team
  readonly revisionId: string
  /** Revisions whose number and label were issued elsewhere before they were released. */
  readonly issuedElsewhere: Set<string>
  readonly counts: Record<'done' | 'refused' | 'released' | 'voided' | 'checked', number>
}

const MAY_REFUSE = [data.NotAllowedError, data.NotFoundError]

/**
 * An act that somebody tries, whether or not it is theirs and time for it. Nothing is predicted but that it is carried
 * out whole or refused whole: the rules themselves are tested one by one elsewhere.
 */
class Act {
  constructor(
    readonly name: string,
    readonly who: TeamPersonName,
    readonly carryOut: (real: Real, actor: data.Actor) => Promise<data.ActResult<unknown> | undefined>,
  ) {}

  /** @param before  the revision as the act before left it */
  async run(real: Real, before: Gathered): Promise<Gathered> {
    const done = await this.try(real)
    real.counts[done ? 'done' : 'refused'] += 1
    const after = await gather(real)
    // What was refused left no trace in the revision.
    if (!done) expect(after.version, `${this} was refused`).toBe(before.version)
    await checkInvariants(real, before, after)
    return after
  }

  private async try(real: Real): Promise<boolean> {
    try {
      const outcome = await this.carryOut(real, real.team[this.who])
      return outcome?.ok === true
    } catch (error) {
      if (MAY_REFUSE.some((known) => error instanceof known)) return false
      throw error
    }
  }

  toString(): string {
    return `${this.name} by ${this.who}`
  }
}

type Gathered = Awaited<ReturnType<typeof gather>>

/** The revision as the rules see it, straight from the database. */
async function gather({ revisionId }: Real) {
  return getDatabase().inTransaction(async (tx) => {
    const loaded = await loadRevision(tx, revisionId)
    const { snapshot } = makeSnapshot(loaded, null)
    return { snapshot, version: loaded.record.version, contentHash: hashSignedContent(snapshot) }
  })
}

async function checkInvariants(real: Real, before: Gathered, after: Gathered): Promise<void> {
  const { snapshot, contentHash } = after
  for (const signature of snapshot.signatures) {
    if (signature.voided === null && isOpenStage(snapshot.stage))
      expect(signature.contentHash, 'a live signature on other content').toBe(contentHash)
    if (signature.voided !== null) real.counts.voided += 1
  }
  const packages = await db().package.findMany({ where: { revisionId: real.revisionId, audience: 'team' } })
  if (snapshot.stage === 'released' && before.snapshot.stage !== 'released') {
    real.counts.released += 1
    expect(findBlockers(before.snapshot, 'awaiting-signature'), 'a revision released with a blocker').toEqual([])
    expect(packages.map((row) => row.contentHash)).toEqual([contentHash])
    expect(real.issuedElsewhere.has(real.revisionId), 'a release under an issued number').toBe(false)
    expectSettled(snapshot)
    const { releasedById } = await db().release.findUniqueOrThrow({ where: { revisionId: real.revisionId } })
    if (snapshot.signOffPolicy?.rules.authorReleases === 'no')
      expect(
        snapshot.authors.map(({ userId }) => userId),
        'an author released',
      ).not.toContain(releasedById)
  }
  // What was released, superseded or withdrawn is kept as it was.
  if (['released', 'superseded', 'withdrawn'].includes(before.snapshot.stage)) {
    // Actions live on beside what was signed.
    const without = (one: Gathered) => hashSignedContent({ ...one.snapshot, actions: [] })
    expect(without(after)).toBe(without(before))
    expect(snapshot.signatures).toEqual(before.snapshot.signatures)
    expect(new Set(packages.map((row) => row.contentHash)).size).toBeLessThan(2)
    if (before.snapshot.stage !== 'released') expect(snapshot.stage).toBe(before.snapshot.stage)
  }
  const { firstBad } = await data.checkWholeTrail(real.team.admin)
  expect(firstBad, 'the trail').toBeNull()
  real.counts.checked += 1
}

/** In words of the test's own: no standing no, condition, must-change or action stood in the way, and nobody approved against the policy. */
function expectSettled(snapshot: Gathered['snapshot']): void {
  const off = snapshot.takenOff.map(({ companyId }) => companyId)
  for (const { companyId } of snapshot.sharedWith.filter((share) => !off.includes(share.companyId))) {
    const last = snapshot.declarations.findLast((declaration) => declaration.companyId === companyId)
    expect(last?.verdict, 'a standing no').not.toBe('not-buildable')
    for (const { state } of last?.conditions ?? []) expect(['action', 'taken-over'], 'a condition').toContain(state)
  }
  for (const { kind, state } of snapshot.threads) if (kind === 'must-change') expect(state).toBe('closed')
  for (const { due, isAfterRelease, state } of snapshot.actions) {
    if (due === 'before-release' && !isAfterRelease) expect(['closed', 'dropped'], 'an action').toContain(state)
  }
  const authors = snapshot.authors.map(({ userId }) => userId)
  const rules = snapshot.signOffPolicy?.rules
  expect(rules, 'the policy that is pinned').toBeDefined()
  if (rules?.authorSigns === 'no') {
    for (const { userId, voided } of snapshot.signatures) if (voided === null) expect(authors).not.toContain(userId)
  }
  const isReviewed = snapshot.reviews.some(
    ({ userId, withdrawnAt }) => withdrawnAt === null && !authors.includes(userId),
  )
  if (rules?.review !== 'none') expect(isReviewed, 'a review by somebody who made none of it').toBe(true)
  for (const { item, state, waiver, answer } of listItemStates(snapshot)) {
    if (state !== 'waived' || waiver === null) continue
    const minor = item.severity === 'minor' || item.severity === 'advice'
    const rule = minor ? rules?.waiverMinor : item.severity === 'major' ? rules?.waiverMajor : rules?.waiverBlocking
    if (rule === 'anyone') continue
    expect(waiver.decidedBy, 'a waiver approved by its proposer').not.toBe(waiver.proposedBy)
    expect(waiver.decidedBy, 'a waiver approved by who raised it').not.toBe(answer?.answeredBy)
    if (rule === 'second-person') continue
    expect(authors, 'a waiver approved by an author').not.toContain(waiver.decidedBy)
    if (rule === 'quality') expect(waiver.decidedAsRole).toBe('quality')
  }
}

const seen = (real: Real, actor: data.Actor) => data.getRevision(actor, real.revisionId)

const advance: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  return data.advanceRevision(actor, { revisionId: real.revisionId, seenVersion })
}
const sendBack: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  return data.sendBackRevision(actor, { revisionId: real.revisionId, seenVersion, reason: 'wrong foil' })
}
const withdraw: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  return data.withdrawRevision(actor, {
    revisionId: real.revisionId,
    seenVersion,
    reason: 'no longer made',
    password: PASSWORD,
  })
}
const release: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  return data.releaseRevision(actor, {
    revisionId: real.revisionId,
    seenVersion,
    purpose: 'prototypes',
    password: PASSWORD,
  })
}
const sign: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion, contentHash, statement } = await seen(real, actor)
  const words = { capacity: 'lead engineer', statement: statement || 'Reviewed.', password: PASSWORD }
  const hash = contentHash === '' ? 'f'.repeat(64) : contentHash
  return data.signRevision(actor, { revisionId: real.revisionId, seenVersion, contentHash: hash, ...words })
}
const takeBack: Act['carryOut'] = async (real, actor) => {
  const signature = (await seen(real, actor)).signatures.find(({ voidedAt }) => voidedAt === null)
  return signature === undefined
    ? undefined
    : data.withdrawSignature(actor, { signatureId: signature.id, reason: 'radius misread', password: PASSWORD })
}
const edit =
  (quantityPerYear: number): Act['carryOut'] =>
  async (real, actor) => {
    const { design, designVersion: seenVersion } = await seen(real, actor)
    const changed = { ...design, brief: { ...design.brief, quantityPerYear } }
    return data.saveDesign(actor, { revisionId: real.revisionId, seenVersion, design: changed })
  }
const editStale: Act['carryOut'] = async (real, actor) => {
  const { design, designVersion } = await seen(real, actor)
  const changed = { ...design, name: 'Seen too long ago' }
  return data.saveDesign(actor, { revisionId: real.revisionId, seenVersion: designVersion + 1, design: changed })
}
const declare =
  (verdict: 'buildable' | 'with-conditions' | 'not-buildable'): Act['carryOut'] =>
  async (real, actor) => {
    const { version: seenVersion } = await seen(real, actor)
    return data.declareBuildable(actor, {
      revisionId: real.revisionId,
      seenVersion,
      verdict,
      note: verdict === 'not-buildable' ? 'coverlay web too narrow' : '',
      conditions: verdict === 'with-conditions' ? [{ text: 'only in one lot', field: '', value: '' }] : [],
      password: PASSWORD,
    })
  }
const findCondition = async (real: Real, actor: data.Actor) =>
  (await seen(real, actor)).declarations.flatMap(({ conditions }) => conditions).find(({ state }) => state === 'open')
const decideCondition =
  (decision: 'decline' | 'action'): Act['carryOut'] =>
  async (real, actor) => {
    const condition = await findCondition(real, actor)
    if (condition === undefined) return undefined
    const action = {
      text: 'Order one lot.',
      ownerId: real.team.member.userId,
      due: 'before-release' as const,
      dueOn: '',
    }
    return data.decideCondition(actor, {
      conditionId: condition.id,
      seenVersion: condition.version,
      decision,
      reason: decision === 'decline' ? 'two lots are ordered' : '',
      ...(decision === 'action' ? { action } : {}),
    })
  }
const takeOff: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  const { revisionId, team } = real
  return data.takeOffRelease(actor, {
    revisionId,
    companyId: team.companies.ostrel,
    seenVersion,
    reason: 'not this lot',
  })
}
const putBack: Act['carryOut'] = (real, actor) =>
  data.putBackOnRelease(actor, { revisionId: real.revisionId, companyId: real.team.companies.ostrel })
const takeOn =
  (due: 'before-release' | 'before-series'): Act['carryOut'] =>
  (real, actor) =>
    data.takeOnAction(actor, {
      revisionId: real.revisionId,
      origin: { kind: 'revision', id: '' },
      text: 'Measure the first lot.',
      ownerId: real.team.member.userId,
      due,
      dueOn: '',
    })
const findAction = async (real: Real, actor: data.Actor, state: string) =>
  (await seen(real, actor)).actions.find((action) => action.state === state)
const reportAction: Act['carryOut'] = async (real, actor) => {
  const action = await findAction(real, actor, 'open')
  if (action === undefined) return undefined
  return data.reportAction(actor, { actionId: action.id, seenVersion: action.version, evidence: 'measured' })
}
const closeAction: Act['carryOut'] = async (real, actor) => {
  const action = await findAction(real, actor, 'reported')
  if (action === undefined) return undefined
  return data.closeAction(actor, { actionId: action.id, seenVersion: action.version, reason: '' })
}
/** The same part number and label go out elsewhere in the workspace first. */
const issueElsewhere: Act['carryOut'] = async (real) => {
  const { design, label, stage } = await seen(real, real.team.lead)
  if (stage === 'released' || stage === 'superseded' || stage === 'withdrawn') return undefined
  const issueKey = makeIssueKey(design, label)
  if ((await db().issuedRevision.findUnique({ where: { issueKey } })) !== null) return undefined
  const revisionId = await makeRevision(real.team)
  await db().issuedRevision.create({
    data: {
      issueKey,
      partNumber: design.brief.partNumber,
      label,
      revisionId,
      contentHash: 'e'.repeat(64),
      packageSha256: 'e'.repeat(64),
      issuedById: real.team.lead.userId,
      issuedAt: new Date(),
    },
  })
  real.issuedElsewhere.add(real.revisionId)
  // It is no act on this revision.
  return undefined
}
const query: Act['carryOut'] = (real, actor) =>
  data.openThread(actor, {
    revisionId: real.revisionId,
    anchor: { kind: 'revision', id: '' },
    kind: 'engineering-query',
    title: 'Which face carries the stiffener?',
    text: 'The drawing shows both.',
  })
const mustChange: Act['carryOut'] = (real, actor) =>
  data.openThread(actor, {
    revisionId: real.revisionId,
    anchor: { kind: 'revision', id: '' },
    kind: 'must-change',
    title: 'The web beside the slit must be 0.5 mm',
    text: 'Ours tore at 0.3 mm.',
  })
const dropAction: Act['carryOut'] = async (real, actor) => {
  const action = await findAction(real, actor, 'open')
  if (action === undefined) return undefined
  return data.dropAction(actor, { actionId: action.id, seenVersion: action.version, reason: 'no need' })
}
/** A concern is raised first, where none is there: a waiver is of something. */
const proposeWaiver: Act['carryOut'] = async (real, actor) => {
  const { items } = await seen(real, actor)
  const raised = items.find(({ state, needsWaiver }) => needsWaiver && state === 'concern')
  const met = items.find(
    ({ state, mayAnswer, legalStates }) => state === 'meets' && mayAnswer && legalStates.includes('concern'),
  )
  const item = raised ?? met
  if (item === undefined) return undefined
  if (raised === undefined) {
    const answer = { revisionId: real.revisionId, itemId: item.itemId, seenVersion: item.answerVersion }
    return data.answerItem(actor, { ...answer, state: 'concern', reason: 'too near the edge' })
  }
  return data.proposeWaiver(actor, { revisionId: real.revisionId, itemId: item.itemId, reason: 'for this lot' })
}
const decideWaiver: Act['carryOut'] = async (real, actor) => {
  const { items } = await seen(real, actor)
  const waiver = items.flatMap(({ waivers }) => waivers).find(({ state }) => state === 'proposed')
  if (waiver === undefined) return undefined
  return data.decideWaiver(actor, { waiverId: waiver.id, decision: 'approve', reason: '', password: PASSWORD })
}
const review: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  return data.declareReviewed(actor, { revisionId: real.revisionId, seenVersion, note: '', password: PASSWORD })
}
/** Loosened for the project; it reaches the revision only by `followPolicy`. */
const loosenPolicy: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion, rules } = await data.getProjectSignOffPolicy(actor, real.team.projectId)
  const isUsual = rules.authorSigns === 'no'
  await data.setSignOffPolicy(actor, {
    projectId: real.team.projectId,
    seenVersion,
    ...rules,
    authorSigns: isUsual ? 'yes' : 'no',
    requiredCapacities: rules.requiredCapacities.map((name) => ({ name })),
    reason: 'the team is small',
  })
  // It is no act on this revision, though a stricter one reaches it.
  return { ok: true, value: null }
}
const followPolicy: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion } = await seen(real, actor)
  const { version: toVersion } = await data.getProjectSignOffPolicy(actor, real.team.projectId)
  return data.followSignOffPolicy(actor, { revisionId: real.revisionId, seenVersion, toVersion, reason: 'agreed' })
}
const closeThreads: Act['carryOut'] = async (real, actor) => {
  const thread = (await seen(real, actor)).threads.find(({ state }) => state !== 'closed')
  return thread === undefined
    ? undefined
    : data.closeThread(actor, {
        threadId: thread.id,
        seenVersion: thread.version,
        reason: 'settled',
        done: { kind: 'no-change' },
      })
}
const answerOpen: Act['carryOut'] = async (real, actor) => {
  const item = (await seen(real, actor)).items.find(({ state, mayAnswer }) => state === 'open' && mayAnswer)
  if (item === undefined) return undefined
  const state = item.legalStates.includes('meets') ? 'meets' : 'concern'
  const input = { revisionId: real.revisionId, itemId: item.itemId, seenVersion: item.answerVersion, state } as const
  return data.answerItem(actor, { ...input, reason: 'looked at on the drawing' })
}
const takeAnswerBack: Act['carryOut'] = async (real, actor) => {
  const item = (await seen(real, actor)).items.find(({ answer }) => answer?.state === 'meets')
  if (item === undefined) return undefined
  const input = { revisionId: real.revisionId, itemId: item.itemId, seenVersion: item.answerVersion }
  return data.answerItem(actor, { ...input, state: 'open', reason: '' })
}
const updateTemplate: Act['carryOut'] = async (real, actor) => {
  const { version: seenVersion, template } = await seen(real, actor)
  if (template.latestVersion === 0) return undefined
  return data.updateTemplate(actor, {
    revisionId: real.revisionId,
    seenVersion,
    toVersion: template.latestVersion,
    toProfileIds: [],
  })
}
const atVersion = async (real: Real) => {
  const { version } = await seen(real, real.team.quality)
  return { revisionId: real.revisionId, seenVersion: version }
}
/** Everybody does their part: without it draws would hardly ever come to a release. */
const settle: Act['carryOut'] = async (real) => {
  const { stage } = await seen(real, real.team.lead)
  if (!['early-review', 'fabricator-review', 'awaiting-signature'].includes(stage)) return undefined
  const { threads } = await seen(real, real.team.lead)
  for (const thread of threads.filter(({ state }) => state !== 'closed')) {
    const input = {
      threadId: thread.id,
      seenVersion: thread.version,
      reason: 'settled',
      done: { kind: 'no-change' as const },
    }
    // A fabricator's must-change is withdrawn by its own people.
    const closer = thread.kind === 'must-change' ? real.team.fabricator : real.team.lead
    await expectDone(data.closeThread(closer, input))
  }
  await answerEverything(real.team, real.revisionId, { mayStayOpen: true })
  if (stage !== 'early-review') await declareByBoth(real.team, real.revisionId)
  if (stage === 'awaiting-signature')
    await data.declareReviewed(real.team.quality, { ...(await atVersion(real)), note: '', password: PASSWORD })
  return { ok: true, value: null }
}

const leads = fc.constantFrom<TeamPersonName>('lead', 'secondLead')
const anybody = fc.constantFrom<TeamPersonName>(
  'lead',
  'secondLead',
  'quality',
  'member',
  'observer',
  'fabricator',
  'rivalFabricator',
  'admin',
  'outsider',
)
const fabricators = fc.constantFrom<TeamPersonName>('fabricator', 'rivalFabricator')
const act = (name: string, who: fc.Arbitrary<TeamPersonName>, run: Act['carryOut']) =>
  who.map((by) => new Act(name, by, run))

/** Weighted towards what leads to a release. */
const step = fc.oneof(
  { weight: 8, arbitrary: act('settle', fc.constant('lead'), settle) },
  { weight: 8, arbitrary: act('sign', leads, sign) },
  { weight: 10, arbitrary: act('release', leads, release) },
  { weight: 4, arbitrary: act('advance', leads, advance) },
  { weight: 1, arbitrary: act('sign', anybody, sign) },
  { weight: 1, arbitrary: act('release', anybody, release) },
  { weight: 1, arbitrary: act('advance', anybody, advance) },
  { weight: 1, arbitrary: act('edit', leads, edit(7000)) },
  { weight: 1, arbitrary: act('edit', anybody, edit(8000)) },
  { weight: 1, arbitrary: act('edit on an old version', leads, editStale) },
  { weight: 1, arbitrary: act('answer', anybody, answerOpen) },
  { weight: 1, arbitrary: act('take an answer back', anybody, takeAnswerBack) },
  { weight: 2, arbitrary: act('raise a concern, or propose its waiver', anybody, proposeWaiver) },
  { weight: 2, arbitrary: act('approve a waiver', anybody, decideWaiver) },
  { weight: 2, arbitrary: act('declare reviewed', anybody, review) },
  { weight: 1, arbitrary: act('take a signature back', leads, takeBack) },
  { weight: 1, arbitrary: act('declare buildable', anybody, declare('buildable')) },
  { weight: 1, arbitrary: act('declare with conditions', fabricators, declare('with-conditions')) },
  { weight: 1, arbitrary: act('declare not buildable', fabricators, declare('not-buildable')) },
  { weight: 1, arbitrary: act('decline a condition', leads, decideCondition('decline')) },
  { weight: 1, arbitrary: act('make a condition an action', leads, decideCondition('action')) },
  { weight: 1, arbitrary: act('take a fabricator off', anybody, takeOff) },
  { weight: 1, arbitrary: act('put a fabricator back', leads, putBack) },
  { weight: 1, arbitrary: act('take on an action due before release', anybody, takeOn('before-release')) },
  { weight: 1, arbitrary: act('take on an action due later', leads, takeOn('before-series')) },
  { weight: 2, arbitrary: act('report an action done', anybody, reportAction) },
  { weight: 2, arbitrary: act('close an action', leads, closeAction) },
  { weight: 1, arbitrary: act('issue the number elsewhere', fc.constant('lead'), issueElsewhere) },
  { weight: 1, arbitrary: act('raise a query', anybody, query) },
  { weight: 1, arbitrary: act('close a thread', anybody, closeThreads) },
  { weight: 1, arbitrary: act('ask for a change', fc.constant('fabricator'), mustChange) },
  { weight: 1, arbitrary: act('drop an action', leads, dropAction) },
  { weight: 1, arbitrary: act('loosen or tighten the policy', anybody, loosenPolicy) },
  { weight: 1, arbitrary: act('follow the policy', anybody, followPolicy) },
  { weight: 1, arbitrary: act('update the catalogue', leads, updateTemplate) },
  { weight: 1, arbitrary: act('send back', anybody, sendBack) },
  { weight: 1, arbitrary: act('withdraw', anybody, withdraw) },
)

describeOnBothDatabases('random sequences of legal and illegal acts', (current) => {
  // Each draw is a whole review; both databases carry out the same ones.
  const numRuns = 8

  it('never leave a blocker behind a release, a signature on other content, or a trail that does not fit', async () => {
    const counts = { done: 0, refused: 0, released: 0, voided: 0, checked: 0 }
    // Each draw in a database of its own, in which somebody has already done the acts that lead there.
    const begin = {
      preparing: async () => {
        const { team } = await current().startFrom('early-review')
        const revisionId = await makeRevision(team)
        await share(team, revisionId)
        return { team, revisionId }
      },
      'awaiting-signature': () => current().startFrom('awaiting-signature'),
    }
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom<keyof typeof begin>(
          'awaiting-signature',
          'awaiting-signature',
          'awaiting-signature',
          'preparing',
        ),
        fc.array(step, { minLength: 15, maxLength: 30, size: 'max' }),
        async (stage, steps) => {
          const real: Real = { ...(await begin[stage]()), counts, issuedElsewhere: new Set() }
          let before = await gather(real)
          for (const next of steps) before = await next.run(real, before)
        },
      ),
      // A failing draw is replayed by its seed and path; looking for a shorter one would take an hour.
      { seed: 20270301, numRuns, endOnFailure: true },
    )
    // The draws must reach what they are about, or the test proves nothing.
    expect(counts.checked).toBeGreaterThan(30)
    expect(counts.done).toBeGreaterThan(20)
    expect(counts.refused).toBeGreaterThan(20)
    expect(counts.voided).toBeGreaterThan(0)
    expect(counts.released).toBeGreaterThan(0)
  }, 1_800_000)
})
