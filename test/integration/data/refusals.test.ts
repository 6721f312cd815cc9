import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('what cannot be kept', (current) => {
  it('leaves the design, its version and the trail as they were', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const before = await data.getRevision(team.member, revisionId)
    const records = await db().trailRecord.count()
    const [bend] = before.design.bends
    if (bend === undefined) throw new Error('the design has no bend')
    const design = { ...before.design, bends: [{ ...bend, zoneId: 'no-such-zone' }] }
    const refusal = await expectRefused(
      data.saveDesign(team.member, { revisionId, seenVersion: before.designVersion, design }),
    )
    expect(refusal).toMatchObject({ kind: 'invalid', issues: [{ path: ['design', 'bends', 0, 'zoneId'] }] })
    expect(await data.getRevision(team.member, revisionId)).toEqual(before)
    expect(await db().trailRecord.count()).toBe(records)
  })

  it.each([
    ['no JSON', 'layer,thickness\n1,35', /not JSON/],
    ['a ZIP renamed JSON', 'PK\u0003\u0004\u0014\u0000', /ZIP archive/],
    ['a file of 5 MB', ' '.repeat(5_000_000), /5000000 characters/],
    ['half of a surrogate pair', JSON.stringify({ format: '\ud800' }), /./],
  ])('is said of an import that is %s', async (_what, designText, reason) => {
    const team = await makeTeam()
    const { projectId } = team
    const input = { projectId, label: 'X', origin: { kind: 'import' as const, designText } }
    const refusal = await expectRefused(data.createRevision(team.member, input))
    expect(refusal.kind).toBe('invalid')
    expect('issues' in refusal ? refusal.issues[0]?.message : '').toMatch(reason)
    expect(await db().revision.count({ where: { projectId } })).toBe(0)
  })

  it('is said of files: empty, too large, or no artwork', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const add = (bytes: Uint8Array<ArrayBuffer>) =>
      expectRefused(data.addArtwork(team.member, { revisionId, fileName: 'a.gbr', bytes }))
    expect(await add(new Uint8Array())).toMatchObject({ issues: [{ path: ['file'], code: 'empty' }] })
    expect(await add(new Uint8Array(data.MAX_FILE_BYTES + 1))).toMatchObject({ issues: [{ code: 'too-large' }] })
    expect(await add(new Uint8Array([0, 1, 2, 255]))).toMatchObject({ issues: [{ code: 'unknown-content' }] })
    expect((await data.getRevision(team.member, revisionId)).artwork).toEqual([])
  })

  it('says who may answer, to everybody who may not', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const seen = await data.getRevision(team.lead, revisionId)
    const [ofFabricator, ofTeam] = [
      seen.items.find(({ itemId }) => itemId === 'buildable-construction'),
      seen.items.find(({ itemId }) => itemId === 'electrical-test'),
    ]
    if (ofFabricator === undefined || ofTeam === undefined) throw new Error('both are in the catalogue')
    expect(ofFabricator).toMatchObject({
      mayAnswer: false,
      whyNoAnswer: 'Answered by a fabricator with whom the revision is shared.',
    })
    const send = (actor: data.Actor, { itemId, answerVersion }: data.ItemView) =>
      data.answerItem(actor, { revisionId, itemId, seenVersion: answerVersion, state: 'concern', reason: 'x' })
    for (const actor of [team.lead, team.member]) {
      await expect(send(actor, ofFabricator)).rejects.toThrow(
        'You may not answer this item. Answered by a fabricator with whom the revision is shared.',
      )
    }
    for (const actor of [team.observer, team.fabricator]) {
      const own = (await data.getRevision(actor, revisionId)).items.find(({ itemId }) => itemId === ofTeam.itemId)
      expect(own).toMatchObject({ mayAnswer: false, whyNoAnswer: 'Answered by the team (lead engineer or member).' })
      await expect(send(actor, ofTeam)).rejects.toThrow(/Answered by the team/)
    }
  })

  it('takes no word for it that a fabricator has seen what was shown to none', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const item = (await data.getRevision(team.member, revisionId)).items.find(
      ({ itemId }) => itemId === 'fabricator-currency',
    )
    expect(item?.result).toMatchObject({ verdict: 'fails' })
    expect(item?.legalStates).not.toContain('meets')
    const input = {
      revisionId,
      itemId: 'fabricator-currency',
      seenVersion: 0,
      state: 'meets' as const,
      reason: 'shown',
    }
    expect(await expectRefused(data.answerItem(team.member, input))).toMatchObject({
      kind: 'invalid',
      issues: [{ code: 'overrules-calculation' }],
    })
  })

  it('takes a file under a name that is safe, and gives back the same bytes', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const bytes = new TextEncoder().encode('G04 layer 1*')
    const { id, fileName, sha256 } = await expectDone(
      data.addArtwork(team.member, { revisionId, fileName: '..\\..\\etc/layer "1".gbr', bytes }),
    )
    expect(fileName).toBe('layer 1.gbr')
    expect(sha256).toMatch(/^[0-9a-f]{64}$/)
    expect([...(await data.getArtworkFile(team.member, id)).bytes]).toEqual([...bytes])
  })

  it('is an answer that overrules a failed calculation, and a waiver that its proposer approves', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team, 'skua-rev-a')
    const failed = (await data.getRevision(team.lead, revisionId)).items.find(
      ({ result, mayAnswer }) => result.verdict === 'fails' && mayAnswer,
    )
    if (failed === undefined) throw new Error('nothing fails in the first Skua')
    const { itemId } = failed
    const answer = { revisionId, itemId, seenVersion: 0, state: 'meets' as const, reason: 'it will hold' }
    expect(await expectRefused(data.answerItem(team.lead, answer))).toMatchObject({ issues: [{ path: ['state'] }] })
    const proposal = { revisionId, itemId, reason: 'prototype only' }
    const { waiverId } = await expectDone(data.proposeWaiver(team.lead, proposal))
    const approval = { waiverId, decision: 'approve' as const, reason: '', password: PASSWORD }
    expect((await expectRefused(data.decideWaiver(team.lead, approval))).message).toMatch(
      /the proposer of a waiver cannot approve it/,
    )
    await expectDone(data.decideWaiver(team.secondLead, approval))
    const after = (await data.getRevision(team.lead, revisionId)).items.find((item) => item.itemId === itemId)
    expect(after).toMatchObject({ state: 'waived', waivers: [{ state: 'approved', covers: true }] })
  })

  it('is a move that something blocks: the list says what, with a place for each', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const { version, blockers } = await data.getRevision(team.lead, revisionId)
    expect(blockers.length).toBeGreaterThan(0)
    const refusal = await expectRefused(data.advanceRevision(team.lead, { revisionId, seenVersion: version }))
    expect(refusal).toMatchObject({ kind: 'blocked', blockers })
  })

  it('is a change to a revision that has left the path: the refusal names the stage', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const { version, designVersion, design } = await data.getRevision(team.lead, revisionId)
    await expectDone(
      data.withdrawRevision(team.lead, {
        revisionId,
        seenVersion: version,
        reason: 'superseded idea',
        password: PASSWORD,
      }),
    )
    const refusal = await expectRefused(
      data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: { ...design, name: 'Other' } }),
    )
    expect(refusal).toMatchObject({ kind: 'clash', message: expect.stringContaining('withdrawn') })
  })

  it('is a thread that history would lose: an edit keeps the text before it', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const { threadId } = await expectDone(
      data.openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'should-change',
        title: 'Stiffener',
        text: 'first words',
      }),
    )
    const [comment] = (await data.getRevision(team.fabricator, revisionId)).threads[0]?.comments ?? []
    if (comment === undefined) throw new Error('the thread has no comment')
    const edit = { commentId: comment.id, seenVersion: comment.version, text: 'second words' }
    await expectDone(data.editComment(team.fabricator, edit))
    expect((await expectRefused(data.editComment(team.fabricator, edit))).kind).toBe('stale')
    const thread = (await data.getRevision(team.lead, revisionId)).threads.find(({ id }) => id === threadId)
    expect(thread?.comments[0]).toMatchObject({ text: 'second words', earlierTexts: [{ text: 'first words' }] })
  })
})
