import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { ACTIONS, ADMIN_READS, TRAIL_WORDS } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('what an admin outside a project reads', (_current, kind) => {
  let team: Team
  let mailId: string

  beforeAll(async () => {
    team = await makeTeam()
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    await expectDone(
      data.openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'revision', id: revisionId },
        kind: 'engineering-query',
        title: 'Foil of L2',
        text: 'Is it rolled-annealed?',
      }),
    )
    mailId = (await db().mailMessage.findFirstOrThrow({ where: { bodyText: { contains: 'rolled-annealed' } } })).id
  })

  const listRecords = (action: string) => db().trailRecord.findMany({ where: { action }, orderBy: { sequence: 'asc' } })

  it('is recorded each time the text of a message is opened, with whose it is', async () => {
    expect((await data.getMail(team.admin, mailId)).text).toContain('rolled-annealed')
    await data.getMail(team.admin, mailId)
    const records = await listRecords('mail-opened')
    expect(records.map(({ actorId, subjectId }) => [actorId, subjectId])).toEqual([
      [team.admin.userId, mailId],
      [team.admin.userId, mailId],
    ])
    expect(JSON.parse(records[0]?.detailsJson ?? '')).toMatchObject({ subject: expect.stringContaining('Foil of L2') })
  })

  it('is not opened, and not recorded, by a list of messages or by somebody who is no admin', async () => {
    const before = await db().trailRecord.count()
    expect(JSON.stringify(await data.listMail(team.admin))).not.toContain('rolled-annealed')
    await expect(data.getMail(team.lead, mailId)).rejects.toThrow(data.NotAllowedError)
    await expect(data.exportTrail(team.lead)).rejects.toThrow(data.NotAllowedError)
    await expect(data.getMail(team.admin, 'no such message')).rejects.toThrow(data.NotFoundError)
    expect(await db().trailRecord.count()).toBe(before)
  })

  it('is recorded when the trail is exported: the file itself says so at its end', async () => {
    const file = await data.exportTrail(team.admin)
    const { records } = JSON.parse(new TextDecoder().decode(file.bytes))
    expect(records.at(-1)).toMatchObject({ action: 'trail-exported', actor: { userId: team.admin.userId } })
    expect((await listRecords('trail-exported')).length).toBe(1)
  })

  it.runIf(kind === 'sqlite')('is recorded when a backup is made', async () => {
    await expectDone(data.createBackup(team.admin))
    expect((await listRecords('backup-made')).length).toBe(1)
  })

  it('nothing of an id that no database can compare reaches anybody', async () => {
    const reads: (() => Promise<unknown>)[] = [
      () => data.getProject(team.lead, 'a\u0000b'),
      () => data.getRevision(team.lead, '\u0000'),
      () => data.getArtworkFile(team.lead, '\u0000'),
      () => data.exportDesign(team.lead, 'x'.repeat(100_000)),
      () => data.getMail(team.admin, '\u0000'),
      () => data.getSheet(team.fabricator, '\ud800', 'matrix'),
    ]
    for (const read of reads) await expect(read()).rejects.toThrow(data.NotFoundError)
  })
})

it('every reading that opens content of a design is recorded under words that the trail knows', () => {
  const recorded = ADMIN_READS.flatMap(({ recordedAs }) => recordedAs ?? [])
  expect(recorded).toEqual(['mail-opened', 'trail-exported', 'backup-made'])
  expect(recorded.filter((action) => !(action in TRAIL_WORDS))).toEqual([])
  expect(ADMIN_READS.filter(({ action }) => !ACTIONS.includes(action))).toEqual([])
})
