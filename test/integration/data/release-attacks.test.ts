import { setTimeout as sleep } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { now, replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { makeIssueKey } from '@/lib/data/records/issued-revision'
import { db } from '@/lib/data/store/client'
import type { DeclarationVerdict } from '@/lib/review'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { PASSWORD, type Team } from '@/test/factories/people'
import { declareReview, type Stage, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/**
 * What somebody would try who wants a release that is not deserved: a lead in a hurry, a fabricator with an interest. Each way is
 * gone to its end, and what it leaves in the record is looked at.
 */
describeOnBothDatabases('attacks on the release gate', (current) => {
  let team: Team

  const startFrom = async (stage: Stage): Promise<string> => {
    const start = await current().startFrom(stage)
    team = start.team
    return start.revisionId
  }
  const see = (actor: data.Actor, revisionId: string) => data.getRevision(actor, revisionId)
  const codesOf = async (revisionId: string) => (await see(team.lead, revisionId)).blockers.map(({ code }) => code)

  async function declare(actor: data.Actor, revisionId: string, verdict: DeclarationVerdict) {
    const { version } = await see(actor, revisionId)
    return data.declareBuildable(actor, {
      revisionId,
      seenVersion: version,
      verdict,
      note: verdict === 'not-buildable' ? 'ours cracked at 6 mm' : '',
      conditions: verdict === 'with-conditions' ? [{ text: 'Only with our coverlay.', field: '', value: '' }] : [],
      password: PASSWORD,
    })
  }

  type Due = 'before-release' | 'before-series' | 'before-first-article'

  async function makeConditionAction(revisionId: string, due: Due): Promise<data.ReviewActionView> {
    await expectDone(declare(team.fabricator, revisionId, 'with-conditions'))
    const view = await see(team.lead, revisionId)
    const condition = view.declarations.flatMap(({ conditions }) => conditions).at(-1)
    if (condition === undefined) throw new Error('there is no condition')
    const action = { text: 'Order their coverlay.', ownerId: team.member.userId, due, dueOn: '' }
    await expectDone(
      data.decideCondition(team.lead, {
        conditionId: condition.id,
        seenVersion: condition.version,
        decision: 'action',
        reason: '',
        action,
      }),
    )
    const taken = (await see(team.lead, revisionId)).actions.at(-1)
    if (taken === undefined) throw new Error('the condition became no action')
    return taken
  }

  type Terms = Partial<Parameters<typeof data.releaseRevision>[1]>
  async function tryRelease(revisionId: string, terms: Terms = {}) {
    const { version } = await see(team.lead, revisionId)
    const input = { revisionId, seenVersion: version, purpose: 'prototypes' as const, password: PASSWORD, ...terms }
    return data.releaseRevision(team.lead, input)
  }

  /** The member raises a concern that needs a waiver and proposes one; another lead approves it. */
  async function waiveAConcern(revisionId: string, limits: { validUntil: string; quantityLimit: number }) {
    for (const item of (await see(team.member, revisionId)).items) {
      if (item.state !== 'meets' || !item.mayAnswer || !item.legalStates.includes('concern')) continue
      const { itemId, answerVersion: seenVersion } = item
      await expectDone(
        data.answerItem(team.member, { revisionId, itemId, seenVersion, state: 'concern', reason: 'too near' }),
      )
      const raised = (await see(team.member, revisionId)).items.find((one) => one.itemId === itemId)
      if (raised?.needsWaiver !== true) continue
      const proposal = { revisionId, itemId, reason: 'accepted for this build', ...limits }
      const { waiverId } = await expectDone(data.proposeWaiver(team.member, proposal))
      const decision = { waiverId, decision: 'approve' as const, reason: '', password: PASSWORD }
      await expectDone(data.decideWaiver(team.secondLead, decision))
      return
    }
    throw new Error('no item takes a concern that needs a waiver')
  }

  const drop = (action: data.ReviewActionView, reason = 'no need') =>
    data.dropAction(team.lead, { actionId: action.id, seenVersion: action.version, reason })

  it('a condition made an action and then dropped is a condition declined: no yes is left of it', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const action = await makeConditionAction(revisionId, 'before-release')
    expect(await codesOf(revisionId)).toContain('action-open')
    await expectDone(drop(action))
    const codes = await codesOf(revisionId)
    expect(codes).not.toContain('action-open')
    expect(codes).toContain('condition-declined')
    expect(await expectRefused(tryRelease(revisionId))).toMatchObject({ kind: 'blocked' })
    const [declined] = await db().trailRecord.findMany({ where: { revisionId, action: 'condition-declined' } })
    expect(declined?.detailsJson).toContain('Only with our coverlay.')
    // Its company is told as of any condition that is declined.
    expect((await data.listWaits(team.fabricator)).map(({ reason }) => reason)).toContain(
      'A condition of your company was declined',
    )
  }, 400_000)

  it('what was released on a condition is done, not dropped', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await makeConditionAction(revisionId, 'before-series')
    await sign(team.lead, revisionId)
    expect(await expectRefused(tryRelease(revisionId, { purpose: 'series' }))).toMatchObject({
      issues: [{ path: ['isConditional'] }],
    })
    const conditional = { isConditional: true, quantityLimit: 50, purpose: 'series' as const }
    await expectDone(tryRelease(revisionId, conditional))
    const [action] = (await see(team.lead, revisionId)).actions
    if (action === undefined) throw new Error('the action is gone')
    expect(await expectRefused(drop(action))).toMatchObject({ kind: 'clash' })
    expect((await see(team.lead, revisionId)).actions).toMatchObject([{ state: 'open' }])
  }, 400_000)

  it('the owner of a condition’s action, whoever reported it, does not close it', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const action = await makeConditionAction(revisionId, 'before-release')
    const at = (seenVersion: number) => ({ actionId: action.id, seenVersion })
    await expectDone(data.reportAction(team.lead, { ...at(action.version), evidence: 'Ordered.' }))
    for (const actor of [team.member, team.lead]) {
      await expect(
        data.closeAction(actor, { ...at(action.version + 1), reason: '' }).then(({ ok }) => ok),
      ).rejects.toBeInstanceOf(data.NotAllowedError)
    }
    // Handing it over afterwards does not make the reporter a second person.
    const handed = { ownerId: team.quality.userId, due: 'before-release' as const, dueOn: '', reason: 'on leave' }
    await expectDone(data.changeAction(team.lead, { ...at(action.version + 1), ...handed }))
    await expect(data.closeAction(team.lead, { ...at(action.version + 2), reason: '' })).rejects.toBeInstanceOf(
      data.NotAllowedError,
    )
    expect(await codesOf(revisionId)).toContain('action-open')
  }, 400_000)

  it('a fabricator’s must-change is not settled by saying that nothing changes, nor by an action that is dropped', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const open = async (title: string) => {
      const anchor = { kind: 'revision' as const, id: '' }
      const thread = { revisionId, anchor, kind: 'must-change' as const, title, text: 'Ours cracked at 6 mm.' }
      return (await expectDone(data.openThread(team.fabricator, thread))).threadId
    }
    const close = async (actor: data.Actor, threadId: string, done: Parameters<typeof data.closeThread>[1]['done']) => {
      const thread = (await see(actor, revisionId)).threads.find(({ id }) => id === threadId)
      return data.closeThread(actor, { threadId, seenVersion: thread?.version ?? 0, reason: 'settled', done })
    }
    const threadId = await open('The radius must be 8 mm')
    expect(await expectRefused(close(team.lead, threadId, { kind: 'no-change' }))).toMatchObject({
      issues: [{ path: ['done'], code: 'unchanged' }],
    })
    const offered = (await see(team.lead, revisionId)).threads.find(({ id }) => id === threadId)
    expect(offered?.doneOptions?.mayStayUnchanged).toBe(false)
    const action = { text: 'Ask again.', ownerId: team.member.userId, due: 'before-release' as const, dueOn: '' }
    const { actionId } = await expectDone(
      data.takeOnAction(team.lead, { revisionId, origin: { kind: 'thread', id: threadId }, ...action }),
    )
    await expectDone(close(team.lead, threadId, { kind: 'action', actionId }))
    const taken = (await see(team.lead, revisionId)).actions.find(({ id }) => id === actionId)
    if (taken === undefined) throw new Error('the action is gone')
    expect(await expectRefused(drop(taken))).toMatchObject({ kind: 'clash' })
    expect(await codesOf(revisionId)).toContain('action-open')
    // Who asked for it may let it go; and of a company that is off this release nothing is left to settle.
    await expectDone(close(team.fabricator, await open('Another'), { kind: 'no-change' }))
    const last = await open('A third')
    const { version } = await see(team.lead, revisionId)
    const off = { revisionId, companyId: team.companies.brackenfold, seenVersion: version, reason: 'not their lot' }
    await expectDone(data.takeOffRelease(team.lead, off))
    await expectDone(close(team.lead, last, { kind: 'no-change' }))
  }, 400_000)

  it('the latest word of a fabricator is the one said last, also where the clock was set back between', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const restore = replaceClock(() => new Date(Date.now() - 3 * 3_600_000))
    try {
      await expectDone(declare(team.fabricator, revisionId, 'not-buildable'))
    } finally {
      restore()
    }
    expect(await codesOf(revisionId)).toContain('declared-not-buildable')
    expect(await expectRefused(tryRelease(revisionId))).toMatchObject({ kind: 'blocked' })
  }, 400_000)

  it('a waiver that ended before the release carries none, and its signature is no longer of what is there', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const day = now().toISOString().slice(0, 10)
    await waiveAConcern(revisionId, { validUntil: day, quantityLimit: 50 })
    await sign(team.lead, revisionId)
    const beyond = await expectRefused(tryRelease(revisionId))
    expect(beyond).toMatchObject({ issues: [{ path: ['quantityLimit'] }, { path: ['validUntil'] }] })
    const more = { isConditional: true, quantityLimit: 51, validUntil: day }
    expect(await expectRefused(tryRelease(revisionId, more))).toMatchObject({ issues: [{ path: ['quantityLimit'] }] })
    const within = { isConditional: true, quantityLimit: 50, validUntil: day }
    const restore = replaceClock(() => new Date(Date.now() + 86_400_000))
    try {
      const late = await expectRefused(tryRelease(revisionId, within))
      expect(late).toMatchObject({ kind: 'blocked' })
      const codes = await codesOf(revisionId)
      expect(codes).toContain('failure-unwaived')
      expect(codes).toContain('signature-missing')
    } finally {
      restore()
    }
    await expectDone(tryRelease(revisionId, within))
  }, 400_000)

  it('declared, signed, taken off, changed, put back: nothing of it is left to release on', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await expectDone(declare(team.rivalFabricator, revisionId, 'not-buildable'))
    const company = { revisionId, companyId: team.companies.ostrel }
    const { version } = await see(team.lead, revisionId)
    await expectDone(data.takeOffRelease(team.lead, { ...company, seenVersion: version, reason: 'too small a press' }))
    await sign(team.lead, revisionId)
    await expectDone(data.putBackOnRelease(team.lead, company))
    expect((await see(team.lead, revisionId)).signatures.every(({ voidedAt }) => voidedAt !== null)).toBe(true)
    expect(await codesOf(revisionId)).toContain('declared-not-buildable')
    // On other content the no is no yes either.
    const { design, designVersion } = await see(team.lead, revisionId)
    const changed = { ...design, brief: { ...design.brief, quantityPerYear: 4242 } }
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: changed }))
    await expectDone(declare(team.fabricator, revisionId, 'buildable'))
    await declareReview(team.quality, revisionId)
    expect(await codesOf(revisionId)).toContain('declaration-outdated')
    expect(await expectRefused(tryRelease(revisionId))).toMatchObject({ kind: 'blocked' })
    // An old page, from before the company was put back, takes it off no second time.
    const old = { ...company, seenVersion: version, reason: 'as before' }
    expect(await expectRefused(data.takeOffRelease(team.lead, old))).toMatchObject({ kind: 'stale' })
  }, 400_000)

  it('a no that arrives while the package is being built: either it was released before, or it is not released', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await sign(team.lead, revisionId)
    const { version } = await see(team.fabricator, revisionId)
    const said = data.declareBuildable(team.fabricator, {
      revisionId,
      seenVersion: version,
      verdict: 'not-buildable',
      note: 'ours cracked at 6 mm',
      conditions: [],
      password: PASSWORD,
    })
    const [released, declared] = await Promise.allSettled([tryRelease(revisionId), sleep(5).then(() => said)])
    const wasReleased = released.status === 'fulfilled' && released.value.ok
    const wasSaid = declared.status === 'fulfilled' && declared.value.ok
    expect([wasReleased, wasSaid].filter(Boolean)).toHaveLength(1)
    const after = await see(team.lead, revisionId)
    expect(after.stage).toBe(wasReleased ? 'released' : 'awaiting-signature')
    expect(await db().package.count({ where: { revisionId } })).toBe(wasReleased ? 3 : 0)
  }, 400_000)

  it('a part number that only looks like another is the same number', async () => {
    const revisionId = await startFrom('released')
    const { design, label } = await see(team.lead, revisionId)
    const number = design.brief.partNumber
    const keyOf = (partNumber: string, letter = label) =>
      makeIssueKey({ ...design, brief: { ...design.brief, partNumber } }, letter)
    expect(number).toBe('QI-3107')
    // A hyphen of another length, a sign that prints nothing, a Cyrillic letter, full-width digits.
    for (const alike of ['QI‑3107', 'QI–3107', 'QI-\u200b3107', 'Q\u0406-3107', 'QI-３１０７', ' qi-3107 ']) {
      expect(keyOf(alike), alike).toBe(keyOf(number))
    }
    for (const other of ['QI-3108', 'Q1-3107', 'QI-31O7', 'QI 3107'])
      expect(keyOf(other), other).not.toBe(keyOf(number))
  }, 400_000)

  it('who made a design stays its author when somebody else takes it in as a file', async () => {
    const first = await startFrom('early-review')
    const authors = async (id: string) => (await see(team.lead, id)).signOff.authors.map(({ name }) => name)
    expect(await authors(first)).toEqual([team.member.name])
    const file = await data.exportDesign(team.lead, first)
    const designText = new TextDecoder().decode(file.bytes)
    const origin = { kind: 'import' as const, designText }
    const taken = await expectDone(data.createRevision(team.lead, { projectId: team.projectId, label: 'Z1', origin }))
    expect(await authors(taken.revisionId)).toEqual(expect.arrayContaining([team.lead.name, team.member.name]))
    const blank = { kind: 'blank' as const }
    const own = await expectDone(
      data.createRevision(team.lead, { projectId: team.projectId, label: 'Z2', origin: blank }),
    )
    expect(await authors(own.revisionId)).toEqual([team.lead.name])
    const { designVersion: seenVersion } = await see(team.lead, own.revisionId)
    await expectDone(data.importDesign(team.lead, { revisionId: own.revisionId, seenVersion, designText }))
    expect(await authors(own.revisionId)).toEqual(expect.arrayContaining([team.lead.name, team.member.name]))
  }, 240_000)
})
