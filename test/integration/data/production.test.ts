import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { withNesting } from '@/lib/data/records/nesting'
import { NO_EXTRA, nestPart, type PanelFormat, readNestedPart } from '@/lib/fabrication'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
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
const SMALL: PanelFormat = { ...FORMAT, id: 'sheet', name: 'Ostrel sheet', widthMm: 280, heightMm: 400 }

describeOnBothDatabases('panels and cost of a revision', () => {
  let team: Team
  let revisionId: string

  const saveFormats = (who: 'brackenfold' | 'ostrel', formats: PanelFormat[], seenVersion = 0) =>
    data.saveSheet(who === 'brackenfold' ? team.fabricator : team.rivalFabricator, {
      companyId: team.companies[who],
      kind: 'panel-formats',
      seenVersion,
      issuedOn: '2026-11-02',
      note: '',
      content: { formats },
    })
  const getItem = async (itemId: string) => {
    const { evaluation } = await data.getRevision(team.lead, revisionId)
    return evaluation.items.find((item) => item.itemId === itemId)
  }

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 120_000)

  it('says what is missing before a fabricator states formats', async () => {
    const { fabricators } = await data.getPanels(team.lead, revisionId)
    expect(fabricators.map(({ estimate }) => estimate.ok)).toEqual([false, false])
    expect((await getItem('parts-per-panel'))?.verdict).toBe('needs-judgment')
    expect(await data.getRemedyBases(team.lead, revisionId)).toEqual([])
  })

  it('refuses formats that leave nothing of the panel, with the field', async () => {
    const outcome = await saveFormats('brackenfold', [{ ...FORMAT, marginLeftMm: 300, marginRightMm: 200 }])
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { kind: 'invalid', issues: [{ path: ['content', 'formats', 0, 'marginRightMm'] }] },
    })
  })

  it('lets the items decide once formats are there and the revision is evaluated again', async () => {
    await expectDone(saveFormats('brackenfold', [FORMAT]))
    await expectDone(saveFormats('ostrel', [SMALL]))
    await expectDone(data.evaluateAgain(team.lead, { revisionId }))
    const { fabricators } = await data.getPanels(team.lead, revisionId)
    const shares = fabricators.map(({ estimate, pricedFormatId }) => {
      if (!estimate.ok) throw new Error(estimate.reason)
      return estimate.nested.find(({ format }) => format.id === pricedFormatId)?.nesting.utilisationFraction ?? 0
    })
    const item = await getItem('parts-per-panel')
    expect(item?.verdict).toMatch(/meets|fails/)
    // The worst of the fabricators counts.
    expect(JSON.stringify(item)).toContain(String(Math.min(...shares)))
    expect((await getItem('construction-cost'))?.verdict).toMatch(/meets|fails/)
  })

  it('shows the team both, and each fabricator nothing of the other', async () => {
    const seen = async (actor: data.Actor) => {
      const views = [
        await data.getPanels(actor, revisionId),
        await data.getCosts(actor, revisionId),
        await data.getRemedyBases(actor, revisionId),
        await data.getRevision(actor, revisionId),
      ]
      return JSON.stringify(views)
    }
    const ofTeam = await seen(team.lead)
    expect(ofTeam).toContain('Brackenfold production panel')
    expect(ofTeam).toContain('Ostrel sheet')
    const ofOstrel = await seen(team.rivalFabricator)
    expect(ofOstrel).toContain('Ostrel sheet')
    expect(ofOstrel).not.toContain('Brackenfold')
    expect(ofOstrel).not.toContain(team.companies.brackenfold)
    const ofBrackenfold = await seen(team.fabricator)
    expect(ofBrackenfold).not.toContain('Ostrel')
  })

  it('keeps a fabricator’s rates from the other, and counts them for the team', async () => {
    const rates = {
      steps: [{ stepId: 'imaging', rateIndex: 98_765, setUpIndex: 1, yieldFraction: 0.99 }],
      registration: [],
    }
    await expectDone(
      data.saveSheet(team.fabricator, {
        companyId: team.companies.brackenfold,
        kind: 'process-rates',
        seenVersion: 0,
        issuedOn: '2026-11-02',
        note: '',
        content: rates,
      }),
    )
    await expect(data.getSheet(team.rivalFabricator, team.companies.brackenfold, 'process-rates')).rejects.toThrow(
      data.NotFoundError,
    )
    const { fabricators } = await data.getCosts(team.lead, revisionId, 500)
    const [brackenfold, ostrel] = (['brackenfold', 'ostrel'] as const).map((who) => {
      const view = fabricators.find(({ company }) => company.id === team.companies[who])
      return view?.estimate.ok === true ? view.estimate.cost : null
    })
    expect(brackenfold?.indexPerGoodPart).toBeGreaterThan(100 * (ostrel?.indexPerGoodPart ?? Infinity))
    expect(brackenfold?.quantity).toBe(500)
    expect(JSON.stringify(await data.getCosts(team.rivalFabricator, revisionId))).not.toContain('98765')
  })

  it('compares with the other revisions that the person sees and with ready-made constructions', async () => {
    const draftId = await makeRevision(team, 'skua-rev-b')
    const kindsFor = async (actor: data.Actor) => {
      const { fabricators } = await data.getCosts(actor, revisionId)
      return fabricators[0]?.constructions.map(({ kind, id }) => (kind === 'revision' ? id : kind)) ?? []
    }
    expect(await kindsFor(team.member)).toEqual(expect.arrayContaining(['this', draftId, 'ready-made']))
    expect(await kindsFor(team.fabricator)).not.toContain(draftId)
  })

  it('nests before the write, so that the write finds it done', async () => {
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const verticesMm: [number, number][] = [
      [0, 0],
      [41, 0],
      [41, 9],
      [9, 9],
      [9, 33],
      [0, 33],
    ]
    const changed = {
      ...design,
      features: { ...design.features, outline: { verticesMm, rollingDirection: null } },
    }
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: changed }))
    const reading = readNestedPart(changed)
    if (!reading.ok) throw new Error(reading.reason)
    // The same object again: it was remembered.
    const first = withNesting((nest) => nest(reading.part, FORMAT, NO_EXTRA))
    expect(withNesting((nest) => nest(reading.part, FORMAT, NO_EXTRA))).toBe(first)
    expect(first).toEqual(nestPart(reading.part, FORMAT, NO_EXTRA))
    const item = await getItem('parts-per-panel')
    expect(JSON.stringify(item)).toMatch(/\d+ parts per panel/)
  })

  it('an outline that crosses itself is refused with the edges', async () => {
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const verticesMm: [number, number][] = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]
    const outcome = await data.saveDesign(team.member, {
      revisionId,
      seenVersion: designVersion,
      design: { ...design, features: { ...design.features, outline: { verticesMm, rollingDirection: null } } },
    })
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { issues: [{ message: expect.stringContaining('meets the edge from corner 1') }] },
    })
  })
})
