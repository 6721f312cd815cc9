import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { loadRevision } from '@/lib/data/records/loaded-revision'
import { makeSnapshot } from '@/lib/data/records/snapshot'
import { findPackedFlexTests } from '@/lib/data/records/tested-lives'
import { db, inReadTransaction } from '@/lib/data/store/client'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import { makeDataFiles } from '@/lib/package/data-files'
import { FLEX_TESTS_INDEX_PATH, makeFlexTestFiles } from '@/lib/package/flex-tests'
import { makeReport } from '@/lib/package/report/report'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team, takePart } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { makeContent } from '@/test/integration/package/content-factory'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** The hinge of Skua revision B: 63.8 um thick, bought foil 12 um, 17 mm one way, two million cycles asked for. */
const HINGE: Omit<FlexTestRow, 'set' | 'specimen' | 'cycles' | 'result'> = {
  kind: 'circuit',
  foil: 'copper-ra',
  foilUm: 12,
  thicknessUm: 63.8,
  insideRadiusMm: 17,
  motion: 'one-way',
  strainRangePct: null,
  temperatureDegC: 23,
  testedOn: '2026-06-18',
  laboratory: 'Own laboratory',
  report: 'R-1',
  note: '',
}
const makeRows = (set: string, cycles: readonly number[]): FlexTestRow[] =>
  cycles.map((each, at) => ({
    ...HINGE,
    set,
    specimen: `${set}-specimen-${at + 1}`,
    cycles: each,
    result: each < 9e6 ? 'failed' : 'survived',
  }))
const OF_BRACKENFOLD = makeRows('Lot 7', [2.1e6, 2.9e6, 3.4e6, 4.4e6, 5.1e6, 6.8e6, 9e6, 9e6])
const OF_WORKSPACE = makeRows('House', [1.1e6, 1.6e6, 2.2e6, 2.8e6, 3.3e6, 4.1e6, 5e6])

