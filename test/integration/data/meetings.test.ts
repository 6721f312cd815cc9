import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { recordMeetingInput } from '@/lib/inputs'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** Review meetings and verification of needs are general practice of design control (ISO 9001:2015, 8.3.4); their fields are a choice of ours. */
describeOnBothDatabases('meetings and needs', () => {
  const held = (team: Team, revisionId: string) => ({
    revisionId,
    title: 'Review of the hinge',
    heldOn: '2026-01-15',
    agenda: 'Strain, clad, dates',
    people: [
      { userId: team.lead.userId, attendance: 'present' as const },
      { userId: team.quality.userId, attendance: 'present' as const },
      { userId: team.member.userId, attendance: 'excused' as const },
    ],
  })

  it('minutes say who was there and what was decided; a decision makes an action, which voids what was signed', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, revisionId)
    const { items } = await data.getMeetings(team.lead, revisionId)
    const [item] = items
    if (item === undefined) throw new Error('the review has no item')
    const talk = {
      ...held(team, revisionId),
      decisions: [{ text: 'The strain is enough.', points: `item ${item.itemId}` }],
    }
    await expectDone(data.recordMeeting(team.quality, talk))
    // Minutes alone are no part of what is signed.
    expect((await data.getRevision(team.lead, revisionId)).signatures[0]?.voidedAt).toBeNull()

    const action = { ownerId: team.member.userId, due: 'before-series' as const, dueOn: '' }
    const decisions = [{ text: 'Order the clad early.', points: 'action', action }]
    await expectDone(data.recordMeeting(team.lead, { ...held(team, revisionId), decisions }))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after.actions.at(-1)).toMatchObject({ text: 'Order the clad early.', origin: { kind: 'meeting' } })
    expect(after.signatures[0]?.voidedAt).not.toBeNull()
    const { meetings } = await data.getMeetings(team.auditor, revisionId)
    expect(meetings.map(({ number, present, excused }) => [number, present.length, excused.length])).toEqual([
      [1, 2, 1],
      [2, 2, 1],
    ])
    expect(meetings[0]?.decisions[0]?.points).toEqual({ kind: 'item', id: item.itemId, label: item.question })
    expect(meetings[1]?.decisions[0]?.points.label).toBe(`action ${after.actions.at(-1)?.number}`)
  })

  it('refuses a day to come, somebody from outside, a pointer at nothing, and an action that nobody owns', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'early-review')
    const base = { ...held(team, revisionId), decisions: [] }
    const refused = async (change: object) => {
      const result = await data.recordMeeting(team.lead, { ...base, ...change })
      return result.ok || !('issues' in result.refusal) ? [] : result.refusal.issues.map(({ path }) => path.join('.'))
    }
    expect(await refused({ heldOn: '2999-01-01' })).toEqual(['heldOn'])
    expect(await refused({ people: [{ userId: team.outsider.userId, attendance: 'present' }] })).toEqual(['people'])
    expect(await refused({ decisions: [{ text: 'Go on', points: 'thread no-such' }] })).toEqual(['decisions.0.points'])
    expect(await refused({ decisions: [{ text: 'Go on', points: 'action' }] })).toEqual(['decisions.0.points'])
    const empty = recordMeetingInput.safeParse({ ...base, people: [], requestKey: 'k'.repeat(20) })
    expect(empty.error?.issues.map(({ path }) => path.join('.'))).toContain('people')
    expect((await data.getMeetings(team.lead, revisionId)).meetings).toEqual([])
  })

  it("a need is shown, and accepted by somebody other than the person who reported it; its files are the team's own", async () => {
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'early-review')
    const stated = {
      revisionId,
      text: 'Bears ten turns.',
      itemIds: ['bend-strain'],
      method: 'test' as const,
      plannedOn: '2026-01-10',
    }
    const { needId } = await expectDone(data.stateNeed(team.member, stated))
    const read = async () => {
      const need = (await data.getNeeds(team.quality, revisionId)).needs.find(({ id }) => id === needId)
      if (need === undefined) throw new Error('the need is gone')
      return need
    }
    expect((await read()).state).toBe('overdue')
    const early = await data.acceptNeed(team.lead, { needId, seenVersion: 1, reason: '' })
    expect(early).toMatchObject({ ok: false, refusal: { kind: 'clash' } })
    const file = await expectDone(
      data.attachFile(team.quality, {
        revisionId,
        target: { kind: 'need', needId },
        fileName: 'turns.txt',
        bytes: new TextEncoder().encode('Ten of ten without an open.\n'),
      }),
    )
    await expect(data.getAttachmentFile(team.fabricator, file.id)).rejects.toThrow(data.NotFoundError)
    await expectDone(data.reportNeed(team.quality, { needId, seenVersion: 1, result: 'Ten of ten.' }))
    const own = await data.acceptNeed(team.quality, { needId, seenVersion: 2, reason: '' })
    expect(own).toMatchObject({ ok: false, refusal: { kind: 'clash' } })
    expect((await read()).acceptedAt).toBeNull()
    await expectDone(data.acceptNeed(team.lead, { needId, seenVersion: 2, reason: 'read the record' }))
    expect(await read()).toMatchObject({
      state: 'accepted',
      files: [{ fileName: 'turns.txt' }],
      acceptNote: 'read the record',
    })
    const late = await data.dropNeed(team.lead, { needId, seenVersion: 3, reason: 'not wanted' })
    expect(late).toMatchObject({ ok: false, refusal: { kind: 'clash' } })
    await expect(data.getNeeds(team.fabricator, revisionId)).rejects.toThrow(data.NotAllowedError)

    // The next revision has the need, and nothing that was shown on this one.
    const copy = {
      projectId: team.projectId,
      label: `${revisionId.slice(0, 4)}N`,
      origin: { kind: 'copy' as const, revisionId },
    }
    const { revisionId: nextId } = await expectDone(data.createRevision(team.member, copy))
    expect((await data.getNeeds(team.lead, nextId)).needs).toMatchObject([
      { text: 'Bears ten turns.', itemIds: ['bend-strain'], result: '', acceptedAt: null, files: [] },
    ])
  })

  it('words that differ from numbers block the signature until somebody else lets them stand', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'awaiting-signature')
    const before = await data.getRevision(team.member, revisionId)
    const item = before.items.find(
      ({ mayAnswer, legalStates, result }) => mayAnswer && legalStates.includes('concern') && result.basis !== 'stated',
    )
    if (item === undefined) throw new Error('nothing can be answered')
    await expectDone(
      data.answerItem(team.member, {
        revisionId,
        itemId: item.itemId,
        seenVersion: item.answerVersion,
        state: item.state === 'concern' ? 'concern' : 'meets',
        reason: 'As note 4 of the drawing says.',
      }),
    )
    const blocked = await data.getRevision(team.lead, revisionId)
    expect(blocked.signingBlockers.map(({ code }) => code)).toContain('words-differ')
    const [difference] = blocked.signOff.differences
    if (difference === undefined) throw new Error('nothing differs')
    const stand = { revisionId, seenVersion: blocked.version, key: difference.key, reason: 'the sheet is frozen' }
    const { acknowledgementId } = await expectDone(data.acknowledgeDifference(team.secondLead, stand))
    const free = await data.getRevision(team.lead, revisionId)
    expect(free.signingBlockers).toEqual([])
    const signatureId = await sign(team.lead, revisionId)
    await expectDone(data.takeUpDifference(team.secondLead, { acknowledgementId, reason: 'it is not' }))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after.signatures.find(({ id }) => id === signatureId)?.voidedAt).not.toBeNull()
    expect(after.signingBlockers.map(({ code }) => code)).toContain('words-differ')
  })
})
