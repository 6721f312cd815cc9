import { beforeAll, describe, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevisionAt } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const CONDITIONS = { layersFrom: null, layersTo: null, foilFromUm: null, foilToUm: null, construction: null }
const WIDTH = {
  parameter: 'plated-conductor-width',
  comfortable: 9,
  stretch: 8,
  ...CONDITIONS,
  note: 'Brackenfold web',
}
const COUNT = { parameter: 'conductor-layer-count', comfortable: 6, stretch: 12, ...CONDITIONS, note: '' }

describeOnBothDatabases('sheets that a fabricator keeps', () => {
  let team: Team
  let revisionId: string

  const save = (rows: readonly object[], seenVersion: number, more: object = {}) =>
    data.saveSheet(team.fabricator, {
      companyId: team.companies.brackenfold,
      kind: 'matrix',
      seenVersion,
      issuedOn: '2026-11-02',
      note: '',
      content: { rows },
      ...more,
    })
  const count = (companyId: string) => db().fabricationSheet.count({ where: { companyId } })
  const current = async () => (await data.getSheet(team.lead, team.companies.brackenfold, 'matrix')).current

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevisionAt(team, 'early-review')
  }, 120_000)

  describe('versions', () => {
    it('each save makes one and the earlier ones stay', async () => {
      expect(await expectDone(save([WIDTH], 0))).toEqual({ version: 1 })
      expect(await expectDone(save([WIDTH, COUNT], 1))).toEqual({ version: 2 })
      const versions = await data.listSheetVersions(team.lead, team.companies.brackenfold, 'matrix')
      expect(versions.map(({ version }) => version)).toEqual([2, 1])
      expect((await current())?.content.rows).toHaveLength(2)
    })

    it('saving the same again makes none', async () => {
      expect(await expectDone(save([WIDTH, COUNT], 2))).toEqual({ version: 2 })
      expect(await count(team.companies.brackenfold)).toBe(2)
    })

    it('one that was not the newest is refused, with what changed since', async () => {
      const refusal = await expectRefused(save([COUNT], 1))
      expect(refusal).toMatchObject({ kind: 'stale', currentVersion: 2, changes: [{ what: ['row: 1 added'] }] })
      expect(await count(team.companies.brackenfold)).toBe(2)
    })

    it('of two at the same moment one is saved', async () => {
      const both = await Promise.all([1, 2].map((comfortable) => save([{ ...WIDTH, comfortable, stretch: 1 }], 2)))
      expect(both.filter(({ ok }) => ok)).toHaveLength(1)
      expect((await current())?.version).toBe(3)
    })

    it('content that cannot be is refused by its path, and nothing is saved', async () => {
      const refusal = await expectRefused(save([COUNT, { ...WIDTH, stretch: 10 }], 3))
      expect(refusal).toMatchObject({
        kind: 'invalid',
        issues: [{ code: 'stretch-stricter', path: ['content', 'rows', 1, 'stretch'] }],
      })
      expect((await current())?.version).toBe(3)
    })

    it('are in the trail as the company’s own', async () => {
      const records = await db().trailRecord.findMany({ where: { action: 'sheet-saved' } })
      expect(records.map(({ companyId }) => companyId)).toEqual(Array(3).fill(team.companies.brackenfold))
    })
  })

  describe('opening, comparing and restoring one', () => {
    const SHELF = { kind: 'shelf' as const }
    const shelf = (buildTimeDays: number | null, seenVersion: number, note: string) =>
      data.saveSheet(team.fabricator, {
        companyId: team.companies.brackenfold,
        ...SHELF,
        seenVersion,
        issuedOn: '2026-11-02',
        note,
        content: { buildTimeDays, rows: [] },
      })
    const open = (actor: data.Actor, version: number | string, against: string | null = null, kind = 'shelf') =>
      data.getSheetVersion(actor, team.companies.brackenfold, { kind, version: String(version), against })
    const restore = (version: number, seenVersion: number, actor = team.fabricator) =>
      data.restoreSheetVersion(actor, {
        companyId: team.companies.brackenfold,
        ...SHELF,
        version,
        seenVersion,
        issuedOn: '2026-11-20',
        note: `as version ${version}`,
      })

    it('shows what it held, and what differs from the newest one or any other', async () => {
      await expectDone(shelf(20, 0, 'first'))
      await expectDone(shelf(25, 1, 'slower'))
      await expectDone(shelf(25, 2, 'said again'))
      expect(await open(team.fabricator, 1)).toMatchObject({
        version: { version: 1, note: 'first' },
        sheet: { kind: 'shelf', content: { buildTimeDays: 20 } },
        newestVersion: 3,
        others: [{ version: 3 }, { version: 2 }],
        comparison: { from: 1, to: 3, buildTimeDays: { before: 20, after: 25 } },
        mayRestore: true,
      })
      // The newest is held against the one before it; the later of two is always the one after.
      expect((await open(team.fabricator, 3)).comparison).toMatchObject({ from: 2, to: 3, buildTimeDays: null })
      expect((await open(team.fabricator, 3, '1')).comparison).toMatchObject({ from: 1, to: 3 })
      const rows = (await open(team.fabricator, 1, '2', 'matrix')).comparison?.rows
      expect([rows?.added.length, rows?.changed.length, rows?.removed.length, rows?.unchangedCount]).toEqual([
        1, 0, 0, 1,
      ])
    })

    it('is for the fabricator’s own people: the team sees the version in force alone', async () => {
      expect((await data.getSheet(team.fabricator, team.companies.brackenfold, 'shelf')).mayOpenVersions).toBe(true)
      expect((await data.getSheet(team.lead, team.companies.brackenfold, 'shelf')).mayOpenVersions).toBe(false)
      await expect(open(team.lead, 1)).rejects.toThrow(data.NotAllowedError)
      for (const actor of [team.rivalFabricator, team.outsider]) {
        await expect(open(actor, 1)).rejects.toThrow(data.NotFoundError)
      }
    })

    it('is not found where there is none', async () => {
      for (const [version, against, kind] of [
        [9, null, 'shelf'],
        ['0', null, 'shelf'],
        ['one', null, 'shelf'],
        [1, '9', 'shelf'],
        [1, '1', 'shelf'],
        [1, null, 'process-rates'],
      ] as const) {
        await expect(open(team.fabricator, version, against, kind)).rejects.toThrow(data.NotFoundError)
      }
      await expect(restore(9, 3)).rejects.toThrow(data.NotFoundError)
    })

    it('comes back as a new version, with those between kept, and the trail says whose content it is', async () => {
      const before = await count(team.companies.brackenfold)
      expect(await expectRefused(restore(1, 2))).toMatchObject({ kind: 'stale', currentVersion: 3 })
      expect(await expectRefused(restore(2, 3))).toMatchObject({ issues: [{ code: 'nothing-to-restore' }] })
      expect(await count(team.companies.brackenfold)).toBe(before)
      expect(await expectDone(restore(1, 3))).toEqual({ version: 4 })
      const now = await data.getSheet(team.lead, team.companies.brackenfold, 'shelf')
      expect(now.current).toMatchObject({ version: 4, content: { buildTimeDays: 20 }, note: 'as version 1' })
      expect(await count(team.companies.brackenfold)).toBe(before + 1)
      const records = await db().trailRecord.findMany({ where: { action: 'sheet-saved', subjectId: 'shelf/4' } })
      expect(records.map(({ detailsJson }) => JSON.parse(detailsJson))).toMatchObject([{ version: 4, restored: 1 }])
    })
  })

  describe('files', () => {
    const file = (text: string) => ({
      companyId: team.companies.brackenfold,
      kind: 'matrix' as const,
      fileName: 'matrix.csv',
      bytes: new TextEncoder().encode(text),
      mode: 'replace' as const,
    })
    const GOOD = 'conductor-layer-count,8,12\nconductor-width,0.1,0.075\n'
    const BAD = 'conductor-width,narrow,0.075\n'
    const HEADINGS = 'Parameter,Comfortable,Stretch\n'
    const take = (text: string, leaveOutBadRows: boolean, seenVersion = 3) =>
      data.importSheetFile(team.fabricator, {
        ...file(text),
        leaveOutBadRows,
        seenVersion,
        issuedOn: '2026-11-09',
        note: 'from a file',
      })

    it('a preview names what would change and what is bad, and writes nothing', async () => {
      const before = [await count(team.companies.brackenfold), await db().trailRecord.count()]
      const preview = await expectDone(data.previewSheetFile(team.fabricator, file(HEADINGS + BAD + GOOD)))
      expect(preview).toMatchObject({ rowCount: 3, goodRowCount: 2, badRowCount: 1, seenVersion: 3 })
      expect(preview.bad).toEqual([
        { line: 2, column: 'Comfortable', text: 'narrow', reason: '"narrow" is not a number in mm' },
      ])
      expect([preview.added.length, preview.changed.length, preview.removed.length]).toEqual([2, 0, 1])
      expect([await count(team.companies.brackenfold), await db().trailRecord.count()]).toEqual(before)
    })

    it('a file with a bad row is refused whole, unless bad rows are to be left out', async () => {
      const refusal = await expectRefused(take(HEADINGS + BAD + GOOD, false))
      expect(refusal).toMatchObject({ kind: 'invalid', issues: [{ path: ['bytes', 2, 'Comfortable'] }] })
      expect((await current())?.version).toBe(3)
      await expectDone(take(HEADINGS + BAD + GOOD, true))
      expect((await current())?.content.rows.map(({ parameter }) => parameter)).toEqual([
        'conductor-layer-count',
        'conductor-width',
      ])
    })

    it('on top of what is kept, a file changes and adds, and takes nothing away', async () => {
      await expectDone(
        data.importSheetFile(team.fabricator, {
          ...file(`${HEADINGS}conductor-width,0.2,0.1\nconductor-space,0.2,0.1\n`),
          mode: 'add-and-change',
          leaveOutBadRows: false,
          seenVersion: 4,
          issuedOn: '2026-11-10',
          note: '',
        }),
      )
      expect((await current())?.content.rows.map(({ parameter, comfortable }) => [parameter, comfortable])).toEqual([
        ['conductor-layer-count', 8],
        ['conductor-width', 0.2],
        ['conductor-space', 0.2],
      ])
    })

    it('a file that is no table is refused, naming it', async () => {
      expect(await expectRefused(data.previewSheetFile(team.fabricator, file('Colour\nred\n')))).toMatchObject({
        issues: [{ path: ['bytes'], message: expect.stringContaining('matrix.csv') }],
      })
      expect(await expectRefused(take(HEADINGS, true, 5))).toMatchObject({ issues: [{ code: 'no-rows' }] })
    })

    it.each(['csv', 'xlsx'] as const)('what was exported as %s is taken as no change', async (format) => {
      const { companyId, kind } = file('')
      const { bytes } = await data.exportSheetFile(team.lead, { companyId, kind, format })
      const preview = await expectDone(data.previewSheetFile(team.fabricator, { ...file(''), bytes }))
      expect(preview).toMatchObject({ bad: [], added: [], changed: [], removed: [], unchangedCount: 3 })
    })
  })

  describe('what they say of a revision', () => {
    it('decides the items, and recorded results are stale when a sheet changes', async () => {
      const before = await data.getRevision(team.lead, revisionId)
      await expectDone(save([{ ...COUNT, comfortable: 1, stretch: 1 }, WIDTH], 5))
      const stale = await data.getRevision(team.lead, revisionId)
      expect(stale.evaluationRecord.staleBecause.join()).toContain('sheets of a fabricator')
      await expectDone(data.evaluateAgain(team.lead, { revisionId }))
      const after = await data.getRevision(team.lead, revisionId)
      expect(after.evaluationRecord.staleBecause).toEqual([])
      const verdictOf = (view: typeof after) =>
        view.items.find(({ itemId }) => itemId === 'capability-match')?.result.verdict
      expect(verdictOf(after)).toBe('fails')
      expect(before.items.length).toBe(after.items.length)
    }, 60_000)

    it('stands side by side for the team, and alone for each fabricator', async () => {
      await expectDone(
        data.saveSheet(team.rivalFabricator, {
          companyId: team.companies.ostrel,
          kind: 'matrix',
          seenVersion: 0,
          issuedOn: '2026-11-02',
          note: '',
          content: { rows: [{ ...COUNT, note: 'Ostrel only' }] },
        }),
      )
      const fit = await data.getFabricationFit(team.lead, revisionId)
      expect(fit.fabricators.map(({ company }) => company.id)).toEqual([
        team.companies.brackenfold,
        team.companies.ostrel,
      ])
      const cells = fit.parameters.find(({ key }) => key === 'conductor-layer-count')?.values[0]?.cells
      expect(cells?.map(({ verdict }) => verdict)).toEqual(['outside', 'comfortable'])
      for (const [actor, own, foreign] of [
        [team.fabricator, 'brackenfold', ['Ostrel', team.companies.ostrel]],
        [team.rivalFabricator, 'ostrel', ['Brackenfold', team.companies.brackenfold]],
      ] as const) {
        const alone = await data.getFabricationFit(actor, revisionId)
        expect(alone.fabricators.map(({ company }) => company.id)).toEqual([team.companies[own]])
        for (const trace of foreign) expect(JSON.stringify(alone)).not.toContain(trace)
        for (const value of alone.parameters.flatMap(({ values }) => values)) expect(value.cells).toHaveLength(1)
      }
    }, 60_000)

    it('a fabricator’s verdict comes from its own matrix alone', async () => {
      await expectDone(data.evaluateAgain(team.lead, { revisionId }))
      const verdictFor = async (actor: data.Actor) =>
        (await data.getRevision(actor, revisionId)).items.find(({ itemId }) => itemId === 'capability-match')?.result
          .verdict
      // Nothing lies outside of its matrix, which does not state every entry: those are for a person to ask about.
      expect(await verdictFor(team.rivalFabricator)).toBe('needs-judgment')
      // Of several, the one that says the worst counts for the team.
      expect(await verdictFor(team.lead)).toBe('fails')
    }, 60_000)
  })
})