describeOnBothDatabases('flex tests from entry to verdict', () => {
  let team: Team
  let revisionId: string

  const save = (rows: readonly FlexTestRow[], seenVersion = 0) =>
    data.saveSheet(team.fabricator, {
      companyId: team.companies.brackenfold,
      kind: 'flex-tests',
      seenVersion,
      issuedOn: '2026-06-22',
      note: '',
      content: { rows },
    })
  const viewOf = async (actor = team.lead) => {
    const view = await data.getRevision(actor, revisionId)
    const hinge = view.evaluation.bends.find(({ bendId }) => bendId === 'hinge')
    if (hinge === undefined) throw new Error('no hinge')
    const life = view.evaluation.items.find(({ itemId }) => itemId === 'fatigue-life')
    return { view, hinge, life, sets: hinge.ownTests.map(({ set }) => set) }
  }
  const evaluateAgain = () => expectDone(data.evaluateAgain(team.lead, { revisionId }))
  const hashes = async () => {
    const rows = await db().evaluation.findMany({ where: { revisionId }, orderBy: { ordinal: 'desc' } })
    return { inputs: rows[0]?.inputsHash, limits: rows[0]?.limitsHash }
  }

  /** What a release would pack for one audience now. */
  const editionOf = async (companyId: string | null) => {
    const loaded = await inReadTransaction((tx) => loadRevision(tx, revisionId))
    const { snapshot: stored } = makeSnapshot(loaded, companyId)
    const snapshot = { ...stored, artwork: [] }
    const flexTests = findPackedFlexTests(loaded, companyId, snapshot.evaluation?.results ?? null)
    const content = { ...makeContent(snapshot), artwork: [], flexTests }
    const files = makeFlexTestFiles(content)
    const text = ({ bytes }: { readonly bytes: Uint8Array }) => new TextDecoder().decode(bytes)
    const index = files.find(({ path }) => path === FLEX_TESTS_INDEX_PATH)
    return {
      paths: files.map(({ path }) => path),
      sets: index === undefined ? [] : (JSON.parse(text(index)).sets as { name: string }[]).map(({ name }) => name),
      files: makeDataFiles(content).map(text).join('\n'),
      report: JSON.stringify(makeReport(content)),
    }
  }

  beforeAll(async () => {
    team = await makeTeam()
    await takePart(team.projectId, team.companies.brackenfold, { matrix: 'shown', shelf: 'shown', rates: 'shown' })
    revisionId = await makeRevision(team, 'skua-rev-b')
    await share(team, revisionId)
  }, 200_000)

  it('refuses what cannot be, by row and field, and writes nothing', async () => {
    const [first, second] = OF_BRACKENFOLD
    if (first === undefined || second === undefined) throw new Error('no rows')
    for (const [rows, field] of [
      [[first, { ...second, specimen: first.specimen }], 'specimen'],
      [[first, { ...second, cycles: 0 }], 'cycles'],
      [[first, { ...second, foilUm: 18 }], 'foilUm'],
    ] as const) {
      const refused = await expectRefused(save(rows))
      expect(refused).toMatchObject({ kind: 'invalid', issues: [{ path: ['content', 'rows', 1, field] }] })
    }
    expect((await data.getSheet(team.fabricator, team.companies.brackenfold, 'flex-tests')).current).toBeNull()
  })

  it('makes recorded results outdated, and decides once they are computed again', async () => {
    const before = await viewOf()
    const recorded = await hashes()
    expect(before.sets).toEqual([])
    await expectDone(save(OF_BRACKENFOLD))
    expect((await viewOf()).view.evaluationRecord.staleBecause).toEqual([
      'limits in force, or sheets of a fabricator, changed',
    ])
    await evaluateAgain()
    const after = await viewOf()
    expect(after.view.evaluationRecord.staleBecause).toEqual([])
    expect(after.sets).toEqual(['Lot 7'])
    expect(after.hinge.ownTests[0]).toMatchObject({
      owner: { kind: 'fabricator', name: expect.stringContaining('Brackenfold') },
      specimens: 8,
      failures: 6,
    })
    // Two million cycles at 99 % survival: the third specimen broke at 3.4 million, the first at 2.1.
    expect(after.hinge.survivalLifeCycles).toBeLessThan(before.hinge.survivalLifeCycles ?? 0)
    expect(after.life?.verdict).toBe('fails')
    expect(JSON.stringify(after.life)).toMatch(
      /from own tests \(set Lot 7 of Brackenfold.* \(fabricator\), n = 8, 6 failed\)/,
    )
    const now = await hashes()
    expect(now.inputs).not.toBe(recorded.inputs)
    expect(now.limits).not.toBe(recorded.limits)
    // What leaves as a file says it too, and the browser's evaluation has the same figures at hand, without a specimen.
    const file = await data.exportResults(team.lead, revisionId)
    expect(new TextDecoder().decode(file.bytes)).toContain('Lot 7')
    expect(after.view.testedLives).toMatchObject([{ set: 'Lot 7', failures: 6 }])
    expect(JSON.stringify(after.view)).not.toContain('Lot 7-specimen')
  })

  it('shows another fabricator nothing of them', async () => {
    const { view, sets } = await viewOf(team.rivalFabricator)
    expect(sets).toEqual([])
    expect(view.testedLives).toEqual([])
    expect(JSON.stringify(view)).not.toContain('Lot 7')
    await expect(data.getSheet(team.rivalFabricator, team.companies.brackenfold, 'flex-tests')).rejects.toThrow(
      data.NotFoundError,
    )
  })

  it('goes into the fabricator’s own edition of a package with its specimens, into no other with any', async () => {
    const own = await editionOf(team.companies.brackenfold)
    for (const { specimen } of OF_BRACKENFOLD) {
      expect(own.report).toContain(specimen)
      expect(own.files).toContain(specimen)
    }
    expect(own.report).toContain('survived')
    const ofTeam = await editionOf(null)
    expect(ofTeam.sets).toEqual(['Lot 7'])
    expect(ofTeam.report + ofTeam.files).not.toContain('Lot 7-specimen')
    const ofRival = await editionOf(team.companies.ostrel)
    expect(ofRival.paths).toEqual([])
    expect(ofRival.report + ofRival.files).not.toContain('Lot 7')
  })

  it('counts for the fabricator itself, whatever it shows, and not for a team that is not shown the matrix', async () => {
    await takePart(team.projectId, team.companies.brackenfold, { matrix: 'checked', shelf: 'shown', rates: 'shown' })
    expect((await viewOf(team.fabricator)).sets).toEqual(['Lot 7'])
    expect((await viewOf()).view.testedLives).toEqual([])
    await evaluateAgain()
    const { view, sets, life } = await viewOf()
    expect(sets).toEqual([])
    expect(life?.verdict).not.toBe('fails')
    expect(JSON.stringify(view)).not.toContain('Lot 7')
  })

  it('keeps the workspace’s own in its catalogue: a review uses them once it is brought up', async () => {
    const input = { seenVersion: 0, rows: OF_WORKSPACE, reason: 'Tested in June' }
    await expectDone(data.saveWorkspaceFlexTests(team.admin, input))
    expect((await data.getTemplate(team.lead)).versions[0]?.summary).toBe('flex tests, rows: 7 added')
    expect((await viewOf()).sets).toEqual([])
    const update = await data.getTemplateUpdate(team.lead, revisionId)
    expect(update?.changes).toEqual(['flex tests, rows: 7 added'])
    expect(update?.verdictMoves.map(({ itemId }) => itemId)).toContain('fatigue-life')
    const { version, contentHash } = (await viewOf()).view
    await expectDone(
      data.updateTemplate(team.lead, { revisionId, seenVersion: version, toVersion: 1, toProfileIds: [] }),
    )
    const after = await viewOf()
    expect(after.sets).toEqual(['House'])
    expect(after.hinge.ownTests[0]?.owner.kind).toBe('workspace')
    expect(after.life?.verdict).toBe('fails')
    expect(after.view.contentHash).not.toBe(contentHash)
    // To a fabricator its own results rest on them as on the workspace's limits; the specimens stay with the workspace.
    const theirs = await viewOf(team.rivalFabricator)
    expect(theirs.sets).toEqual(['House'])
    for (const actor of [team.lead, team.rivalFabricator]) {
      expect(JSON.stringify((await viewOf(actor)).view)).not.toContain('House-specimen')
    }
  })

  it('refuses the workspace’s rows by field, and nobody but admins saves them', async () => {
    const [first] = OF_WORKSPACE
    if (first === undefined) throw new Error('no rows')
    const twice = await expectRefused(
      data.saveWorkspaceFlexTests(team.admin, { seenVersion: 1, rows: [first, first], reason: 'twice' }),
    )
    expect(twice).toMatchObject({ kind: 'invalid', issues: [{ path: ['rows', 1, 'specimen'] }] })
    await expect(data.saveWorkspaceFlexTests(team.lead, { seenVersion: 1, rows: [], reason: 'gone' })).rejects.toThrow(
      data.NotAllowedError,
    )
  })

  it('goes into a file and comes back the same', async () => {
    const sheet = { companyId: team.companies.brackenfold, kind: 'flex-tests' as const }
    for (const format of ['csv', 'xlsx'] as const) {
      const file = await data.exportSheetFile(team.fabricator, { ...sheet, format })
      const bytes = new Uint8Array(file.bytes)
      const upload = { ...sheet, fileName: file.fileName, bytes, mode: 'replace' as const }
      const preview = await expectDone(data.previewSheetFile(team.fabricator, upload))
      expect(preview).toMatchObject({ badRowCount: 0, goodRowCount: 8, unchangedCount: 8, added: [], changed: [] })
    }
  })

  it('goes into the team’s edition of a package whole where it is the workspace’s, and by figures to fabricators', async () => {
    const ofTeam = await editionOf(null)
    expect(ofTeam.sets).toEqual(['House'])
    expect(ofTeam.paths).toEqual([expect.stringMatching(/^flex-tests\/001-.+\.csv$/), FLEX_TESTS_INDEX_PATH])
    for (const { specimen, cycles } of OF_WORKSPACE) {
      expect(ofTeam.report).toContain(specimen)
      expect(ofTeam.files).toContain(specimen)
      expect(ofTeam.files).toContain(String(cycles))
    }
    expect(ofTeam.report).toContain('extrapolated along the fitted line')
    expect(ofTeam.report).toContain('Weibull plot, set House')
    for (const companyId of [team.companies.brackenfold, team.companies.ostrel]) {
      const edition = await editionOf(companyId)
      expect(edition.sets).toContain('House')
      expect(edition.report + edition.files).not.toContain('House-specimen')
      expect(edition.files).toContain('this edition holds the figures alone')
      expect(edition.report).toContain('this edition holds the figures alone')
    }
    expect((await editionOf(team.companies.ostrel)).files).not.toContain('Lot 7')
  })
})
