import { beforeAll, describe, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { loadRevision } from '@/lib/data/records/loaded-revision'
import { unpackText } from '@/lib/data/records/packed-text'
import { makeSnapshot } from '@/lib/data/records/snapshot'
import { db, inReadTransaction } from '@/lib/data/store/client'
import { readKeptFile } from '@/lib/data/store/file-store'
import type { Outcome } from '@/lib/engine'
import { LIMITS } from '@/lib/engine/catalogue'
import { makeDrawingSource, readArchive } from '@/lib/package'
import { makeReport } from '@/lib/package/report/report'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team, takePart } from '@/test/factories/people'
import {
  advance,
  answerEverything,
  declareByBoth,
  declareReview,
  makeRevision,
  share,
  sign,
} from '@/test/factories/reviews'
import { RELEASE_TERMS } from '@/test/integration/package/content-factory'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** The limit that Brackenfold keeps to itself, in millimetres, and its matrix. No other number looks like these. */
const LIMIT = 0.1937
const COMFORTABLE = 0.1877
const STRETCH = 0.1573

/** As it would be written: in mm, rounded as sentences round, in um and in mil; a rounded form alone, not within a longer number. */
const WRITTEN = [LIMIT, COMFORTABLE, STRETCH]
  .flatMap((mm) => {
    const rounded = [mm.toFixed(3), `${Number((mm * 1000).toFixed(1))}`, (mm / 0.0254).toFixed(3)]
    const inUnits = [`${Math.round(mm * 1000)} µm`, `${(mm / 0.0254).toFixed(2)} mil`]
    return [`${mm}`, ...[...rounded, ...inUnits].map((text) => `(?<![\\d.])${text}(?!\\d)`)]
  })
  .map((pattern) => new RegExp(pattern.replaceAll(/(?<=\d)\.(?=\d)/g, '\\.')))
const NOTE = 'kept to ourselves since the press moves'

const LENGTH_KEYS = Object.entries(LIMITS).flatMap(([key, { unit, sense, allowed }]) =>
  unit === 'mm' && sense === 'at-least' && allowed.min <= LIMIT && allowed.max >= LIMIT ? [key] : [],
)

