import { beforeAll, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const VISIT = { sourceKey: 'k9f2c1aa-of-an-address', isThisMachine: false, device: 'Firefox on Linux', known: null }

describeOnBothDatabases('the list of who opened what', (current) => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    current()
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 240_000)

  const place = () => ({ revisionId })

  it('holds who opened and fetched what, for the leads of the project and the company of the person', async () => {
    await data.noteAccess(team.fabricator, VISIT, { kind: 'revision-opened', place: place(), what: '' })
    // Again within the hour: the same opening. A file is noted each time.
    await data.noteAccess(team.fabricator, VISIT, { kind: 'revision-opened', place: place(), what: '' })
    for (let n = 0; n < 2; n += 1) {
      await data.noteAccess(team.fabricator, VISIT, { kind: 'file-fetched', place: place(), what: 'top.gbr' })
    }
    const { rows, total } = await data.listProjectAccess(team.lead, team.projectId)
    expect(
      rows.filter(({ userName }) => userName === team.fabricator.name).map(({ kind, what }) => [kind, what]),
    ).toEqual([
      ['file-fetched', expect.stringMatching(/: top\.gbr$/)],
      ['file-fetched', expect.stringMatching(/: top\.gbr$/)],
      ['revision-opened', expect.any(String)],
    ])
    expect(total).toBe(rows.length)
    expect(rows[0]).toMatchObject({
      companyName: expect.stringContaining('Brackenfold Circuits'),
      source: 'k9f2c1aa',
      device: 'Firefox on Linux',
    })
    const own = await data.listCompanyAccess(team.fabricator, team.companies.brackenfold)
    expect(own.rows.map(({ kind }) => kind)).toEqual(['file-fetched', 'file-fetched', 'revision-opened'])
  })

  it('is not shown to members, other fabricators and admins of the workspace', async () => {
    for (const person of [team.member, team.rivalFabricator]) {
      await expect(data.listProjectAccess(person, team.projectId)).rejects.toThrow(data.NotAllowedError)
    }
    await expect(data.listProjectAccess(team.admin, team.projectId)).rejects.toThrow(data.NotFoundError)
    await expect(data.getCompanyAccessFile(team.lead, team.companies.brackenfold)).rejects.toThrow(data.NotAllowedError)
  })

  it('holds a refusal under the project that was tried, and no more of one person than 200 an hour', async () => {
    const tried = `GET /api/revisions/${revisionId}/design`
    await data.noteAccess(team.outsider, VISIT, { kind: 'refused', place: place(), what: tried })
    const { rows } = await data.listProjectAccess(team.lead, team.projectId)
    expect(rows[0]).toMatchObject({ kind: 'refused', userName: team.outsider.name, what: tried })
    for (let n = 0; n < 210; n += 1) {
      await data.noteAccess(team.outsider, VISIT, {
        kind: 'refused',
        place: {},
        what: `GET /api/revisions/guess-${n}/design`,
      })
    }
    expect(await db().accessEvent.count({ where: { userId: team.outsider.userId, kind: 'refused' } })).toBe(200)
  }, 120_000)

  it('is exported as CSV, and a cell that a spreadsheet would take for a formula is none', async () => {
    await data.noteAccess(team.member, VISIT, { kind: 'file-fetched', place: {}, what: '=1+1.gbr' })
    await data.noteAccess(team.member, VISIT, { kind: 'file-fetched', place: place(), what: 'bottom.gbr' })
    const { bytes, mediaType } = await data.getProjectAccessFile(team.lead, team.projectId)
    const text = new TextDecoder().decode(bytes)
    expect(mediaType).toContain('text/csv')
    expect(text).toContain('bottom.gbr')
    expect(text).toContain('file-fetched')
    expect(text).not.toContain('=1+1')
  })

  it('is deleted after the time that the settings name, and nothing else with it', async () => {
    const before = await db().accessEvent.count()
    expect(await data.forgetOldAccess()).toBe(0)
    const records = await db().trailRecord.count()
    const restore = replaceClock(() => new Date(Date.now() + 401 * 86_400_000))
    try {
      expect(await data.forgetOldAccess()).toBe(before)
    } finally {
      restore()
    }
    expect(await db().accessEvent.count()).toBe(0)
    expect(await db().trailRecord.count()).toBe(records)
  })
})
