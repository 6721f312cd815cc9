import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { WORKSPACE_ID } from '@/lib/data/records/settings-record'
import { db } from '@/lib/data/store/client'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { makeRevision, makeRevisionAt, share, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('a mention', () => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 240_000)

  const waitsOf = async (actor: data.Actor, threadId: string) =>
    (await data.listWaits(actor)).filter(({ target }) => target.id === threadId)
  const open = (actor: data.Actor, text: string, companyId?: string) =>
    expectDone(
      data.openThread(actor, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'note',
        title: 'Foil of L2',
        text,
        ...(companyId === undefined ? {} : { companyId }),
      }),
    )
  const reply = (actor: data.Actor, threadId: string, text: string, isAnswer = false) =>
    expectDone(data.replyToThread(actor, { threadId, text, isAnswer }))

  it('waits for the person who is mentioned until they have said something in the thread', async () => {
    const { threadId } = await open(team.lead, `Which is it, @${team.member.name}?`)
    expect(await waitsOf(team.member, threadId)).toMatchObject([
      {
        reason: 'Imke Dahl mentions you in the note "Foil of L2"',
        nextAct: 'Read it and reply',
        target: { tab: 'threads' },
      },
    ])
    expect(await waitsOf(team.secondLead, threadId)).toEqual([])
    await data.getRevision(team.member, revisionId)
    expect(await waitsOf(team.member, threadId), 'looking is no answer').toHaveLength(1)
    await reply(team.secondLead, threadId, 'I wonder too.')
    expect(await waitsOf(team.member, threadId)).toHaveLength(1)
    await reply(team.member, threadId, 'Rolled.')
    expect(await waitsOf(team.member, threadId)).toEqual([])
    await reply(team.lead, threadId, `Sure, @${team.member.name}?`)
    expect(await waitsOf(team.member, threadId), 'asked again').toHaveLength(1)
  })

  it('is settled by an answer or a closing after it, no matter who gave it', async () => {
    const answered = await open(
      team.lead,
      `@${team.member.name}, @${team.fabricator.name}?`,
      team.companies.brackenfold,
    )
    expect(await waitsOf(team.member, answered.threadId)).toHaveLength(1)
    await reply(team.fabricator, answered.threadId, 'Rolled.', true)
    expect(await waitsOf(team.member, answered.threadId)).toEqual([])
    await reply(team.lead, answered.threadId, `Now you, @${team.member.name}`)
    expect(await waitsOf(team.member, answered.threadId)).toHaveLength(1)
    const version = (await data.getRevision(team.lead, revisionId)).threads.find(
      ({ id }) => id === answered.threadId,
    )?.version
    const close = { threadId: answered.threadId, seenVersion: version ?? 0, reason: '' }
    await expectDone(data.closeThread(team.lead, close))
    expect(await waitsOf(team.member, answered.threadId)).toEqual([])
  })

  it('makes one entry with the turn to answer, none of an own mention, none for who may only read or not see', async () => {
    const text = [team.lead, team.member, team.fabricator, team.rivalFabricator, team.observer]
    const { threadId } = await open(team.fabricator, text.map(({ name }) => `@${name}`).join(' '))
    expect(await waitsOf(team.lead, threadId)).toMatchObject([{ nextAct: 'Answer it' }])
    for (const actor of [team.fabricator, team.rivalFabricator, team.observer]) {
      expect(await waitsOf(actor, threadId)).toEqual([])
    }
  })

  it('counts from the edit that brought it, and goes with the edit that takes it out', async () => {
    const { threadId } = await open(team.lead, 'Which is it?')
    await reply(team.member, threadId, 'A good question.')
    const edit = async (text: string) => {
      const { threads } = await data.getRevision(team.lead, revisionId)
      const comment = threads.find(({ id }) => id === threadId)?.comments[0]
      const input = { commentId: comment?.id ?? '', seenVersion: comment?.version ?? 0, text }
      await expectDone(data.editComment(team.lead, input))
    }
    await edit(`Which is it, @${team.member.name}?`)
    expect(await waitsOf(team.member, threadId)).toHaveLength(1)
    await edit('Which is it, anybody?')
    expect(await waitsOf(team.member, threadId)).toEqual([])
  })

  it('in the thread of a proposal adds nothing for who decides, and is an entry for who proposed', async () => {
    const view = await data.getRevision(team.fabricator, revisionId)
    const bends = view.design.bends.map((bend) => ({ ...bend, insideRadiusMm: 27 }))
    const { proposalId, threadId } = await expectDone(
      data.proposeChange(team.fabricator, {
        revisionId,
        seenVersion: view.designVersion,
        design: { ...view.design, bends },
        title: 'Wider bend',
        why: `@${team.lead.name}, the tool.`,
        kind: 'note',
      }),
    )
    expect(await waitsOf(team.lead, threadId)).toEqual([])
    expect(await waitsOf(team.lead, proposalId)).toMatchObject([{ nextAct: 'Accept or decline it' }])
    await reply(team.lead, threadId, `Which tool, @${team.fabricator.name}?`)
    expect(await waitsOf(team.fabricator, threadId)).toHaveLength(1)
    const decision = { proposalId, seenVersion: view.designVersion, decision: 'decline' as const, reason: 'no' }
    await expectDone(data.decideProposal(team.member, decision))
    for (const actor of [team.lead, team.secondLead, team.member]) {
      expect([...(await waitsOf(actor, proposalId)), ...(await waitsOf(actor, threadId))]).toEqual([])
    }
  })
})

