import { inspect } from 'node:util'
import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { parseTrailFile } from '@/lib/package'
import { TRAIL_WORDS } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { makeReleasedRevision, makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** Prisma wraps what the database says and, on SQLite, calls it a foreign key; the sentence is further in. */
async function expectRefusedByDatabase(change: Promise<unknown>): Promise<void> {
  const error = await change.then(
    () => null,
    (reason: unknown) => reason,
  )
  expect(inspect(error, { depth: 10 })).toContain('the trail is append-only')
}

describeOnBothDatabases('the trail', (_current, kind) => {
  it('is refused any change by the database itself', async () => {
    const team = await makeTeam()
    await makeRevision(team)
    const [first] = await db().trailRecord.findMany({ orderBy: { sequence: 'asc' }, take: 1 })
    if (first === undefined) throw new Error('nothing was recorded')
    const { sequence } = first
    await expectRefusedByDatabase(db().trailRecord.update({ where: { sequence }, data: { actorName: 'Nobody' } }))
    await expectRefusedByDatabase(db().trailRecord.delete({ where: { sequence } }))
    await expectRefusedByDatabase(db().trailRecord.deleteMany({}))
    const bySql =
      kind === 'sqlite'
        ? 'INSERT OR REPLACE INTO "TrailRecord" SELECT * FROM "TrailRecord" WHERE "sequence" = 1'
        : 'TRUNCATE "TrailRecord"'
    await expectRefusedByDatabase(db().$executeRawUnsafe(bySql))
    expect(await db().trailRecord.findFirst({ where: { sequence } })).toEqual(first)
  })

  it('is exported as a file that the checking command reads, and holds as a whole', async () => {
    const team = await makeTeam()
    await makeRevision(team)
    const { bytes } = await data.exportTrail(team.admin)
    const parsed = parseTrailFile(new TextDecoder().decode(bytes))
    expect(parsed.ok && parsed.value.records).toEqual((await data.readWholeTrail()).records)
    expect(await data.checkWholeTrail(team.admin)).toEqual({
      recordCount: await db().trailRecord.count(),
      firstBad: null,
      checkpointCount: expect.any(Number),
      vouchedUpTo: expect.any(Number),
      state: expect.any(Object),
    })
  })

  it('names the first record that was written by force and does not fit', async () => {
    const team = await makeTeam()
    await makeRevision(team)
    const last = await db().trailRecord.findFirstOrThrow({ orderBy: { sequence: 'desc' } })
    const forged = { ...last, sequence: last.sequence + 1, hash: 'f'.repeat(64), previousHash: last.hash }
    await db().trailRecord.create({ data: forged })
    const { firstBad } = await data.checkWholeTrail(team.admin)
    expect(firstBad).toMatchObject({ sequence: forged.sequence, reason: expect.stringContaining('was changed') })
  })
})

describeOnBothDatabases('each record of a whole review', () => {
  it('reads as a sentence of its own', async () => {
    const team = await makeTeam()
    const revisionId = await makeReleasedRevision(team)
    const withdrawal = data.withdrawRevision(team.lead, {
      revisionId,
      seenVersion: (await data.getRevision(team.lead, revisionId)).version,
      reason: 'the connector is no longer made',
      password: PASSWORD,
    })
    await expectDone(withdrawal)
    const actions = new Set((await data.readWholeTrail()).records.map(({ action }) => action))
    expect([...actions].filter((action) => !(action in TRAIL_WORDS))).toEqual([])
    const { entries } = await data.listRevisionTrail(team.observer, revisionId)
    expect(entries[0]?.sentence).toBe('moved the revision from released to withdrawn: the connector is no longer made')
    expect((await data.getPackageFile(team.observer, revisionId)).bytes.length).toBeGreaterThan(1000)
    await expect(data.getPackageFile(team.fabricator, revisionId)).rejects.toThrow(data.NotFoundError)
  }, 400_000)
})
