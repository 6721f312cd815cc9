import { expect, it } from 'vitest'
import {
  attachFile,
  changeAction,
  closeAction,
  dropAction,
  getRevision,
  listRevisionTrail,
  listWaits,
  type ReviewActionView,
  releaseRevision,
  reopenAction,
  reportAction,
  takeOnAction,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { TakeOnActionInput } from '@/lib/inputs'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { PASSWORD, type Team } from '@/test/factories/people'
import { makeSignInput, type Stage, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('actions of a review', (current) => {
  let team: Team

  /** A copy of its own for each test. */
  const startFrom = async (stage: Stage): Promise<string> => {
    const start = await current().startFrom(stage)
    team = start.team
    return start.revisionId
  }

  const takeOn = async (revisionId: string, change: Partial<TakeOnActionInput> = {}) =>
    expectDone(
      takeOnAction(team.lead, {
        revisionId,
        origin: { kind: 'revision', id: '' },
        text: 'Fold ten samples over the former',
        ownerId: team.member.userId,
        due: 'before-release',
        dueOn: '',
        ...change,
      }),
    )

  const see = async (revisionId: string, number = 1): Promise<ReviewActionView> => {
    const found = (await getRevision(team.lead, revisionId)).actions.find((action) => action.number === number)
    if (found === undefined) throw new Error(`there is no action ${number}`)
    return found
  }

  it('blocks signature and release until another person than its owner has closed it', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await sign(team.lead, revisionId)
    const { actionId } = await takeOn(revisionId)
    const open = await getRevision(team.lead, revisionId)
    // What remains to be done is part of what was signed.
    expect(open.signatures.map(({ voidedAt }) => voidedAt === null)).toEqual([false])
    expect(open.blockers.map(({ code }) => code)).toEqual(['action-open', 'signature-missing'])
    expect(open.blockers[0]?.sentence).toContain('Fold ten samples over the former')
    expect(open.signingBlockers.map(({ code }) => code)).toEqual(['action-open'])

    const early = { actionId, seenVersion: 1 }
    expect((await expectRefused(closeAction(team.lead, { ...early, reason: '' }))).kind).toBe('clash')
    await expectDone(reportAction(team.member, { ...early, evidence: 'Ten folded, none cracked.' }))
    await expect(closeAction(team.member, { actionId, seenVersion: 2, reason: '' })).rejects.toThrow(
      'Someone other than its owner and the person who reported it',
    )
    expect((await getRevision(team.lead, revisionId)).blockers[0]?.sentence).toContain('awaits another person')
    await expectDone(closeAction(team.lead, { actionId, seenVersion: 2, reason: 'Saw the photographs.' }))
    expect((await getRevision(team.lead, revisionId)).blockers.map(({ code }) => code)).toEqual(['signature-missing'])
  })

  it('is not closed by the person who reported it, even after it changed hands', async () => {
    const revisionId = await startFrom('fabricator-review')
    const { actionId } = await takeOn(revisionId, { ownerId: team.lead.userId })
    await expectDone(reportAction(team.lead, { actionId, seenVersion: 1, evidence: 'Done.' }))
    const handOver = { ownerId: team.member.userId, due: 'before-release' as const, dueOn: '', reason: 'Moved desks.' }
    await expect(changeAction(team.lead, { actionId, seenVersion: 2, ...handOver })).rejects.toThrow(
      'other than its owner',
    )
    await expectDone(changeAction(team.secondLead, { actionId, seenVersion: 2, ...handOver }))
    await expect(closeAction(team.lead, { actionId, seenVersion: 3, reason: '' })).rejects.toThrow(
      'Someone other than its owner and the person who reported it',
    )
    await expect(dropAction(team.fabricator, { actionId, seenVersion: 3, reason: 'x' })).rejects.toThrow(
      'no such action',
    )
  })

  it('has an owner who sees it, and a date where the date decides', async () => {
    const revisionId = await startFrom('early-review')
    const ask = (change: Partial<TakeOnActionInput>) =>
      takeOnAction(team.lead, {
        revisionId,
        origin: { kind: 'revision', id: '' },
        text: 'Text',
        ownerId: team.member.userId,
        due: 'before-series',
        dueOn: '',
        ...change,
      })
    for (const ownerId of [team.fabricator.userId, team.observer.userId, team.outsider.userId]) {
      expect((await expectRefused(ask({ ownerId }))).kind).toBe('invalid')
    }
    await expectDone(ask({ ownerId: team.fabricator.userId, companyId: team.companies.brackenfold }))
    expect((await getRevision(team.fabricator, revisionId)).actions).toHaveLength(1)
    expect((await getRevision(team.rivalFabricator, revisionId)).actions).toEqual([])
  })

  it('lives on after the release, and its results change nothing that was signed', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await takeOn(revisionId, { due: 'before-first-article', dueOn: '2020-01-31', text: 'Measure the first articles' })
    await sign(team.lead, revisionId)
    const { version } = await getRevision(team.lead, revisionId)
    await expectDone(
      releaseRevision(team.lead, { revisionId, seenVersion: version, purpose: 'prototypes', password: PASSWORD }),
    )
    const signed = (await db().signature.findMany({ where: { revisionId, voidedAt: null } }))[0]
    expect(JSON.parse(signed?.contentJson ?? '{}').actions).toEqual([
      {
        number: 1,
        text: 'Measure the first articles',
        owner: team.member.name,
        due: 'before-first-article',
        dueOn: '2020-01-31',
      },
    ])
    const late = await see(revisionId)
    expect(late.isOverdue).toBe(true)
    const waitsOf = async (actor: typeof team.lead) =>
      (await listWaits(actor)).filter((wait) => wait.revisionId === revisionId).map(({ reason }) => reason)
    expect((await waitsOf(team.member)).join()).toContain('is overdue: due before the first article')
    expect((await waitsOf(team.lead)).join()).toContain('is overdue')

    const packages = await db().package.findMany({ where: { revisionId } })
    const bytes = new TextEncoder().encode('thickness 0.31 mm, ten of ten\n')
    const target = { kind: 'action' as const, actionId: late.id }
    await expectDone(attachFile(team.member, { revisionId, target, fileName: 'first-articles.txt', bytes }))
    await expectDone(reportAction(team.member, { actionId: late.id, seenVersion: 1, evidence: 'Ten of ten in.' }))
    expect((await waitsOf(team.lead)).join()).toContain('is reported done; it was due')
    await expectDone(closeAction(team.lead, { actionId: late.id, seenVersion: 2, reason: '' }))
    expect(await waitsOf(team.member)).toEqual([])
    const after = await see(revisionId)
    expect(after).toMatchObject({ state: 'closed', evidence: 'Ten of ten in.', isAfterRelease: false })
    expect(after.attachments.map(({ fileName }) => fileName)).toEqual(['first-articles.txt'])
    // A further one is taken on; no signature covers it, and none is voided by it.
    await takeOn(revisionId, { due: 'before-series', text: 'Repeat on the first lot' })
    expect((await see(revisionId, 2)).isAfterRelease).toBe(true)
    const view = await getRevision(team.lead, revisionId)
    expect(view.signatures.map(({ voidedAt }) => voidedAt)).toEqual([null])
    expect(view.stage).toBe('released')
    expect(view.contentHash).toBe(signed?.contentHash)
    expect(await db().package.findMany({ where: { revisionId } })).toEqual(packages)
    expect((await listRevisionTrail(team.lead, revisionId)).entries.map(({ action }) => action)).toEqual(
      expect.arrayContaining(['action-taken-on', 'action-reported', 'action-closed', 'file-attached']),
    )
  })

  it('asks the leads again when it is reopened, and settles once', async () => {
    const revisionId = await startFrom('early-review')
    const { actionId } = await takeOn(revisionId)
    await expectDone(reportAction(team.member, { actionId, seenVersion: 1, evidence: 'Done.' }))
    await expectDone(reopenAction(team.lead, { actionId, seenVersion: 2, reason: 'Nine of ten shown.' }))
    expect((await expectRefused(closeAction(team.lead, { actionId, seenVersion: 3, reason: '' }))).kind).toBe('clash')
    await expectDone(dropAction(team.lead, { actionId, seenVersion: 3, reason: 'The former changed.' }))
    expect((await expectRefused(reportAction(team.member, { actionId, seenVersion: 4, evidence: 'x' }))).kind).toBe(
      'clash',
    )
    const letters = await db().mailMessage.findMany({ where: { kind: 'action', subjectKey: `action:${actionId}` } })
    expect(
      letters.filter(({ recipientId }) => recipientId === team.member.userId).map(({ subject }) => subject),
    ).toEqual([
      expect.stringContaining('took on action 1'),
      expect.stringContaining('reopened action 1'),
      expect.stringContaining('dropped action 1'),
    ])
    expect(makeSignInput(await getRevision(team.lead, revisionId)).contentHash).not.toBe('')
  })
})