describeOnBothDatabases('a missing signature', (current) => {
  const signing = async (actor: data.Actor, revisionId: string) =>
    (await data.listWaits(actor)).filter((wait) => wait.revisionId === revisionId && /signature/i.test(wait.reason))
  const setSettings = async (change: object) => {
    const { settingsJson } = await db().workspace.findUniqueOrThrow({ where: { id: WORKSPACE_ID } })
    const settings = JSON.stringify({ ...JSON.parse(settingsJson), ...change })
    await db().workspace.update({ where: { id: WORKSPACE_ID }, data: { settingsJson: settings } })
    return () => db().workspace.update({ where: { id: WORKSPACE_ID }, data: { settingsJson } })
  }

  it('waits for each who could give it, and for nobody once it stands', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    for (const actor of [team.lead, team.secondLead]) {
      expect(await signing(actor, revisionId)).toMatchObject([
        { nextAct: 'Review and sign it', target: { tab: 'sign-off' } },
      ])
    }
    for (const actor of [team.member, team.observer, team.fabricator]) {
      expect(await signing(actor, revisionId)).toEqual([])
    }
    await sign(team.lead, revisionId)
    for (const actor of [team.lead, team.secondLead]) expect(await signing(actor, revisionId)).toEqual([])
    expect((await data.listWaits(team.lead)).find((wait) => wait.revisionId === revisionId)?.nextAct).toBe('Release it')
  }, 400_000)

  it('waits for nobody who made the content, no matter who else answered or commented', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    await db().revision.update({ where: { id: revisionId }, data: { createdById: team.lead.userId } })
    expect(await signing(team.lead, revisionId)).toEqual([])
    expect(await signing(team.secondLead, revisionId)).toHaveLength(1)
  }, 400_000)

  it('waits in a capacity for those who were granted it, until that capacity has signed', async () => {
    const team = await makeTeam()
    const signingCapacities = [{ name: 'lead engineer' }, { name: 'quality engineer' }]
    const restore = await setSettings({ signingCapacities })
    try {
      // A revision keeps the capacities that were required when it began.
      const revisionId = await makeRevisionAt(team, 'awaiting-signature')
      expect(await signing(team.quality, revisionId)).toMatchObject([
        { reason: 'The signature as quality engineer is missing' },
      ])
      await sign(team.lead, revisionId)
      for (const actor of [team.lead, team.secondLead]) expect(await signing(actor, revisionId)).toEqual([])
      expect(await signing(team.quality, revisionId)).toHaveLength(1)
    } finally {
      await restore()
    }
  }, 400_000)

  it('comes after the review, which waits for everybody who made none of it', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const { id: reviewId } = await db().reviewStatement.findFirstOrThrow({ where: { revisionId } })
    await expectDone(data.withdrawReview(team.quality, { reviewId, reason: 'a slip', password: PASSWORD }))
    const reviewing = async (actor: data.Actor) =>
      (await data.listWaits(actor)).filter((wait) => wait.revisionId === revisionId && /review/i.test(wait.nextAct))
    for (const actor of [team.quality, team.lead, team.secondLead]) expect(await reviewing(actor)).toHaveLength(1)
    for (const actor of [team.member, team.observer, team.auditor]) expect(await reviewing(actor)).toEqual([])
    expect(await signing(team.lead, revisionId)).toEqual([])
  }, 400_000)
})

describeOnBothDatabases('a look of a fabricator', () => {
  it('is known to the checklist at once, and moves nothing that somebody signed', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    const headline = async () => {
      const { items } = await data.getRevision(team.lead, revisionId)
      return items.find(({ itemId }) => itemId === 'manufacturing-review')?.result.headline
    }
    const before = await headline()
    expect(before).toContain('no fabricator has looked')
    const { version } = await data.getRevision(team.lead, revisionId)
    await data.getRevision(team.fabricator, revisionId)
    expect(await headline()).not.toContain('no fabricator has looked')
    const { version: after } = await data.getRevision(team.lead, revisionId)
    expect(after, 'who has the page open goes on').toBe(version)
    const count = () => db().evaluation.count({ where: { revisionId } })
    const stored = await count()
    await data.getRevision(team.fabricator, revisionId)
    expect(await count(), 'the same look').toBe(stored)

    const signedId = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, signedId)
    await db().revisionShare.updateMany({ where: { revisionId: signedId }, data: { lookedJson: null } })
    const signed = await db().evaluation.count({ where: { revisionId: signedId } })
    await data.getRevision(team.fabricator, signedId)
    expect(await db().evaluation.count({ where: { revisionId: signedId } })).toBe(signed)
    const view = await data.getRevision(team.lead, signedId)
    expect(view.signatures.filter(({ voidedAt }) => voidedAt === null)).toHaveLength(1)
  })
})
