import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import type { PanelFormat } from '@/lib/fabrication'
import { quotationRequestSchema } from '@/lib/package/quotation'
import { readXlsx } from '@/lib/spreadsheet'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team, takePart } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const FORMAT: PanelFormat = {
  id: 'production',
  name: 'Brackenfold production panel',
  widthMm: 457.2,
  heightMm: 609.6,
  marginLeftMm: 20,
  marginRightMm: 20,
  marginTopMm: 20,
  marginBottomMm: 20,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}

describeOnBothDatabases('a request for quotation, and the first steps of a fabricator', () => {
  let team: Team
  let revisionId: string

  const saveFormats = (who: 'brackenfold' | 'ostrel', formats: PanelFormat[]) =>
    data.saveSheet(who === 'brackenfold' ? team.fabricator : team.rivalFabricator, {
      companyId: team.companies[who],
      kind: 'panel-formats',
      seenVersion: 0,
      issuedOn: '2026-11-02',
      note: '',
      content: { formats },
    })
  const ask = (actor: data.Actor, title: string, kind: 'engineering-query' | 'must-change') =>
    expectDone(
      data.openThread(actor, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind,
        title,
        text: 'Which is it?',
      }),
    )
  const fileFor = async (actor: data.Actor, companyId: string, format: string) =>
    data.getQuotationFile(actor, revisionId, { format, companyId })

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
    await expectDone(saveFormats('brackenfold', [FORMAT]))
    await expectDone(saveFormats('ostrel', [{ ...FORMAT, name: 'Ostrel sheet', widthMm: 250, heightMm: 400 }]))
    await ask(team.fabricator, 'Query of Brackenfold', 'engineering-query')
    await ask(team.rivalFabricator, 'Query of Ostrel', 'engineering-query')
    await ask(team.member, 'Word within the team', 'must-change')
  }, 240_000)

  it('asks the fabricator that the team picks, with its panel and its threads alone', async () => {
    const { brackenfold, ostrel } = team.companies
    const view = await data.getQuotation(team.lead, revisionId, ostrel)
    expect(view.companies.map(({ id }) => id).toSorted()).toEqual([brackenfold, ostrel].toSorted())
    const text = JSON.stringify(view.quotation)
    expect(text).toContain('Ostrel sheet')
    expect(text).toContain('Query of Ostrel')
    for (const other of ['Brackenfold', brackenfold, 'Word within the team']) expect(text).not.toContain(other)
    const own = await data.getQuotation(team.rivalFabricator, revisionId, null)
    expect(own.quotation?.request).toEqual(view.quotation?.request)
    expect(own.companies.map(({ id }) => id)).toEqual([ostrel])
    expect(own.isFabricator).toBe(true)
  })

  it('gives the same request as JSON, XLSX and PDF', async () => {
    const { brackenfold } = team.companies
    const { quotation } = await data.getQuotation(team.observer, revisionId, brackenfold)
    const json = await fileFor(team.observer, brackenfold, 'json')
    expect(quotationRequestSchema.parse(JSON.parse(new TextDecoder().decode(json.bytes)))).toEqual(quotation?.request)
    const sheet = readXlsx((await fileFor(team.fabricator, brackenfold, 'xlsx')).bytes)
    expect(sheet.ok && sheet.grid.rows[0]?.[0]).toBe('Request for quotation')
    const pdf = await fileFor(team.fabricator, brackenfold, 'pdf')
    expect(pdf.fileName).toMatch(/brackenfold.*request-for-quotation\.pdf$/)
    expect(new TextDecoder('latin1').decode(pdf.bytes.slice(0, 5))).toBe('%PDF-')
  }, 60_000)

  it('is not found for another fabricator, for a company that is not shared with, and in an unknown format', async () => {
    const { brackenfold, ostrel, team: own } = team.companies
    const missing = [
      () => data.getQuotation(team.fabricator, revisionId, ostrel),
      () => fileFor(team.fabricator, ostrel, 'json'),
      () => fileFor(team.rivalFabricator, brackenfold, 'pdf'),
      () => fileFor(team.lead, own, 'json'),
      () => fileFor(team.lead, brackenfold, 'docx'),
      () => fileFor(team.outsider, brackenfold, 'json'),
    ]
    for (const call of missing) await expect(call()).rejects.toThrow(data.NotFoundError)
  })

  it('has no panel for the team where the fabricator does not show its formats, and has it for the fabricator', async () => {
    const { brackenfold } = team.companies
    await takePart(team.projectId, brackenfold, { matrix: 'shown', shelf: 'shown', rates: 'not-shared' })
    const seen = await data.getQuotation(team.lead, revisionId, brackenfold)
    expect(JSON.stringify(seen)).not.toContain('Brackenfold production panel')
    expect(seen.quotation?.priced).toBeNull()
    expect(seen.quotation?.request.panel.because).toContain('does not show its panel formats')
    expect(JSON.stringify(await data.getQuotation(team.fabricator, revisionId, brackenfold))).toContain(
      'Brackenfold production panel',
    )
    expect(new TextDecoder().decode((await fileFor(team.lead, brackenfold, 'json')).bytes)).not.toContain(
      'Brackenfold production panel',
    )
  })

  it('tells a fabricator what it has stated, what the team gets to see, and which revisions it is asked about', async () => {
    const start = await data.getFabricatorStart(team.fabricator, team.projectId)
    expect(start?.company.id).toBe(team.companies.brackenfold)
    expect(start?.sheets.map(({ kind, state, version }) => [kind, state, version])).toEqual([
      ['matrix', 'not-stated', null],
      ['shelf', 'not-stated', null],
      ['panel-formats', 'stated', 1],
      ['process-rates', 'not-stated', null],
    ])
    expect(start?.sharing).toEqual({ matrix: 'shown', shelf: 'shown', rates: 'not-shared' })
    const { design } = await data.getRevision(team.fabricator, revisionId)
    expect(start?.revisions).toMatchObject([{ id: revisionId, neededOn: design.brief.needDate }])
    expect(JSON.stringify(start)).not.toContain('Ostrel')
    expect(await data.getFabricatorStart(team.lead, team.projectId)).toBeNull()
    await expectDone(
      data.saveSheet(team.fabricator, {
        companyId: team.companies.brackenfold,
        kind: 'matrix',
        seenVersion: 0,
        issuedOn: '2026-11-02',
        note: '',
        content: { rows: [] },
      }),
    )
    const after = await data.getFabricatorStart(team.fabricator, team.projectId)
    expect(after?.sheets[0], 'a matrix without a row says nothing yet').toMatchObject({ state: 'empty', version: 1 })
    await expect(data.getFabricatorStart(team.outsider, team.projectId)).rejects.toThrow(data.NotFoundError)
  })
})
