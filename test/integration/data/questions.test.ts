import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet'
import { listDesignAnchors } from '@/lib/review'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const dayFrom = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)

describeOnBothDatabases('a question with an owner and a due day', () => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 240_000)

  const ask = (actor: data.Actor, extra: Partial<Parameters<typeof data.openThread>[1]> = {}) =>
    expectDone(
      data.openThread(actor, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'engineering-query',
        title: 'Foil of L2',
        text: 'Which foil is it?',
        ...extra,
      }),
    )
  const find = async (threadId: string, actor = team.lead) => {
    const thread = (await data.getRevision(actor, revisionId)).threads.find(({ id }) => id === threadId)
    if (thread === undefined) throw new Error('no thread')
    return thread
  }
  const assign = async (actor: data.Actor, threadId: string, ownerId: string, dueOn: string) =>
    data.assignThread(actor, { threadId, seenVersion: (await find(threadId)).version, ownerId, dueOn })
  const waitsOf = async (actor: data.Actor, threadId: string) =>
    (await data.listWaits(actor)).filter(({ target }) => target.id === threadId)

  it('knows its place: every kind that the list of places offers is kept with its words, and one that is not there is refused', async () => {
    const { design } = await data.getRevision(team.lead, revisionId)
    const places = listDesignAnchors(design)
    const firsts = [...new Set(places.map(({ kind }) => kind))].map((kind) => {
      const found = places.findLast((place) => place.kind === kind)
      if (found === undefined || found.kind === 'proposal') throw new Error(kind)
      return { kind: found.kind, id: found.id, label: found.label }
    })
    expect(firsts.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['bend', 'zone', 'layer', 'feature', 'value', 'parameter']),
    )
    for (const { kind, id, label } of firsts) {
      const { threadId } = await ask(team.fabricator, { anchor: { kind, id }, title: `About a ${kind}` })
      expect((await find(threadId)).anchor).toEqual({ kind, id, label })
      const elsewhere = await expectRefused(
        data.openThread(team.fabricator, {
          revisionId,
          anchor: { kind, id: `${id}-gone` },
          kind: 'note',
          title: 'Elsewhere',
          text: 'It is not there.',
        }),
      )
      expect(elsewhere).toMatchObject({ issues: [{ path: ['anchor'] }] })
    }
  }, 120_000)

  it('waits for its owner alone, and once it is late for the leads too', async () => {
    const { threadId } = await ask(team.fabricator)
    expect(await waitsOf(team.lead, threadId)).toMatchObject([{ nextAct: 'Answer it' }])
    await expectDone(assign(team.lead, threadId, team.member.userId, dayFrom(2)))
    expect(await find(threadId, team.fabricator)).toMatchObject({
      owner: { name: team.member.name },
      dueOn: dayFrom(2),
      isOverdue: false,
    })
    expect(await waitsOf(team.lead, threadId)).toEqual([])
    expect(await waitsOf(team.member, threadId)).toMatchObject([
      {
        reason: `The engineering query "Foil of L2" is yours to answer; due on ${dayFrom(2)}`,
        nextAct: 'Answer it',
      },
    ])
    const standing = await db().revisionStanding.findUniqueOrThrow({ where: { revisionId } })
    expect(standing.holdsThrough !== null && standing.holdsThrough <= dayFrom(2), 'it is worked out again then').toBe(
      true,
    )
    await expectDone(assign(team.fabricator, threadId, team.member.userId, dayFrom(-2)))
    expect(await waitsOf(team.member, threadId)).toMatchObject([
      { reason: `The engineering query "Foil of L2" is yours to answer; it was due on ${dayFrom(-2)}` },
    ])
    for (const actor of [team.lead, team.secondLead, team.fabricator]) {
      expect(await waitsOf(actor, threadId), actor.name).toMatchObject([
        { nextAct: 'Ask its owner, or change owner or day' },
      ])
    }
    for (const actor of [team.observer, team.rivalFabricator]) expect(await waitsOf(actor, threadId)).toEqual([])
    await expectDone(data.replyToThread(team.lead, { threadId, text: 'Rolled.', isAnswer: true }))
    expect(await waitsOf(team.member, threadId)).toEqual([])
  })

  it('writes to the owner when they are named, with the day, and to nobody when only the day goes', async () => {
    const { threadId } = await ask(team.fabricator)
    await db().mailMessage.deleteMany()
    await expectDone(assign(team.lead, threadId, team.member.userId, dayFrom(3)))
    const mails = await db().mailMessage.findMany()
    expect(mails.map(({ recipientId }) => recipientId)).toEqual([team.member.userId])
    expect(mails[0]?.bodyText).toContain(`${team.lead.name} asks you to answer the engineering query "Foil of L2"`)
    expect(mails[0]?.bodyText).toContain(`Please answer it by ${dayFrom(3)}.`)
    await db().mailMessage.deleteMany()
    await expectDone(assign(team.member, threadId, '', ''))
    expect(await db().mailMessage.count()).toBe(0)
    expect(await find(threadId)).toMatchObject({ owner: null, dueOn: null })
    expect(await waitsOf(team.lead, threadId), 'everybody is asked again').toHaveLength(1)
  })

  it('is refused to people who cannot answer it, and says whose it is', async () => {
    const asked = await ask(team.fabricator)
    const refused = async (ownerId: string) => assign(team.lead, asked.threadId, ownerId, '')
    expect(await refused(team.fabricator.userId)).toMatchObject({
      ok: false,
      refusal: { issues: [{ path: ['ownerId'], message: expect.stringContaining('company that asks') }] },
    })
    expect(await refused(team.rivalFabricator.userId)).toMatchObject({
      ok: false,
      refusal: { issues: [{ path: ['ownerId'] }] },
    })
    expect(await refused(team.observer.userId)).toMatchObject({
      ok: false,
      refusal: { issues: [{ path: ['ownerId'] }] },
    })
    const internal = await ask(team.lead, { kind: 'should-change' })
    expect(await assign(team.lead, internal.threadId, team.fabricator.userId, '')).toMatchObject({ ok: false })
    await expectDone(assign(team.lead, internal.threadId, team.member.userId, ''))
    await expect(assign(team.fabricator, internal.threadId, '', '')).rejects.toThrow(/thread/)
  })

  it('is signed by nobody: naming an owner leaves version and results of the revision as they are', async () => {
    const { threadId } = await ask(team.fabricator)
    const { version } = await data.getRevision(team.lead, revisionId)
    await expectDone(assign(team.lead, threadId, team.member.userId, dayFrom(1)))
    expect((await data.getRevision(team.lead, revisionId)).version).toBe(version)
  })

  it('goes back to everybody when the owner leaves the project', async () => {
    const { threadId } = await ask(team.fabricator, { ownerId: team.member.userId, dueOn: dayFrom(5) })
    expect(await waitsOf(team.lead, threadId)).toEqual([])
    const { projectId, member } = team
    const where = { userId_projectId: { userId: member.userId, projectId } }
    const row = await db().membership.findUniqueOrThrow({ where })
    await expectDone(data.removeMember(team.lead, { projectId, userId: member.userId }))
    expect(await waitsOf(team.lead, threadId)).toMatchObject([{ nextAct: 'Answer it' }])
    expect((await data.listQuestions(team.lead)).asked.rows.find((asked) => asked.threadId === threadId)).toMatchObject(
      {
        ownerName: member.name,
      },
    )
    await db().membership.create({ data: row })
  })

  it('is counted by project and fabricator for those who see it, with its rounds', async () => {
    const { threadId } = await ask(team.fabricator, { title: 'Counted', dueOn: dayFrom(-1) })
    await expectDone(data.replyToThread(team.member, { threadId, text: 'Rolled.', isAnswer: true }))
    const { version } = await find(threadId)
    await expectDone(
      data.reopenThread(team.fabricator, { threadId, seenVersion: version, reason: 'Which grade of it?' }),
    )
    const before = await data.listQuestions(team.lead)
    expect(before.asked.rows[0]).toMatchObject({
      title: 'Counted',
      isOverdue: true,
      rounds: 1,
      fabricatorName: expect.stringContaining('Brackenfold'),
    })
    await expectDone(data.replyToThread(team.member, { threadId, text: 'Annealed.', isAnswer: true }))
    const own = (await data.listQuestions(team.fabricator)).groups.rows
    expect(own.map(({ fabricatorName }) => fabricatorName)).toEqual([expect.stringContaining('Brackenfold')])
    expect((await data.listQuestions(team.rivalFabricator)).groups).toEqual({ rows: [], total: 0 })
    const answered = await find(threadId, team.fabricator)
    await expectDone(
      data.closeThread(team.fabricator, {
        threadId,
        seenVersion: answered.version,
        reason: 'agreed',
        done: { kind: 'no-change' },
      }),
    )
    const after = await data.listQuestions(team.lead)
    const of = (view: data.QuestionsView) =>
      view.groups.rows.find(({ fabricatorName }) => fabricatorName.includes('Brackenfold'))
    expect(of(after)?.figures.agreed).toBe((of(before)?.figures.agreed ?? 0) + 1)
    expect(of(after)?.figures.roundsUntilAgreed).toBe(2)
    expect(
      after.groups.rows.map(({ fabricatorName }) => fabricatorName),
      'what the team asks itself',
    ).toContain('')
  })

  it('comes fifty to a page, each once and in one order, by filter, while figures count all', async () => {
    const view = await data.listQuestions(team.lead)
    const open = await db().thread.findFirstOrThrow({ where: { revisionId, state: 'open', dueOn: null } })
    const titles = Array.from({ length: 120 }, (_, n) => `Copy ${String(n).padStart(3, '0')}`)
    await db().thread.createMany({
      data: titles.map((title) => ({ ...open, id: title, title, ownerId: null })),
    })
    const pages = await Promise.all([1, 2, 3, 4].map((page) => data.listQuestions(team.lead, 'all', page)))
    const total = view.asked.total + 120
    expect(pages.map(({ asked }) => asked.rows.length)).toEqual([50, 50, total - 100, 0])
    const ids = pages.flatMap(({ asked }) => asked.rows.map(({ threadId }) => threadId))
    expect(new Set(ids).size).toBe(total)
    expect(ids.filter((id) => id.startsWith('Copy '))).toEqual(titles)
    for (const { asked, counts, all } of pages) {
      expect([asked.total, counts.all, all.open]).toEqual([total, total, view.all.open + 120])
    }
    // Figures by project and fabricator come by pages of their own.
    expect(pages.map(({ groups }) => groups)).toEqual(pages.map(() => pages[0]?.groups))
    const beyond = await data.listQuestions(team.lead, 'all', 1, 2)
    expect(beyond.groups).toEqual({ rows: [], total: view.groups.total })
    const late = await data.listQuestions(team.lead, 'overdue')
    expect(late.asked.total).toBe(late.counts.overdue)
    expect(late.asked.rows.every(({ isOverdue }) => isOverdue)).toBe(true)
    const unowned = await data.listQuestions(team.lead, 'without-owner', 3)
    expect(unowned.asked).toMatchObject({ total: unowned.counts['without-owner'] })
    expect(unowned.asked.rows).toHaveLength(unowned.counts['without-owner'] - 100)
    expect((await data.listQuestions(team.rivalFabricator)).counts.all).toBe(0)
    await db().thread.deleteMany({ where: { id: { in: titles } } })
  })

  it('becomes a note of the drawing once it is agreed, once, and never of a design that moved meanwhile', async () => {
    const { threadId } = await ask(team.fabricator)
    expect((await find(threadId)).drawingNote).toBeNull()
    const { designVersion } = await data.getRevision(team.lead, revisionId)
    const note = (seenVersion: number, text = 'L2 is rolled annealed foil.') =>
      data.noteOnDrawing(team.member, { threadId, seenVersion, text })
    expect(await note(designVersion)).toMatchObject({
      ok: false,
      refusal: { message: expect.stringContaining('still open') },
    })
    await expectDone(data.replyToThread(team.member, { threadId, text: 'L2 is rolled annealed foil.', isAnswer: true }))
    expect((await find(threadId)).drawingNote).toEqual({ text: 'L2 is rolled annealed foil.', designVersion })
    expect((await find(threadId, team.fabricator)).drawingNote, 'the drawing is the team’s').toBeNull()
    expect(await note(designVersion - 1)).toMatchObject({ ok: false })
    await expectDone(note(designVersion))
    const { design } = await data.getRevision(team.lead, revisionId)
    expect(design.plan?.notes.at(-1)).toMatchObject({ text: 'L2 is rolled annealed foil.', atMm: null })
    const printed = makeSheetContents(design, null, FILE_UNITS).flatMap((block) =>
      block.kind === 'notes' ? block.notes.map(({ text }) => text) : [],
    )
    expect(printed).toContain('L2 is rolled annealed foil.')
    expect(await note(designVersion + 1)).toMatchObject({
      ok: false,
      refusal: { message: expect.stringContaining('already has this note') },
    })
    await expect(
      data.noteOnDrawing(team.fabricator, { threadId, seenVersion: designVersion + 1, text: 'x' }),
    ).rejects.toThrow()
  })
})
