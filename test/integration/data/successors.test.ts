import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** Rows as an earlier version stored them, under ids that are gone. */
describeOnBothDatabases('what was stored under the id of an item that is gone', (current) => {
  const find = async (actor: data.Actor, revisionId: string, id: string) => {
    const item = (await data.getRevision(actor, revisionId)).items.find(({ itemId }) => itemId === id)
    if (item === undefined) throw new Error(`${id} is in the catalogue`)
    return item
  }

  it('passes to its successor to be confirmed, never as met, and a new answer goes before it', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const given = { revisionId, itemId: 'transition-strip', seenVersion: 0 }
    await expectDone(data.answerItem(team.member, { ...given, state: 'concern', reason: 'the via is close' }))
    await db().answer.updateMany({
      where: { revisionId, itemId: 'transition-strip' },
      data: { itemId: 'hole-to-transition', state: 'not-applicable' },
    })

    const passed = await find(team.member, revisionId, 'transition-strip')
    expect(passed).toMatchObject({ state: 'meets', answerVersion: 0, result: { verdict: 'meets' } })
    expect(passed.setAside).toBe(
      'to confirm: the answer "not applicable" was given to "Are holes kept away from the rigid-to-flex transition?", which this item replaces',
    )
    expect((await db().answer.findMany({ where: { revisionId } })).map(({ itemId }) => itemId)).toContain(
      'hole-to-transition',
    )

    await expectDone(data.answerItem(team.member, { ...given, state: 'concern', reason: 'the via is close' }))
    expect(await find(team.member, revisionId, 'transition-strip')).toMatchObject({
      state: 'concern',
      answerVersion: 1,
      setAside: '',
    })
  })

  it('a concern stays a concern, and a copy of the revision still asks for confirmation', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const given = { revisionId, itemId: 'straight-film', seenVersion: 0 }
    await expectDone(data.answerItem(team.member, { ...given, state: 'concern', reason: 'the edge is sharp' }))
    const move = (state: string) =>
      db().answer.updateMany({
        where: { revisionId, itemId: { in: ['straight-film', 'bend-to-rigid'] } },
        data: { itemId: 'bend-to-rigid', state },
      })
    await move('concern')
    expect(await find(team.member, revisionId, 'straight-film')).toMatchObject({ state: 'concern' })

    await move('not-applicable')
    const { project } = await data.getRevision(team.member, revisionId)
    const origin = { kind: 'copy' as const, revisionId }
    const copy = await expectDone(data.createRevision(team.member, { projectId: project.id, label: 'Copy', origin }))
    expect((await find(team.member, copy.revisionId, 'straight-film')).setAside).toMatch(/^to confirm: /)
  })

  it('a waiver does not cover the successor, and can be replaced', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const given = { revisionId, itemId: 'straight-film', seenVersion: 0 }
    await expectDone(data.answerItem(team.member, { ...given, state: 'concern', reason: 'the edge is sharp' }))
    const proposal = { revisionId, itemId: 'straight-film', reason: 'tried on ten parts' }
    const { waiverId } = await expectDone(data.proposeWaiver(team.member, proposal))
    await db().waiver.update({
      where: { id: waiverId },
      data: { itemId: 'stiffener-to-bend', basisHash: '0'.repeat(64), state: 'approved' },
    })
    const item = await find(team.member, revisionId, 'straight-film')
    expect(item).toMatchObject({ state: 'concern', waivers: [{ id: waiverId, covers: false }] })
    await expectDone(data.proposeWaiver(team.member, proposal))
    expect(await expectRefused(data.proposeWaiver(team.member, proposal))).toMatchObject({ kind: 'clash' })
  })

  it('the strain of bends that all move passes to their life, and comes back where one stands still', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const given = { revisionId, itemId: 'bend-strain', seenVersion: 0 }
    await expectDone(data.answerItem(team.member, { ...given, state: 'concern', reason: 'the foil is plated' }))
    const setUse = async (use: 'dynamic' | 'fold-once') => {
      const { design, designVersion } = await data.getRevision(team.member, revisionId)
      const bends = design.bends.map((bend) => ({ ...bend, use, requiredCycles: use === 'dynamic' ? 10 : null }))
      await expectDone(
        data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: { ...design, bends } }),
      )
    }
    await setUse('dynamic')
    expect(await find(team.member, revisionId, 'fatigue-life')).toMatchObject({ state: 'concern', answerVersion: 0 })
    expect((await find(team.member, revisionId, 'bend-strain')).result?.verdict).toBe('not-applicable')
    await setUse('fold-once')
    expect(await find(team.member, revisionId, 'bend-strain')).toMatchObject({ state: 'concern', answerVersion: 1 })
  })
})
