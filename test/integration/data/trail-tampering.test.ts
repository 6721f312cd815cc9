import { readdirSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import type { DatabaseKind } from '@/lib/config'
import * as data from '@/lib/data'
import { takeAllAsFound } from '@/lib/data/acts/workspace/adopt-state'
import { inWriteTransaction } from '@/lib/data/consequences/write'
import { db } from '@/lib/data/store/client'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { runTrailCheck } from './commands'

/** What somebody does who has the database to themselves: the guards first. */
async function liftGuards(kind: DatabaseKind): Promise<void> {
  const tables = ['TrailRecord', 'TrailCheckpoint']
  for (const table of tables) {
    const statements =
      kind === 'sqlite'
        ? ['update', 'delete', 'replace'].map((verb) => `DROP TRIGGER "${table}_refuse_${verb}"`)
        : [`ALTER TABLE "${table}" DISABLE TRIGGER ALL`]
    for (const statement of statements) await db().$executeRawUnsafe(statement)
  }
}

const firstBad = async (team: Team) => (await data.checkWholeTrail(team.admin)).firstBad

/** Another value for each column, as SQL over the old one. */
const CHANGES: Readonly<Record<string, string>> = {
  hash: `'${'d'.repeat(64)}'`,
  at: `'2027-01-01T00:00:00.000Z'`,
  actorId: `'somebody-else'`,
  actorName: `"actorName" || '.'`,
  action: `"action" || '-not'`,
  subjectKind: `"subjectKind" || 's'`,
  subjectId: `"subjectId" || '0'`,
  projectId: `'another-project'`,
  revisionId: `'another-revision'`,
  companyId: `'another-company'`,
  detailsJson: `'{"nothing":true}'`,
  previousHash: `'${'e'.repeat(64)}'`,
}

describeOnBothDatabases(
  'a trail that somebody tampers with',
  (_current, kind) => {
    it('is caught and named, whichever column of whichever record was changed', async () => {
      const team = await makeTeam()
      await makeRevision(team)
      await makeRevision(team)
      await data.changePassword(team.lead, { currentPassword: 'not it', newPassword: 'godwit-curlew-dunlin' })
      await liftGuards(kind)
      const records = await db().trailRecord.findMany({ orderBy: { sequence: 'asc' } })
      expect(records.length).toBeGreaterThan(1)
      expect(await firstBad(team)).toBeNull()
      const columns = Object.keys(records[0] ?? {}).filter((name) => name !== 'sequence')
      expect(columns.sort()).toEqual(Object.keys(CHANGES).sort())
      for (const record of records) {
        const { sequence } = record
        for (const [column, other] of Object.entries(CHANGES)) {
          await db().$executeRawUnsafe(`UPDATE "TrailRecord" SET "${column}" = ${other} WHERE "sequence" = ${sequence}`)
          expect(await firstBad(team), `${column} of record ${sequence}`).toMatchObject({ sequence })
          await db().trailRecord.update({ where: { sequence }, data: record })
        }
        // The same content written otherwise is not what was written.
        const spaced = `${record.detailsJson} `
        await db().trailRecord.update({ where: { sequence }, data: { detailsJson: spaced } })
        expect(await firstBad(team), `spaces in record ${sequence}`).toMatchObject({ sequence })
        await db().trailRecord.update({ where: { sequence }, data: record })
        await db().$executeRawUnsafe(`UPDATE "TrailRecord" SET "sequence" = 5000 WHERE "sequence" = ${sequence}`)
        expect(await firstBad(team), `sequence of record ${sequence}`).toMatchObject({ sequence })
        await db().$executeRawUnsafe(`UPDATE "TrailRecord" SET "sequence" = ${sequence} WHERE "sequence" = 5000`)
        await db().trailRecord.delete({ where: { sequence } })
        // The last one leaves no gap in the chain: no checkpoint came after it yet.
        if (sequence < records.length) expect(await firstBad(team), `without ${sequence}`).toMatchObject({ sequence })
        await db().trailRecord.create({ data: record })
      }
      expect(await firstBad(team)).toBeNull()
    }, 240_000)
  },
  { fresh: 'test' },
)

describeOnBothDatabases(
  'checkpoints of the trail',
  (current, kind) => {
    it('are made at a signature, kept beside the database, and show when the end was cut off', async () => {
      const team = await makeTeam()
      await inWriteTransaction(takeAllAsFound)
      const revisionId = await makeRevisionAt(team, 'awaiting-signature')
      await sign(team.lead, revisionId)
      const { recordCount, checkpointCount, vouchedUpTo } = await data.checkWholeTrail(team.admin)
      expect(checkpointCount).toBeGreaterThan(1)
      expect(vouchedUpTo).toBe(recordCount)
      const { checkpoints, others } = await data.readWholeTrail()
      expect(others).toEqual(checkpoints)
      const folder = path.join(process.env.BENDWORTHY_DATA_FOLDER ?? '', 'checkpoints')
      expect(readdirSync(folder).length).toBeGreaterThan(0)

      const whole = await runTrailCheck(current())
      expect(whole.output).toContain(`trail: ${recordCount} records fit`)
      expect(whole.output).toContain(`the last of record ${vouchedUpTo}`)
      expect(whole.status).toBe(0)

      await liftGuards(kind)
      const last = await db().trailRecord.findFirstOrThrow({ orderBy: { sequence: 'desc' } })
      await db().trailRecord.deleteMany({ where: { sequence: { gt: last.sequence - 3 } } })
      const cut = { sequence: last.sequence - 2, reason: expect.stringContaining('were cut off') }
      expect(await firstBad(team)).toMatchObject(cut)
      // Also when the checkpoints in the database went with it.
      await db().trailCheckpoint.deleteMany({ where: { sequence: { gt: last.sequence - 3 } } })
      expect(await firstBad(team)).toMatchObject(cut)
      await db().trailCheckpoint.deleteMany({})
      expect(await firstBad(team)).toMatchObject(cut)
      const checked = await runTrailCheck(current())
      expect(checked.output).toContain(`does not match at record ${cut.sequence}`)
      expect(checked.status).toBe(1)
    }, 400_000)

    it('let what came since the last one be checked alone, and what it vouches for', async () => {
      const { team, revisionId } = await current().startFrom('awaiting-signature')
      await inWriteTransaction(takeAllAsFound)
      await sign(team.lead, revisionId)
      const { vouchedUpTo } = await data.checkWholeTrail(team.admin)
      await makeRevision(team)
      const check = (isRecent: boolean) => data.checkStoredTrail({ isRecent })
      const newest = await db().trailRecord.findFirstOrThrow({ orderBy: { sequence: 'desc' } })
      const recent = await check(true)
      expect(recent).toMatchObject({ check: { ok: true }, recordCount: newest.sequence - vouchedUpTo, state: null })
      expect(recent.recordCount).toBeGreaterThan(0)
      expect(recent.last?.sequence).toBe(newest.sequence)
      const command = await runTrailCheck(current(), '--recent')
      expect(command.output).toContain(`trail: ${recent.recordCount} records fit, from the last checkpoint on`)

      await liftGuards(kind)
      const forge = (sequence: number, name: string) =>
        db().trailRecord.update({ where: { sequence }, data: { actorName: name } })
      for (const sequence of [newest.sequence, vouchedUpTo]) {
        const { actorName: own } = await db().trailRecord.findUniqueOrThrow({ where: { sequence } })
        await forge(sequence, 'Somebody Else')
        expect((await check(true)).check).toMatchObject({ ok: false, fault: { sequence, code: 'hash' } })
        await forge(sequence, own)
      }
      // What came before is for the whole check, and the short one does not speak of it.
      await forge(2, 'Somebody Else')
      expect((await check(true)).check.ok).toBe(true)
      expect((await check(false)).check).toMatchObject({ ok: false, fault: { sequence: 2, code: 'hash' } })
    }, 400_000)

    it('are refused any change by the database itself', async () => {
      await makeRevision(await makeTeam())
      const change = { where: { sequence: 1 }, data: { hash: 'f'.repeat(64) } }
      await expect(db().trailCheckpoint.update(change)).rejects.toThrow()
      await expect(db().trailCheckpoint.deleteMany({})).rejects.toThrow()
      expect(await db().trailCheckpoint.count()).toBeGreaterThan(0)
    })

    it('of a request that was rolled back are not kept', async () => {
      const { team, revisionId } = await current().startFrom('awaiting-signature')
      const before = (await data.readWholeTrail()).others.length
      const view = await data.getRevision(team.lead, revisionId)
      const refused = await data.signRevision(team.lead, {
        revisionId,
        seenVersion: view.version,
        contentHash: 'f'.repeat(64),
        capacity: 'lead engineer',
        statement: view.statement,
        password: 'plover-sandpiper-42',
      })
      expect(refused.ok).toBe(false)
      expect((await data.readWholeTrail()).others).toHaveLength(before)
    }, 400_000)
  },
  { fresh: 'test' },
)
