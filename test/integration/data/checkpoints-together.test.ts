import { readdirSync } from 'node:fs'
import path from 'node:path'
import { afterEach, expect, it, vi } from 'vitest'
import { log, replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

let restoreClock = () => {}
afterEach(() => restoreClock())

const listKept = () => {
  const folder = path.join(process.env.BENDWORTHY_DATA_FOLDER ?? '', 'checkpoints')
  return readdirSync(folder, { recursive: true }).map(String)
}

describeOnBothDatabases('checkpoints of a new installation', () => {
  it('are all kept in the data folder, also those of acts that end at the same moment', async () => {
    const error = vi.spyOn(log, 'error')
    const team = await makeTeam()
    const revisionId = await makeRevision(team)
    // The first record of each day makes one: here each act is a day of its own.
    let day = Date.parse('2027-01-01T08:00:00Z')
    restoreClock = replaceClock(() => {
      day += 86_400_000
      return new Date(day)
    })
    const anchor = { kind: 'revision' as const, id: '' }
    await Promise.all(
      Array.from({ length: 8 }, (_, index) =>
        expectDone(
          data.openThread(team.member, { revisionId, anchor, kind: 'note', title: `Note ${index}`, text: 'See here.' }),
        ),
      ),
    )
    expect(error).not.toHaveBeenCalled()
    const checkpoints = await db().trailCheckpoint.findMany({ orderBy: { sequence: 'asc' } })
    expect(checkpoints.length).toBeGreaterThanOrEqual(9)
    expect(checkpoints[0]?.sequence, 'the first record has one').toBe(1)
    const kept = listKept()
    for (const { sequence, trailId } of checkpoints) {
      expect(kept).toContain(path.join(trailId.slice(0, 16), `${sequence}.json`))
    }
    expect(kept.filter((name) => name.endsWith('.partial'))).toEqual([])
  }, 120_000)
})
