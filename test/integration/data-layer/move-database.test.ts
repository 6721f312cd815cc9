import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { type Database, openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { isEmptyDatabase } from '@/lib/data/store/migration'
import { MoveError, moveDatabase } from '@/lib/data/store/move-database'
import { createTestDatabase } from '@/test/setup/created-databases'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { findPreparedReview } from '@/test/setup/prepared-reviews'

/** Counts as SQLite itself gives them, of every table of the application. */
async function countRows({ client }: Database): Promise<Record<string, number>> {
  const tables = await client.$queryRawUnsafe<{ name: string }[]>(
    "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND name NOT LIKE '\\_prisma%' ESCAPE '\\' AND name NOT LIKE '\\_search%' ESCAPE '\\'",
  )
  const counts: Record<string, number> = {}
  for (const { name } of tables) {
    const [row] = await client.$queryRawUnsafe<{ n: number | bigint }[]>(`SELECT count(*) AS n FROM "${name}"`)
    counts[name] = Number(row?.n)
  }
  return counts
}

describeOnBothDatabases('data that are moved', (current, kind) => {
  it('from SQLite to PostgreSQL arrive whole, with a trail that fits, and go nowhere else', async () => {
    if (kind === 'sqlite') {
      const { database } = current()
      await expect(moveDatabase(database, database)).rejects.toThrow(MoveError)
      return
    }
    const prepared = await findPreparedReview('sqlite', 'released')
    const created = await createTestDatabase('sqlite', { origin: prepared.database })
    const source = openDatabase(created.url)
    const target = current().database
    try {
      // What PostgreSQL cannot hold stops all of it, and leaves nothing.
      await source.client.$executeRawUnsafe(
        `INSERT INTO "ResetRequest" ("id", "email", "at") VALUES ('odd', 'nobody' || char(0) || '@quillmoor.example', '2026-03-02T08:00:00.000Z')`,
      )
      await expect(moveDatabase(source, target)).rejects.toThrow()
      expect(await isEmptyDatabase(target)).toBe(true)
      await source.client.$executeRawUnsafe('DELETE FROM "ResetRequest"')

      replaceDatabase(source)
      const { team, revisionId } = await prepared.open()
      const before = await data.checkWholeTrail(team.admin)
      expect(before.firstBad).toBeNull()
      expect([before.recordCount > 40, before.state.fitCount > 40]).toEqual([true, true])
      const moved = await moveDatabase(source, target)
      expect(Object.fromEntries(moved.map(({ name, count }) => [name, count]))).toEqual(await countRows(source))
      replaceDatabase(target)
      // Each record and each row that it speaks of, as before.
      expect(await data.checkWholeTrail(team.admin)).toEqual(before)
      const view = await data.getRevision(team.lead, revisionId)
      expect([view.stage, view.signatures.length]).toEqual(['released', 1])
      // What was moved goes on: an act on it joins the trail.
      const origin = { kind: 'copy' as const, revisionId }
      const copied = await data.createRevision(team.member, { projectId: team.projectId, label: 'M1', origin })
      expect(copied.ok).toBe(true)
      expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
      await expect(moveDatabase(source, target)).rejects.toThrow('holds data already')
    } finally {
      await source.close()
      await created.remove()
    }
  }, 400_000)
})
