import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { takeOffReleaseInput } from '@/lib/inputs'
import type { DeclarationVerdict } from '@/lib/review'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { PASSWORD, type Team } from '@/test/factories/people'
import { advance, declareReview, type Stage, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const RADIUS = 'bends.install-bend.insideRadiusMm'

describeOnBothDatabases('what fabricators say and the release', (current) => {
  let team: Team

  /** A copy of its own for each test. */
  const startFrom = async (stage: Stage): Promise<string> => {
    const start = await current().startFrom(stage)
    team = start.team
    return start.revisionId
  }

  const see = (actor: data.Actor, revisionId: string) => data.getRevision(actor, revisionId)
  const codesOf = async (revisionId: string) => (await see(team.lead, revisionId)).blockers.map(({ code }) => code)

  async function declare(
    actor: data.Actor,
    revisionId: string,
    verdict: DeclarationVerdict,
    conditions: readonly { text: string; field?: string; value?: string }[] = [],
  ) {
    const { version } = await see(actor, revisionId)
    await expectDone(
      data.declareBuildable(actor, {
        revisionId,
        seenVersion: version,
        verdict,
        note: verdict === 'not-buildable' ? 'ours cracked at 6 mm' : '',
        conditions: conditions.map((condition) => ({ field: '', value: '', ...condition })),
        password: PASSWORD,
      }),
    )
  }

  async function setRadius(revisionId: string, insideRadiusMm: number) {
    const { design, designVersion } = await see(team.lead, revisionId)
    const bends = design.bends.map((bend) => (bend.id === 'install-bend' ? { ...bend, insideRadiusMm } : bend))
    await expectDone(
      data.saveDesign(team.lead, { revisionId, seenVersion: designVersion, design: { ...design, bends } }),
    )
  }

  const conditionOf = async (revisionId: string) => {
    const view = await see(team.lead, revisionId)
    const condition = view.declarations.flatMap(({ conditions }) => conditions).at(-1)
    if (condition === undefined) throw new Error('there is no condition')
    return condition
  }

  async function tryRelease(revisionId: string) {
    const { version } = await see(team.lead, revisionId)
    return data.releaseRevision(team.lead, {
      revisionId,
      seenVersion: version,
      purpose: 'prototypes',
      password: PASSWORD,
    })
  }

  it('a condition said after the signature voids it, by name, and blocks until it is decided', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await sign(team.lead, revisionId)
    await declare(team.fabricator, revisionId, 'with-conditions', [
      { text: 'Only with a radius of 8 mm: ours cracked at 6 mm.', field: RADIUS, value: '8' },
    ])
    const view = await see(team.lead, revisionId)
    expect(view.signatures[0]?.voidedAt).not.toBeNull()
    expect(view.signatures[0]?.changes.join()).toContain('buildable to buildable with conditions: Only with a radius')
    expect(view.blockers.map(({ code }) => code)).toContain('condition-open')
    expect(await expectRefused(tryRelease(revisionId))).toMatchObject({ kind: 'blocked' })
    const waits = await data.listWaits(team.lead)
    expect(waits.filter((wait) => wait.revisionId === revisionId).map(({ reason }) => reason)).toEqual([
      expect.stringContaining('builds it under a condition not decided yet'),
    ])
    // The other fabricator learns nothing of it.
    const rival = JSON.stringify(await see(team.rivalFabricator, revisionId))
    for (const trace of ['cracked at 6 mm', 'Brackenfold']) expect(rival.includes(trace), trace).toBe(false)
  }, 400_000)

  it('taken over takes a real change, to what the condition asks for, and the fabricator declares again', async () => {
    const revisionId = await startFrom('fabricator-review')
    await declare(team.rivalFabricator, revisionId, 'buildable')
    await declare(team.fabricator, revisionId, 'with-conditions', [
      { text: 'Only with a radius of 8 mm.', field: RADIUS, value: '8' },
    ])
    const condition = await conditionOf(revisionId)
    expect(condition.options?.changes).toEqual([])
    const takeOver = (places: string[]) =>
      data.decideCondition(team.lead, {
        conditionId: condition.id,
        seenVersion: condition.version,
        decision: 'take-over',
        reason: '',
        done: { kind: 'fields', places },
      })
    expect(await expectRefused(takeOver([RADIUS]))).toMatchObject({ issues: [{ code: 'unchanged' }] })
    await setRadius(revisionId, 7)
    expect(await expectRefused(takeOver([RADIUS]))).toMatchObject({ issues: [{ code: 'other-value' }] })
    await setRadius(revisionId, 8)
    const { options } = await conditionOf(revisionId)
    expect(options?.changes.map(({ place }) => place)).toEqual([RADIUS])
    await expectDone(takeOver([RADIUS]))
    expect(await conditionOf(revisionId)).toMatchObject({
      state: 'taken-over',
      decision: expect.stringContaining('inside radius'),
    })
    // The design is another one now: nobody's word stands on it until it is said again.
    expect(await codesOf(revisionId)).toContain('declaration-outdated')
    await declare(team.fabricator, revisionId, 'buildable')
    expect(await codesOf(revisionId)).not.toContain('declaration-outdated')
  }, 400_000)

  it('a declined condition is no yes; an action is one, and blocks where it is due before the release', async () => {
    const revisionId = await startFrom('fabricator-review')
    await declare(team.fabricator, revisionId, 'with-conditions', [{ text: 'Only with our coverlay.' }])
    const first = await conditionOf(revisionId)
    const decide = (decision: 'decline' | 'action', condition: data.ConditionView, due?: 'before-release') =>
      data.decideCondition(team.lead, {
        conditionId: condition.id,
        seenVersion: condition.version,
        decision,
        reason: decision === 'decline' ? 'The coverlay is qualified.' : '',
        ...(decision === 'action'
          ? {
              action: {
                text: 'Send the order’s date.',
                ownerId: team.member.userId,
                due: due ?? ('before-series' as const),
                dueOn: '',
              },
            }
          : {}),
      })
    await expectDone(decide('decline', first))
    expect(await codesOf(revisionId)).toContain('condition-declined')
    expect((await data.listWaits(team.fabricator)).map(({ reason }) => reason)).toContain(
      'A condition of your company was declined',
    )
    await declare(team.fabricator, revisionId, 'with-conditions', [{ text: 'Tell us when the clad is ordered.' }])
    await expectDone(decide('action', await conditionOf(revisionId), 'before-release'))
    const [action] = (await see(team.fabricator, revisionId)).actions
    if (action === undefined) throw new Error('the fabricator does not see what its condition became')
    expect((await see(team.rivalFabricator, revisionId)).actions).toEqual([])
    expect((await data.listWaits(team.member)).some(({ reason }) => reason.includes('Send the order’s date'))).toBe(
      true,
    )
    const sent = { actionId: action.id, seenVersion: action.version }
    await expectDone(data.reportAction(team.member, { ...sent, evidence: 'Sent on 2 March.' }))
    const closing = { actionId: action.id, seenVersion: action.version + 1 }
    await expectDone(data.closeAction(team.lead, { ...closing, reason: 'Seen.' }))
    const codes = await codesOf(revisionId)
    for (const code of ['action-open', 'condition-open', 'condition-declined', 'declaration-missing']) {
      expect(codes).not.toContain(code)
    }
  }, 400_000)

  it("one fabricator's yes never cancels another's no; only taking it off the release by name and reason does", async () => {
    const revisionId = await startFrom('awaiting-signature')
    await declare(team.rivalFabricator, revisionId, 'not-buildable')
    expect(await codesOf(revisionId)).toContain('declared-not-buildable')
    // Hiding the revision from the company that refused does not take its word away.
    await expectDone(data.unshareRevision(team.lead, { revisionId, companyId: team.companies.ostrel }))
    expect(await codesOf(revisionId)).toContain('declared-not-buildable')
    await expectDone(data.shareRevision(team.lead, { revisionId, companyId: team.companies.ostrel }))

    const { version } = await see(team.lead, revisionId)
    const off = { revisionId, companyId: team.companies.ostrel, seenVersion: version }
    expect(takeOffReleaseInput.safeParse({ ...off, reason: ' ' }).error?.issues).toMatchObject([{ path: ['reason'] }])
    await expectDone(data.takeOffRelease(team.lead, { ...off, reason: 'Their press is too small for this part.' }))
    expect((await see(team.fabricator, revisionId)).standings.map(({ company }) => company.id)).toEqual([
      team.companies.brackenfold,
    ])
    expect(await codesOf(revisionId)).toEqual(['signature-missing'])
    await sign(team.lead, revisionId)
    await expectDone(tryRelease(revisionId))
    const packages = await db().package.findMany({ where: { revisionId } })
    expect(packages.map(({ audience }) => audience).sort()).toEqual(['team', team.companies.brackenfold].sort())
    // No other fabricator's edition holds its name.
    await expect(data.getPackageFile(team.rivalFabricator, revisionId)).rejects.toThrow()
  }, 400_000)

  it('a must-change is closed with a reason and what was done; an answer alone, or nothing done, keeps it in the way', async () => {
    const revisionId = await startFrom('fabricator-review')
    await declare(team.fabricator, revisionId, 'buildable')
    const { threadId } = await expectDone(
      data.openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'must-change',
        title: 'The radius must be 8 mm',
        text: 'Ours cracked at 6 mm.',
      }),
    )
    await expectDone(data.replyToThread(team.lead, { threadId, text: 'Taken over.', isAnswer: true }))
    expect(await codesOf(revisionId)).toContain('thread-open')
    const close = async (reason: string, done?: Parameters<typeof data.closeThread>[1]['done']) => {
      const thread = (await see(team.lead, revisionId)).threads.find(({ id }) => id === threadId)
      return data.closeThread(team.lead, {
        threadId,
        seenVersion: thread?.version ?? 0,
        reason,
        ...(done === undefined ? {} : { done }),
      })
    }
    expect(await expectRefused(close(''))).toMatchObject({ issues: [{ path: ['reason'] }] })
    expect(await expectRefused(close('taken over'))).toMatchObject({ issues: [{ path: ['done'] }] })
    const pointer = { kind: 'fields' as const, places: [RADIUS] }
    expect(await expectRefused(close('taken over', pointer))).toMatchObject({ issues: [{ code: 'unchanged' }] })
    await setRadius(revisionId, 8)
    await expectDone(close('taken over', pointer))
    const closed = (await see(team.fabricator, revisionId)).threads.find(({ id }) => id === threadId)
    expect(closed?.done).toContain('inside radius')
    expect(await codesOf(revisionId)).not.toContain('thread-open')
  }, 400_000)

  it('a word in an open thread after the signature voids it', async () => {
    const revisionId = await startFrom('fabricator-review')
    await declare(team.fabricator, revisionId, 'buildable')
    await declare(team.rivalFabricator, revisionId, 'buildable')
    const { threadId } = await expectDone(
      data.openThread(team.lead, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'note',
        title: 'Bend test',
        text: 'Ten articles.',
      }),
    )
    await advance(team, revisionId).catch(() => undefined)
    const { stage, blockers } = await see(team.lead, revisionId)
    expect(stage, JSON.stringify(blockers)).toBe('awaiting-signature')
    await declareReview(team.quality, revisionId)
    await sign(team.lead, revisionId)
    await expectDone(data.replyToThread(team.member, { threadId, text: 'Make it twenty.', isAnswer: false }))
    const [signature] = (await see(team.lead, revisionId)).signatures
    expect(signature?.voidedAt).not.toBeNull()
    expect(signature?.changes.join()).toContain('new text in note "Bend test"')
  }, 400_000)

  it('a yes with a note from before conditions were lines of their own is read, and must be said again', async () => {
    const revisionId = await startFrom('fabricator-review')
    await declare(team.fabricator, revisionId, 'buildable')
    await db().declaration.updateMany({
      where: { revisionId },
      data: { verdict: null, designHash: null, note: 'Only if the radius is 8 mm.' },
    })
    const view = await see(team.lead, revisionId)
    expect(view.declarations[0]).toMatchObject({ verdict: 'buildable', isFromBefore: true })
    expect(view.blockers.map(({ code }) => code)).toContain('declaration-unclear')
    await db().declaration.updateMany({ where: { revisionId }, data: { note: '' } })
    expect(await codesOf(revisionId)).not.toContain('declaration-unclear')
  }, 400_000)
})
