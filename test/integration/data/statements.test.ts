import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { describeOnBothDatabases } from '@/test/setup/databases'

const ITEM = 'conductor-corners'

describeOnBothDatabases('a recorded yes', (current) => {
  const find = async (actor: data.Actor, revisionId: string) => {
    const item = (await data.getRevision(actor, revisionId)).items.find(({ itemId }) => itemId === ITEM)
    if (item === undefined) throw new Error('the item is in the catalogue')
    return item
  }

  it('meets by nobody’s word until somebody says where they looked, and no longer than the file is there', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const before = await find(team.member, revisionId)
    expect(before).toMatchObject({ state: 'open', result: { basis: 'stated', verdict: 'needs-judgment' } })

    const state = 'meets' as const
    const input = { revisionId, itemId: ITEM, seenVersion: 0, state, reason: 'arcs throughout' }
    const say = (lookedAt?: { sheet: string; layer: string; sha256: string }) =>
      data.answerItem(team.member, { ...input, ...(lookedAt === undefined ? {} : { lookedAt }) })
    const target = { kind: 'item' as const, itemId: ITEM }
    const bytes = new TextEncoder().encode('plot of L1')
    const file = await expectDone(data.attachFile(team.member, { revisionId, target, fileName: 'l1.txt', bytes }))
    const { sha256 } = file
    const refusedFor = async (path: string, ...look: Parameters<typeof say>) =>
      expect(await expectRefused(say(...look))).toMatchObject({ issues: [{ path: [path] }] })
    await refusedFor('lookedAt.sheet')
    await refusedFor('lookedAt.sheet', { sheet: ' ', layer: 'L1', sha256 })
    await refusedFor('lookedAt.layer', { sheet: 'Sheet 1', layer: '', sha256 })
    await refusedFor('lookedAt.sha256', { sheet: 'Sheet 1', layer: 'L1', sha256: '' })
    await refusedFor('lookedAt.sha256', { sheet: 'Sheet 1', layer: 'L1', sha256: 'a'.repeat(64) })
    expect((await find(team.member, revisionId)).state).toBe('open')

    await expectDone(say({ sheet: 'Sheet 1', layer: 'L1', sha256 }))
    expect(await find(team.member, revisionId)).toMatchObject({
      state: 'meets',
      answer: { lookedAt: { sheet: 'Sheet 1', layer: 'L1', fileName: 'l1.txt', sha256 } },
    })

    const { entries: trail } = await data.listRevisionTrail(team.member, revisionId)
    const told = trail.find(({ action }) => action === 'item-answered')
    expect(told?.details).toContainEqual({ label: 'looked at, sheet', text: 'Sheet 1' })
    expect(told?.details).toContainEqual({ label: 'looked at, file', text: 'l1.txt' })
    expect(told?.details.map(({ text }) => text)).toContain(sha256)

    // An answer that is no statement, after it: where the first one looked stays in the history.
    const second = { ...input, seenVersion: 1, state: 'concern' as const, reason: 'a corner after all' }
    await expectDone(data.answerItem(team.member, second))
    expect(await find(team.member, revisionId)).toMatchObject({
      answer: { state: 'concern', lookedAt: null },
      history: [
        { version: 1, lookedAt: { sheet: 'Sheet 1', layer: 'L1', fileName: 'l1.txt', sha256 } },
        { version: 2, lookedAt: null },
      ],
    })
    const again = { ...input, seenVersion: 2, lookedAt: { sheet: 'Sheet 1', layer: 'L1', sha256 } }
    await expectDone(data.answerItem(team.member, again))

    await expectDone(data.removeAttachment(team.member, { fileId: file.id }))
    expect(await find(team.member, revisionId)).toMatchObject({
      state: 'open',
      setAside: 'the answer "meets" was given on l1.txt, which is no longer there',
    })
  })

  it('asks nothing of who says that it is not so', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const input = { revisionId, itemId: ITEM, seenVersion: 0, state: 'concern' as const, reason: 'a corner on L1' }
    await expectDone(data.answerItem(team.member, input))
    expect(await find(team.member, revisionId)).toMatchObject({ state: 'concern' })
  })
})
