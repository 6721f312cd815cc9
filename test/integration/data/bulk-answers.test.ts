import { beforeAll, expect, it } from 'vitest'
import { listBulkStates } from '@/app/_components/review/bulk-states'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { answerItemsInput } from '@/lib/inputs'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('one answer to several items', () => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team, 'skua-rev-a')
  }, 120_000)

  const listItems = async () => (await data.getRevision(team.member, revisionId)).items.filter((item) => item.mayAnswer)
  const ask = (
    items: readonly data.ItemView[],
    state: 'meets' | 'concern' | 'not-applicable',
    reason = 'seen together',
  ) =>
    data.answerItems(team.member, {
      revisionId,
      items: items.map(({ itemId, answerVersion }) => ({ itemId, seenVersion: answerVersion })),
      state,
      reason,
    })
  const countAnswers = () => db().answer.count({ where: { revisionId } })

  it('is recorded for each, with a record of its own, as one change of the revision', async () => {
    const chosen = (await listItems()).filter((item) => listBulkStates([item]).states.includes('concern')).slice(0, 5)
    const { version } = await data.getRevision(team.member, revisionId)
    const before = await db().trailRecord.count({ where: { revisionId, action: 'item-answered' } })
    expect(await expectDone(ask(chosen, 'concern'))).toEqual({ answered: 5, version: version + 1 })
    const ids = chosen.map(({ itemId }) => itemId)
    const after = (await listItems()).filter(({ itemId }) => ids.includes(itemId))
    expect(after.map(({ state, answer }) => [state, answer?.reason, answer?.by.name])).toEqual(
      ids.map(() => ['concern', 'seen together', team.member.name]),
    )
    expect(await db().trailRecord.count({ where: { revisionId, action: 'item-answered' } })).toBe(before + 5)
    const edits = await db().edit.findMany({ where: { revisionId, part: 'answer' } })
    expect(edits.map(({ summaryJson }) => JSON.parse(summaryJson).length)).toEqual([5])
  })

  it('is given to none where one of them cannot be answered so, and names that one', async () => {
    const items = await listItems()
    const failing = items.find(({ result }) => result.verdict === 'fails')
    const meeting = items.find((item) => item.state === 'open' && listBulkStates([item]).states.includes('meets'))
    if (failing === undefined || meeting === undefined) throw new Error('the demo has both')
    const before = await countAnswers()
    const refusal = await expectRefused(ask([meeting, failing], 'meets'))
    expect(refusal).toMatchObject({
      kind: 'invalid',
      message: '1 of 2 items cannot be answered this way: none was answered.',
      issues: [{ code: 'overrules-calculation', path: ['items', 1, 'state'] }],
    })
    expect(listBulkStates([meeting, failing])).toMatchObject({ withoutMeets: 1 })
    expect(listBulkStates([meeting, failing]).states).not.toContain('meets')
    expect(await countAnswers()).toBe(before)
    await expectDone(ask([meeting], 'meets'))
    expect(await countAnswers()).toBe(before + 1)
  })

  it('cannot state what somebody saw without saying where: such an item is answered on its own', async () => {
    const seen = (await listItems()).filter(
      (item) => item.legalStates.includes('meets') && !listBulkStates([item]).states.includes('meets'),
    )
    expect(seen.length).toBeGreaterThan(0)
    const refusal = await expectRefused(ask(seen.slice(0, 3), 'meets'))
    expect(refusal).toMatchObject({ kind: 'invalid', issues: [{ code: 'sheet-missing' }, {}, {}] })
  })

  it('agrees with what a single answer allows, for every item and state', async () => {
    for (const item of (await listItems()).filter(({ state }) => state === 'open')) {
      for (const state of ['meets', 'concern', 'not-applicable'] as const) {
        if (listBulkStates([item]).states.includes(state)) continue
        expect(await expectRefused(ask([item], state)), `${item.itemId} ${state}`).toMatchObject({ kind: 'invalid' })
      }
    }
  }, 60_000)

  it('names no item twice, and at least one', () => {
    const read = (itemIds: readonly string[]) =>
      answerItemsInput.safeParse({
        revisionId,
        items: itemIds.map((itemId) => ({ itemId, seenVersion: 0 })),
        state: 'concern',
        reason: '',
        requestKey: 'a-key-of-one-request',
      })
    expect(read(['bend-strain', 'bend-strain']).error?.issues).toMatchObject([
      { path: ['items'], message: 'names an item twice' },
    ])
    expect(read([]).error?.issues).toMatchObject([{ path: ['items'], message: 'choose at least one item' }])
    expect(read(['bend-strain', 'opening-to-bend']).error).toBeUndefined()
  })

  it('is refused where somebody answered one of them meanwhile, or the person may not answer one', async () => {
    const items = await listItems()
    const [first, second] = items.filter(({ state }) => state === 'open')
    if (first === undefined || second === undefined) throw new Error('two are open')
    await expectDone(ask([first], 'concern'))
    const before = await countAnswers()
    expect(await expectRefused(ask([second, first], 'concern'))).toMatchObject({ kind: 'stale', currentVersion: 1 })
    const all = (await data.getRevision(team.member, revisionId)).items
    const foreign = all.find(({ mayAnswer }) => !mayAnswer)
    if (foreign === undefined) throw new Error('some are for fabricators')
    await expect(ask([second, foreign], 'concern')).rejects.toThrow(data.NotAllowedError)
    expect(await countAnswers()).toBe(before)
  })
})