describeOnBothDatabases('a limit that a fabricator does not show', () => {
  let team: Team
  let revisionId: string
  let proposalId: string
  /** What only the company knows: its own sentences and margins, gathered from its own view. */
  let secrets: string[]

  const decidedBy = (outcomes: readonly Outcome[]) =>
    outcomes.flatMap((outcome) => (outcome.kind === 'decided' && outcome.limit.value === LIMIT ? [outcome] : []))

  const expectNothingOf = (where: string, value: unknown) => {
    const text = typeof value === 'string' ? value : JSON.stringify(value)
    expect(text.length, `${where} holds something`).toBeGreaterThan(1)
    for (const secret of [...secrets, ...WRITTEN, NOTE]) {
      const at = typeof secret === 'string' ? text.indexOf(secret) : text.search(secret)
      expect(at < 0 ? '' : `${where}: ${text.slice(Math.max(0, at - 80), at + 40)}`, `${secret}`).toBe('')
    }
  }
  const textOf = ({ bytes }: { readonly bytes: Uint8Array }) => new TextDecoder().decode(bytes)

  beforeAll(async () => {
    team = await makeTeam()
    const { brackenfold } = team.companies
    await takePart(team.projectId, brackenfold, { matrix: 'checked', shelf: 'not-shared', rates: 'not-shared' })
    for (const key of LENGTH_KEYS) {
      const limit = { companyId: brackenfold, key, value: LIMIT, note: NOTE, seenVersion: 0 }
      await expectDone(data.setLimit(team.fabricator, limit))
    }
    const row = { layersFrom: null, layersTo: null, foilFromUm: null, foilToUm: null, construction: null, note: NOTE }
    await expectDone(
      data.saveSheet(team.fabricator, {
        companyId: brackenfold,
        kind: 'matrix',
        seenVersion: 0,
        issuedOn: '2026-11-02',
        note: NOTE,
        content: { rows: [{ parameter: 'conductor-width', comfortable: COMFORTABLE, stretch: STRETCH, ...row }] },
      }),
    )
    revisionId = await makeRevision(team)
    await share(team, revisionId)
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const plan = design.plan === null ? null : { ...design.plan, coverlayOpenings: [] }
    const widened = { ...design, plan, features: { ...design.features, coverlayOpenings: [] } }
    const proposed = await expectDone(
      data.proposeChange(team.member, {
        revisionId,
        seenVersion: designVersion,
        design: widened,
        title: 'No openings',
        why: 'To see what the limits say.',
        kind: 'note',
      }),
    )
    proposalId = proposed.proposalId
    const own = await data.getRevision(team.fabricator, revisionId)
    const ownOutcomes = own.evaluation.items.flatMap(({ outcomes }) => decidedBy(outcomes))
    expect(ownOutcomes.length, 'the limits decide something').toBeGreaterThan(3)
    const others = JSON.stringify(design)
    secrets = [...new Set(ownOutcomes.flatMap(({ summary, margin }) => [summary, `${margin}`]))].filter(
      (text) => text.length > 6 && !others.includes(text),
    )
    expect(secrets.length).toBeGreaterThan(3)
  }, 400_000)

  it('is all there for the company’s own people', async () => {
    const view = await data.getRevision(team.fabricator, revisionId)
    expect(JSON.stringify(view).includes(`${LIMIT}`)).toBe(true)
    expect(view.limits.map(({ value }) => value)).toContain(LIMIT)
    const sheet = await data.getLimitList(team.fabricator, team.companies.brackenfold)
    expect(sheet.limits.map(({ value }) => value)).toContain(LIMIT)
    const fit = JSON.stringify(await data.getFabricationFit(team.fabricator, revisionId))
    expect(fit.includes(STRETCH.toFixed(3))).toBe(true)
  })

  it('decides the team’s results as it decides the company’s, by verdict and band', async () => {
    const own = await data.getRevision(team.fabricator, revisionId)
    const view = await data.getRevision(team.lead, revisionId)
    const withheld = view.evaluation.items.filter(({ outcomes }) => outcomes.some(({ kind }) => kind === 'withheld'))
    expect(withheld.length).toBeGreaterThan(2)
    for (const item of withheld) {
      const twin = own.evaluation.items.find(({ itemId }) => itemId === item.itemId)
      expect([item.itemId, item.verdict]).toEqual([item.itemId, twin?.verdict])
      // An item may be decided by another check of its own, whose limit is no secret: its sentence may carry figures.
      if (item.outcomes.some((outcome) => outcome.kind === 'decided' && item.headline.includes(outcome.summary)))
        continue
      expect(item.headline).toMatch(/the limit of Brackenfold Circuits \d+, which is not shown|^(?!.*\d\.\d)/)
    }
    const bands = new Set(
      withheld.flatMap(({ outcomes }) => outcomes.flatMap((o) => (o.kind === 'withheld' ? o.band : []))),
    )
    expect([...bands].every((band) => ['well-inside', 'near-limit', 'outside'].includes(band))).toBe(true)
    expect(view.checkedLimits.map(({ key }) => key).sort()).toEqual([...LENGTH_KEYS].sort())
    expect(JSON.stringify(view.limits)).not.toContain('Brackenfold')
  })

  it('is in no view, file or stream that goes to the team, an observer, an admin or a rival', async () => {
    for (const who of ['lead', 'member', 'quality', 'observer', 'auditor', 'rivalFabricator'] as const) {
      const actor = team[who]
      const view = await data.getRevision(actor, revisionId)
      expectNothingOf(`${who}: revision`, view)
      expectNothingOf(`${who}: results`, textOf(await data.exportResults(actor, revisionId)))
      expectNothingOf(`${who}: design`, textOf(await data.exportDesign(actor, revisionId)))
      expectNothingOf(`${who}: fit`, await data.getFabricationFit(actor, revisionId))
      expectNothingOf(`${who}: panels`, await data.getPanels(actor, revisionId))
      expectNothingOf(`${who}: costs`, await data.getCosts(actor, revisionId))
      expectNothingOf(`${who}: quotation`, await data.getQuotation(actor, revisionId, null))
      expectNothingOf(`${who}: remedies`, await data.getRemedyBases(actor, revisionId))
      expectNothingOf(`${who}: project`, await data.getProject(actor, team.projectId))
      expectNothingOf(`${who}: projects`, await data.listProjects(actor))
      expectNothingOf(`${who}: waits`, await data.listWaits(actor))
      expectNothingOf(`${who}: counts`, await data.listLeadCounts(actor))
      expectNothingOf(`${who}: companies`, await data.listCompanies(actor))
      expectNothingOf(`${who}: search`, await data.searchReviews(actor, 'limit'))
      expectNothingOf(
        `${who}: drawing`,
        textOf(await data.getDrawingFile(actor, revisionId, { format: 'svg', sheet: '1' })),
      )
      expectNothingOf(`${who}: live`, await data.listLiveEvents(actor, revisionId, 0))
    }
    for (const who of ['lead', 'member', 'quality', 'observer', 'auditor'] as const) {
      const actor = team[who]
      expectNothingOf(`${who}: trail`, await data.listRevisionTrail(actor, revisionId))
      expectNothingOf(`${who}: proposal`, await data.getProposal(actor, proposalId))
      const request = { projectId: team.projectId, from: { kind: 'revision' as const, id: revisionId } }
      expectNothingOf(
        `${who}: comparison`,
        await data.compareInProject(actor, { ...request, to: { kind: 'proposal', id: proposalId } }),
      )
    }
    expectNothingOf('admin: trail', textOf(await data.exportTrail(team.admin)))
    expectNothingOf('admin: companies', await data.listAllCompanies(team.admin))
    expectNothingOf('mail', JSON.stringify(await db().mailMessage.findMany()))
  }, 200_000)

  it('is in no recorded result: what is stored for the team holds none', async () => {
    const rows = await db().evaluation.findMany({ where: { revisionId } })
    expect(rows.length).toBeGreaterThan(0)
    for (const row of rows) expectNothingOf('recorded', unpackText(row.resultsJson))
  })

  it('cannot be found by trying values against a hash that is handed out', async () => {
    const { hash: before } = await hashOf()
    const key = 'coverlayWebMm'
    const set = (value: number, seenVersion: number) =>
      expectDone(
        data.setLimit(team.fabricator, { companyId: team.companies.brackenfold, key, value, note: '', seenVersion }),
      )
    await set(0.3, 1)
    const { hash: changed } = await hashOf()
    expect(changed).not.toBe(before)
    await set(LIMIT, 2)
    // The same value in another version: the hash is of the version, not of the value.
    expect((await hashOf()).hash).not.toBe(before)
  })

  const hashOf = async () => {
    const loaded = await inReadTransaction((tx) => loadRevision(tx, revisionId))
    return { hash: makeSnapshot(loaded, null).snapshot.limitsHash }
  }

  it('opens none of the company’s sheets, nor their files, to the team', async () => {
    const { brackenfold } = team.companies
    for (const actor of [team.lead, team.member]) {
      await expect(data.getLimitList(actor, brackenfold)).rejects.toThrow(data.NotAllowedError)
      for (const kind of ['matrix', 'shelf', 'panel-formats', 'process-rates', 'flex-tests'] as const) {
        await expect(data.getSheet(actor, brackenfold, kind), kind).rejects.toThrow(data.NotAllowedError)
        await expect(data.listSheetVersions(actor, brackenfold, kind), kind).rejects.toThrow(data.NotAllowedError)
      }
      const file = { companyId: brackenfold, kind: 'matrix' as const, format: 'csv' as const }
      await expect(data.exportSheetFile(actor, file)).rejects.toThrow(data.NotAllowedError)
    }
    for (const actor of [team.quality, team.observer, team.auditor, team.outsider, team.rivalFabricator]) {
      await expect(data.getLimitList(actor, brackenfold)).rejects.toThrow(data.NotFoundError)
      await expect(data.getCompany(actor, brackenfold)).rejects.toThrow(data.NotFoundError)
    }
  })

  it('an unsaved design is not held against it: a proposal says that it is checked when saved', async () => {
    const request = { projectId: team.projectId, from: { kind: 'base' as const, id: proposalId } }
    const { comparison } = await data.compareInProject(team.lead, {
      ...request,
      to: { kind: 'proposal', id: proposalId },
    })
    const { evaluation } = await data.getRevision(team.lead, revisionId)
    const told = new Set(
      evaluation.items.filter(({ outcomes }) => outcomes.some((o) => o.kind === 'withheld')).map((i) => i.itemId),
    )
    for (const { itemId, before, after } of comparison.verdicts) {
      if (told.has(itemId)) expect([before?.headline, after?.headline].join(' ')).toContain('Checked when saved')
    }
  })

  describe('once it was signed and released', () => {
    it('is in no file of the team’s package, nor in the report, nor in what was signed', async () => {
      await advance(team, revisionId)
      await answerEverything(team, revisionId)
      await advance(team, revisionId)
      await declareByBoth(team, revisionId)
      await answerEverything(team, revisionId)
      await advance(team, revisionId)
      await declareReview(team.quality, revisionId)
      await sign(team.lead, revisionId)
      const signature = await db().signature.findFirstOrThrow({ where: { revisionId } })
      expectNothingOf('signed content', signature.contentJson)
      const loaded = await inReadTransaction((tx) => loadRevision(tx, revisionId))
      const { snapshot } = makeSnapshot(loaded, null)
      const report = makeReport({
        snapshot,
        edition: { kind: 'team' },
        minutes: null,
        flexTests: [],
        drawing: makeDrawingSource(snapshot, 'Quillmoor Instruments', null),
        signedContent: signature.contentJson,
        trail: [],
        workspaceName: 'Quillmoor Instruments',
        release: { at: '2026-11-02T08:00:00.000Z', byName: 'Imke Dahl', terms: RELEASE_TERMS, replaces: null },
        signedParts: [],
        changes: { sinceIssue: null, sinceLooked: [] },
        members: [],
        chronology: [],
        artwork: [],
        artworkPicture: null,
        checkpoints: [],
      })
      expectNothingOf('report', report)
      const { version } = await data.getRevision(team.lead, revisionId)
      await expectDone(
        data.releaseRevision(team.lead, {
          revisionId,
          seenVersion: version,
          purpose: 'prototypes',
          password: PASSWORD,
        }),
      )
      for (const audience of ['team', team.companies.ostrel]) {
        const row = await db().package.findFirstOrThrow({ where: { revisionId, audience } })
        const archive = readArchive(await readKeptFile(row.sha256))
        if (!archive.ok) throw new Error('the package cannot be read')
        const files = archive.value
        expect(files.length).toBeGreaterThan(5)
        for (const { path, bytes } of files) {
          // A PDF's texts are numbers of glyphs among numbers of its own: the report is looked through above, the sheets as SVG.
          if (!path.endsWith('.pdf')) expectNothingOf(`${audience}/${path}`, new TextDecoder('latin1').decode(bytes))
        }
      }
    }, 300_000)
  })
})
