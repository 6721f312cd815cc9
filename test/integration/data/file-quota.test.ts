import { randomBytes } from 'node:crypto'
import { beforeEach, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings, which comes later.
process.env.BENDWORTHY_PROJECT_FILES_MIB = '2'
process.env.BENDWORTHY_COMPANY_FILES_MIB = '1'

const KIB = 1024
const makeText = (kib: number) => new TextEncoder().encode(randomBytes((kib * KIB) / 2).toString('hex'))

describeOnBothDatabases('what a project and a company may keep', () => {
  let team: Team
  let revisionId: string
  beforeEach(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  })
  let count = 0
  const add = (actor: data.Actor, kib: number) => {
    count += 1
    return data.addArtwork(actor, { revisionId, fileName: `${count}.gbr`, bytes: makeText(kib) })
  }
  const attach = async (actor: data.Actor, kib: number) => {
    const thread = await expectDone(
      data.openThread(actor, {
        revisionId,
        kind: 'note',
        anchor: { kind: 'revision', id: revisionId },
        title: 'Foil',
        text: 'See the file.',
      }),
    )
    const { threads } = await data.getRevision(actor, revisionId)
    const commentId = threads.find(({ id }) => id === thread.threadId)?.comments[0]?.id ?? ''
    const target = { kind: 'comment' as const, commentId }
    return data.attachFile(actor, { revisionId, target, fileName: 'a.txt', bytes: makeText(kib) })
  }

  it('a company is stopped at its limit, and says whose it is; the same bytes again cost nothing', async () => {
    const bytes = makeText(400)
    const send = (fileName: string) => data.addArtwork(team.member, { revisionId, fileName, bytes })
    await expectDone(send('first.gbr'))
    await expectDone(send('again.gbr'))
    const refusal = await expectRefused(add(team.lead, 700))
    expect(refusal).toMatchObject({
      kind: 'invalid',
      issues: [{ code: 'no-room', path: ['file'], message: expect.stringMatching(/Quillmoor Instruments.*1\.0 MiB/) }],
    })
    const { shares } = await data.getFileRoom(team.lead, team.projectId)
    expect(shares.map(({ usedBytes, mostBytes }) => [usedBytes, mostBytes])).toEqual([
      [400 * KIB, 2 * KIB * KIB],
      [400 * KIB, KIB * KIB],
    ])
  })

  it('a project is stopped at its limit, no matter who sends; a fabricator sees its own part of it alone', async () => {
    await expectDone(add(team.member, 900))
    await expectDone(attach(team.fabricator, 700))
    expect(await expectRefused(attach(team.rivalFabricator, 600))).toMatchObject({
      issues: [{ code: 'no-room', message: expect.stringContaining('the project') }],
    })
    await expectDone(attach(team.rivalFabricator, 200))
    const { shares } = await data.getFileRoom(team.rivalFabricator, team.projectId)
    expect(shares.map(({ usedBytes }) => usedBytes)).toEqual([200 * KIB])
    await expect(data.getFileRoom(team.outsider, team.projectId)).rejects.toThrow(data.NotFoundError)
  })

  it('two files that arrive together cannot both take the last room', async () => {
    const outcomes = await Promise.all([add(team.member, 600), add(team.lead, 600), add(team.secondLead, 600)])
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
    const { shares } = await data.getFileRoom(team.lead, team.projectId)
    expect(shares[1]?.usedBytes).toBe(600 * KIB)
  })
})
