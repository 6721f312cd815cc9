import { inspect } from 'node:util'
import { expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { parseTrailFile } from '@/lib/package'
import { TRAIL_WORDS } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
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

describeOnBothDatabases('each record of a whole review', (current) => {
  it('reads as a sentence of its own', async () => {
    const { team, revisionId } = await current().startFrom('released')
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

describeOnBothDatabases('a clock that was set back', () => {
  it('is recorded once, and each record of it says what the clock said', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    const restore = replaceClock(() => new Date(Date.now() - 2 * 86_400_000))
    try {
      await share(team, revisionId)
    } finally {
      restore()
    }
    await data.exportTrail(team.admin)
    const { records } = await data.readWholeTrail()
    const noted = records.filter(({ action }) => action === 'clock-set-back')
    expect(noted).toHaveLength(1)
    expect(noted[0]?.actor).toEqual({ userId: null, name: 'Bendworthy' })
    const shared = records.filter(
      (record) => record.action === 'revision-shared' && record.subject.revisionId === revisionId,
    )
    expect(shared.map(({ details }) => typeof details.clock)).toEqual(['string', 'string'])
    expect(records.at(-1)?.details.clock).toBeUndefined()
    expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
  })
})

describeOnBothDatabases('the trail of a revision as people read it', (current) => {
  it('shows what was before and after, is filtered, leads to the thing, and leaves as CSV and PDF', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const item = (await data.getRevision(team.member, revisionId)).items.find(
      ({ mayAnswer, legalStates }) => mayAnswer && legalStates.includes('concern'),
    )
    if (item === undefined) throw new Error('nothing to answer')
    const input = { revisionId, itemId: item.itemId, state: 'concern' } as const
    await expectDone(data.answerItem(team.member, { ...input, reason: 'first thoughts', seenVersion: 0 }))
    await expectDone(data.answerItem(team.lead, { ...input, reason: 'second thoughts', seenVersion: 1 }))

    const whole = await data.listRevisionTrail(team.auditor, revisionId)
    const [entry] = whole.entries
    expect(entry).toMatchObject({ thing: 'checklist', target: { tab: 'checklist', id: item.itemId } })
    expect(entry?.details).toEqual(
      expect.arrayContaining([
        { label: 'reason', text: 'second thoughts' },
        { label: 'before, reason', text: 'first thoughts' },
      ]),
    )
    const filter = { person: team.member.name, act: 'item-answered', thing: '' }
    const filtered = await data.listRevisionTrail(team.auditor, revisionId, filter)
    expect(filtered.count).toBe(whole.count)
    expect(filtered.entries.map(({ actorName }) => actorName)).toEqual([team.member.name])
    expect(whole.choices.people).toEqual(expect.arrayContaining([team.lead.name, team.member.name]))

    const csv = new TextDecoder().decode((await data.getTrailFile(team.auditor, revisionId, 'csv')).bytes)
    expect(csv.split('\r\n').length).toBeGreaterThan(whole.count)
    expect(csv).toContain('before, reason: first thoughts')
    const pdf = await data.getTrailFile(team.auditor, revisionId, 'pdf')
    expect(new TextDecoder('latin1').decode(pdf.bytes.slice(0, 5))).toBe('%PDF-')
    await expect(data.getTrailFile(team.auditor, revisionId, 'exe')).rejects.toThrow(data.NotFoundError)
    await expect(data.getTrailFile(team.fabricator, revisionId, 'csv')).rejects.toThrow(data.NotAllowedError)
  })
})
