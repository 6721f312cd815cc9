import { setTimeout as sleep } from 'node:timers/promises'
import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import {
  advance,
  answerEverything,
  declareByBoth,
  declareReview,
  makeRevision,
  makeSignInput,
  share,
} from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const countDone = (outcomes: readonly data.ActResult<unknown>[]) => outcomes.filter(({ ok }) => ok).length
const kindsOf = (outcomes: readonly data.ActResult<unknown>[]) =>
  outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.kind)).sort()

/** Calls that truly overlap: all are started before the first can finish. */
describeOnBothDatabases('two people at the same moment', (current) => {
  it('both sign: each signature stands on the content that both saw', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const [a, b] = [await data.getRevision(team.lead, revisionId), await data.getRevision(team.secondLead, revisionId)]
    const outcomes = await Promise.all([
      data.signRevision(team.lead, makeSignInput(a)),
      data.signRevision(team.secondLead, makeSignInput(b)),
    ])
    expect(countDone(outcomes)).toBe(2)
    const { signatures, contentHash } = await data.getRevision(team.lead, revisionId)
    expect(signatures.map((signature) => signature.contentHash)).toEqual([contentHash, contentHash])
    expect(signatures.every(({ voidedAt }) => voidedAt === null)).toBe(true)
  }, 400_000)

  it('one person signs twice: one signature', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const input = makeSignInput(await data.getRevision(team.lead, revisionId))
    const outcomes = await Promise.all([data.signRevision(team.lead, input), data.signRevision(team.lead, input)])
    expect(kindsOf(outcomes)).toEqual(['clash', 'done'])
    expect(await db().signature.count({ where: { revisionId } })).toBe(1)
  }, 400_000)

  it('one edits while the other signs: no signature is left on content that it did not cover', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const seen = { signedFirst: 0, editedFirst: 0 }
    let delayMs = 8
    // The edit starts later each time that it came first, and sooner each time that it came last, so that the two meet.
    for (let round = 1; round <= 16 && (round <= 6 || Math.min(...Object.values(seen)) === 0); round += 1) {
      const view = await data.getRevision(team.secondLead, revisionId)
      const design = { ...view.design, brief: { ...view.design.brief, quantityPerYear: 7000 + round } }
      const edit = async () => {
        await sleep(delayMs)
        return data.saveDesign(team.lead, { revisionId, seenVersion: view.designVersion, design })
      }
      const [signed, edited] = await Promise.all([data.signRevision(team.secondLead, makeSignInput(view)), edit()])
      expect(edited.ok).toBe(true)
      seen[signed.ok ? 'signedFirst' : 'editedFirst'] += 1
      if (!signed.ok) expect(['stale', 'blocked', 'clash']).toContain(signed.refusal.kind)
      delayMs = Math.min(1000, signed.ok ? delayMs / 3 : delayMs * 2)
      const after = await data.getRevision(team.lead, revisionId)
      expect(after.design.brief.quantityPerYear).toBe(7000 + round)
      expect(after.signatures).toHaveLength(seen.signedFirst)
      for (const { voidedAt, contentHash, changes } of after.signatures) {
        expect(contentHash).not.toBe(after.contentHash)
        expect(voidedAt).not.toBeNull()
        expect(changes.join()).toContain('quantity')
      }
      // The edit opens the answers that rest on it again, and outdates declarations and review: left so, no later round could sign.
      expect(after.blockers.map(({ code }) => code)).toContain('review-missing')
      await declareByBoth(team, revisionId)
      await answerEverything(team, revisionId)
      await declareReview(team.quality, revisionId)
      const { blockers } = await data.getRevision(team.secondLead, revisionId)
      expect(blockers.map(({ code }) => code)).toEqual(['signature-missing'])
    }
    expect(seen.signedFirst, 'signed before the edit').toBeGreaterThan(0)
    expect(seen.editedFirst, 'edited before the signature').toBeGreaterThan(0)
    expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
  }, 400_000)

  it('both save the same version of the design: one is told what the other changed', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const save = (actor: data.Actor, quantityPerYear: number) =>
      data.saveDesign(actor, {
        revisionId,
        seenVersion: designVersion,
        design: { ...design, brief: { ...design.brief, quantityPerYear } },
      })
    const outcomes = await Promise.all([save(team.member, 111), save(team.lead, 222)])
    expect(kindsOf(outcomes)).toEqual(['done', 'stale'])
    const refused = outcomes.find(({ ok }) => !ok)
    expect(refused).toMatchObject({
      refusal: { currentVersion: designVersion + 1, changes: [{ what: [expect.any(String)] }] },
    })
  })

  it('both use one invitation: one joins', async () => {
    const team = await makeTeam()
    const { projectId } = team
    const { token } = await expectDone(data.createInvitation(team.lead, { projectId, role: 'member' }))
    const accept = (name: string) =>
      data.acceptInvitation({
        token,
        name,
        email: `${name}.${projectId}@example.org`.toLowerCase(),
        password: 'whimbrel-knot-ruff',
      })
    const outcomes = await Promise.all([accept('Ane'), accept('Bo'), accept('Cai')])
    expect(kindsOf(outcomes)).toEqual(['clash', 'clash', 'done'])
    expect(await db().membership.count({ where: { projectId, user: { name: { in: ['Ane', 'Bo', 'Cai'] } } } })).toBe(1)
    expect(await db().user.count({ where: { email: { endsWith: `${projectId}@example.org` } } })).toBe(1)
  }, 400_000)

  it('both move the stage: it moves once', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    await advance(team, revisionId)
    await answerEverything(team, revisionId)
    const { version } = await data.getRevision(team.lead, revisionId)
    const move = (actor: data.Actor) => data.advanceRevision(actor, { revisionId, seenVersion: version })
    const outcomes = await Promise.all([move(team.lead), move(team.secondLead)])
    expect(countDone(outcomes)).toBe(1)
    const view = await data.getRevision(team.lead, revisionId)
    expect(view.stage).toBe('fabricator-review')
    expect(view.stageMoves).toHaveLength(2)
  }, 400_000)

  it('both answer one item: the second is told', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const item = (await data.getRevision(team.member, revisionId)).items.find(({ mayAnswer }) => mayAnswer)
    if (item === undefined) throw new Error('nothing to answer')
    const answer = (actor: data.Actor) =>
      data.answerItem(actor, { revisionId, itemId: item.itemId, seenVersion: 0, state: 'concern', reason: actor.name })
    expect(kindsOf(await Promise.all([answer(team.member), answer(team.lead)]))).toEqual(['done', 'stale'])
  })

  it('ten people act at once: the trail has no gap and no fork', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const open = (title: string) =>
      data.openThread(team.member, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'note',
        title,
        text: title,
      })
    const outcomes = await Promise.all(Array.from({ length: 10 }, (_, index) => open(`Thread ${index}`)))
    expect(countDone(outcomes)).toBe(10)
    const { firstBad, recordCount } = await data.checkWholeTrail(team.admin)
    expect(firstBad).toBeNull()
    expect(recordCount).toBe(await db().trailRecord.count())
  }, 400_000)
})

