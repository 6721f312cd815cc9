import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { readArchive } from '@/lib/package'
import { expectDone } from '@/test/factories/act-results'
import { PASSWORD, type Team } from '@/test/factories/people'
import { answer, makeRevisionAt, share, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('two fabricators in one project', (current) => {
  let team: Team
  let revisionId: string
  let attachmentId: string
  let threadId: string

  /** Everything by which one could know of Brackenfold's part in the review. */
  const traces = () => [
    'Brackenfold',
    'Bram Tolley',
    team.companies.brackenfold,
    team.fabricator.userId,
    'web of 0.1 mm',
  ]

  const expectNoTrace = (view: unknown) => {
    const text = typeof view === 'string' ? view : JSON.stringify(view)
    for (const trace of traces()) expect(text).not.toContain(trace)
  }

  beforeAll(async () => {
    ;({ team, revisionId } = await current().startFrom('early-review'))
    await expectDone(
      data.setLimit(team.fabricator, {
        companyId: team.companies.brackenfold,
        key: 'platingInBendUm',
        seenVersion: 0,
        value: 0.25,
        note: '',
      }),
    )
    await expectDone(data.evaluateAgain(team.lead, { revisionId }))

    const opened = await expectDone(
      data.openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'engineering-query',
        title: 'Is the web of 0.1 mm wanted?',
        text: 'We cannot hold a web of 0.1 mm.',
      }),
    )
    threadId = opened.threadId
    const comment = await db().comment.findFirstOrThrow({ where: { threadId } })
    const bytes = new TextEncoder().encode('a photo of a web of 0.1 mm')
    const attachment = await expectDone(
      data.attachFile(team.fabricator, {
        revisionId,
        target: { kind: 'comment', commentId: comment.id },
        fileName: 'Brackenfold-web.txt',
        bytes,
      }),
    )
    attachmentId = attachment.id
    const item = (await data.getRevision(team.fabricator, revisionId)).items.find(
      ({ mayAnswer, state }) => mayAnswer && state === 'open',
    )
    if (item === undefined) throw new Error('nothing is left for the fabricator to answer')
    await answer(team.fabricator, revisionId, item)
    await expectDone(
      data.attachFile(team.fabricator, {
        revisionId,
        target: { kind: 'item', itemId: item.itemId },
        fileName: 'Brackenfold-process.txt',
        bytes: new TextEncoder().encode('process sheet'),
      }),
    )
    await expectDone(
      data.replyToThread(team.member, { threadId, text: 'The web of 0.1 mm may grow to 0.2 mm.', isAnswer: true }),
    )
  }, 400_000)

  it('never meet in any view of the revision or the project', async () => {
    const view = await data.getRevision(team.rivalFabricator, revisionId)
    expect(view.threads).toEqual([])
    expect(view.sharedWith.map(({ id }) => id)).toEqual([team.companies.ostrel])
    expectNoTrace(view)
    expectNoTrace(await data.getProject(team.rivalFabricator, team.projectId))
    expectNoTrace(await data.listProjects(team.rivalFabricator))
    expectNoTrace(await data.listWaits(team.rivalFabricator))
    expectNoTrace(await data.listPeople(team.rivalFabricator))
    expectNoTrace(await data.listCompanies(team.rivalFabricator))
    const { bytes } = await data.exportResults(team.rivalFabricator, revisionId)
    expectNoTrace(new TextDecoder().decode(bytes))
  })

  it('see their own part, and the team sees both', async () => {
    const own = await data.getRevision(team.fabricator, revisionId)
    expect(own.threads.map(({ id }) => id)).toEqual([threadId])
    expect(own.sharedWith.map(({ id }) => id)).toEqual([team.companies.brackenfold])
    const all = await data.getRevision(team.observer, revisionId)
    expect(all.threads.map(({ id }) => id)).toEqual([threadId])
    expect(all.sharedWith).toHaveLength(2)
  })

  it('are judged by their own limits: each view names no other', async () => {
    const own = await data.getRevision(team.fabricator, revisionId)
    expect(own.limits.map(({ owner }) => owner.kind)).toEqual(['fabricator'])
    expect((await data.getRevision(team.rivalFabricator, revisionId)).limits).toEqual([])
    expect((await data.getRevision(team.lead, revisionId)).limits.map(({ value }) => value)).toEqual([0.25])
  })

  it('cannot fetch what the other attached, nor answer in its threads, by knowing the ids', async () => {
    await expect(data.getAttachmentFile(team.rivalFabricator, attachmentId)).rejects.toThrow(data.NotFoundError)
    const reply = { threadId, text: 'hello', isAnswer: false }
    await expect(data.replyToThread(team.rivalFabricator, reply)).rejects.toThrow(data.NotFoundError)
    await expect(data.getLimitList(team.rivalFabricator, team.companies.brackenfold)).rejects.toThrow(
      data.NotFoundError,
    )
  })

  it('learn nothing of each other from a stale answer or a voided signature', async () => {
    const other = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, other)
    const before = await data.getRevision(team.rivalFabricator, other)
    // An engineering query moves a result, and so voids the signature.
    await expectDone(
      data.openThread(team.fabricator, {
        revisionId: other,
        anchor: { kind: 'revision', id: '' },
        kind: 'engineering-query',
        title: 'Is the web of 0.1 mm wanted?',
        text: 'Again.',
      }),
    )
    const after = await data.getRevision(team.rivalFabricator, other)
    expect(after.signatures[0]?.voidedAt).not.toBeNull()
    expectNoTrace(after)
    const late = await data.declareBuildable(team.rivalFabricator, {
      revisionId: other,
      seenVersion: before.version,
      verdict: 'buildable',
      conditions: [],
      note: '',
      password: PASSWORD,
    })
    expect(late).toMatchObject({ ok: false, refusal: { kind: 'stale' } })
    expectNoTrace(late)
    expect((await data.getRevision(team.lead, other)).signatures[0]?.voidedBy?.id).toBe(team.fabricator.userId)
  })

  it('do not find the team’s own threads counted in their results', async () => {
    const shared = await makeRevisionAt(team, 'early-review')
    const resultFor = async (actor: data.Actor) =>
      (await data.getRevision(actor, shared)).items.find(({ itemId }) => itemId === 'engineering-queries')?.result
    // The first look is a fact of its own: until then nobody could have asked.
    await resultFor(team.fabricator)
    const [before, teamBefore] = [await resultFor(team.fabricator), await resultFor(team.lead)]
    await expectDone(
      data.openThread(team.lead, {
        revisionId: shared,
        anchor: { kind: 'revision', id: '' },
        kind: 'must-change',
        title: 'Stiffener',
        text: 'Among ourselves.',
      }),
    )
    expect(before).toBeDefined()
    expect(await resultFor(team.fabricator)).toEqual(before)
    expect(await resultFor(team.lead)).not.toEqual(teamBefore)
  })

  it('see no revision that is no longer shared with them', async () => {
    const hidden = await makeRevisionAt(team, 'early-review')
    await expectDone(data.unshareRevision(team.lead, { revisionId: hidden, companyId: team.companies.ostrel }))
    await expect(data.getRevision(team.rivalFabricator, hidden)).rejects.toThrow(data.NotFoundError)
    await share(team, hidden)
    expect((await data.getRevision(team.rivalFabricator, hidden)).id).toBe(hidden)
  })

  it('get an edition of the package whose files, the trail among them, name no other fabricator', async () => {
    const shared = await makeRevisionAt(team, 'awaiting-signature')
    // What one of them, or the team, tried without success is shown only to those whom it concerns.
    for (const actor of [team.fabricator, team.lead]) {
      const { version: seenVersion } = await data.getRevision(actor, shared)
      const word = {
        revisionId: shared,
        seenVersion,
        verdict: 'buildable' as const,
        note: '',
        conditions: [],
        password: 'a wrong guess',
      }
      const attempt =
        actor === team.fabricator
          ? data.declareBuildable(actor, word)
          : data.releaseRevision(actor, {
              revisionId: shared,
              seenVersion: 1,
              purpose: 'prototypes',
              password: PASSWORD,
            })
      expect((await attempt).ok).toBe(false)
    }
    await sign(team.lead, shared)
    const { version: seenVersion } = await data.getRevision(team.lead, shared)
    const order = { revisionId: shared, seenVersion, purpose: 'prototypes' as const, password: PASSWORD }
    await expectDone(data.releaseRevision(team.lead, order))
    const { bytes } = await data.getPackageFile(team.rivalFabricator, shared)
    const archive = readArchive(bytes)
    if (!archive.ok) throw new Error('the package cannot be read')
    const texts = archive.value
      .filter(({ path }) => /\.(json|txt|svg)$/.test(path))
      .map((file) => [file.path, new TextDecoder().decode(file.bytes)] as const)
    expect(texts.map(([path]) => path)).toContain('trail.json')
    for (const [, text] of texts) expectNoTrace(text)
    const trail = texts.find(([path]) => path === 'trail.json')?.[1] ?? ''
    expect(trail).toContain('act-refused')
    expect(trail).toContain(team.rivalFabricator.name)
  })
})