describeOnBothDatabases('a request that arrives twice', (current) => {
  it('is carried out once and answered the same, one after the other or at the same moment', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const input = {
      revisionId,
      anchor: { kind: 'revision' as const, id: '' },
      kind: 'note' as const,
      title: 'Once',
      text: 'Once',
      requestKey: 'request-key-1',
    }
    const twice = await Promise.all([data.openThread(team.member, input), data.openThread(team.member, input)])
    const later = await data.openThread(team.member, input)
    expect(new Set([...twice, later].map((outcome) => JSON.stringify(outcome))).size).toBe(1)
    expect(await db().thread.count({ where: { revisionId } })).toBe(1)
  })

  it('is refused when the same key comes with other content, and does not serve another person', async () => {
    const team = await makeTeam()
    const { projectId } = team
    const make = (actor: data.Actor, label: string) =>
      data.createRevision(actor, { projectId, label, origin: { kind: 'blank' }, requestKey: 'request-key-2' })
    await expectDone(make(team.member, 'A'))
    expect(await make(team.member, 'B')).toMatchObject({ ok: false, refusal: { kind: 'clash' } })
    expect((await make(team.lead, 'C')).ok).toBe(true)
  })

  it('can be sent again after a refusal: nothing was kept of it', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const { version } = await data.getRevision(team.lead, revisionId)
    const input = { revisionId, seenVersion: version + 5, requestKey: 'request-key-3' }
    expect(await data.advanceRevision(team.lead, input)).toMatchObject({ ok: false, refusal: { kind: 'stale' } })
    expect(await db().idempotencyKey.count({ where: { userId: team.lead.userId } })).toBe(0)
  })

  it('shows the invitation link again, which is stored nowhere', async () => {
    const team = await makeTeam()
    const input = { projectId: team.projectId, role: 'member' as const, requestKey: 'request-key-4' }
    const first = await expectDone(data.createInvitation(team.lead, input))
    const second = await expectDone(data.createInvitation(team.lead, input))
    expect(second).toEqual(first)
    const kept = await db().idempotencyKey.findMany({ where: { userId: team.lead.userId } })
    expect(JSON.stringify(kept)).not.toContain(first.token)
    const row = await db().invitation.findUniqueOrThrow({ where: { id: first.invitation.id } })
    expect(JSON.stringify(row)).not.toContain(first.token)
  })

  it('keeps no password, not even hashed', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const input = { ...makeSignInput(await data.getRevision(team.lead, revisionId)), requestKey: 'request-key-5' }
    const first = await expectDone(data.signRevision(team.lead, input))
    expect(await expectDone(data.signRevision(team.lead, input))).toEqual(first)
    const again = await data.signRevision(team.lead, { ...input, password: `${PASSWORD}x` })
    expect(again).toMatchObject({ ok: false, refusal: { kind: 'invalid', issues: [{ path: ['password'] }] } })
    expect(await db().signature.count({ where: { revisionId } })).toBe(1)
  }, 400_000)
})
