import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { readArchive } from '@/lib/package'
import { sha256Hex } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { describeOnBothDatabases } from '@/test/setup/databases'

const VIEWERS = ['lead', 'secondLead', 'member', 'observer', 'fabricator', 'rivalFabricator'] as const

describeOnBothDatabases('the drawing of a revision', (current) => {
  it('is one, byte for byte, for everybody, and names who made the design and nobody who answered', async () => {
    const { team, revisionId } = await current().startFrom('fabricator-review')
    // A member answered and uploads; fabricators answered, and one sends a file: none of them drew anything.
    await expectDone(
      data.addArtwork(team.secondLead, {
        revisionId,
        fileName: 'outline.gbr',
        bytes: new TextEncoder().encode('%FSLAX46Y46*%\nM02*\n'),
      }),
    )
    const view = await data.getRevision(team.fabricator, revisionId)
    const own = view.items.find(({ mayAnswer }) => mayAnswer)
    if (own === undefined) throw new Error('there is an item that a fabricator answers')
    const bytes = new TextEncoder().encode('measured\n')
    const target = { kind: 'item' as const, itemId: own.itemId }
    await expectDone(data.attachFile(team.fabricator, { revisionId, target, fileName: 'measured.txt', bytes }))

    const identities = await Promise.all(VIEWERS.map((who) => data.getSheetIdentity(team[who], revisionId)))
    const { createdBy } = await data.getRevision(team.lead, revisionId)
    for (const identity of identities) expect(identity).toEqual(identities[0])
    expect(identities[0]?.createdBy).toBe(`${createdBy.name} (design), Sunniva Pell (artwork)`)
    for (const wanted of [
      { format: 'svg', sheet: '1' },
      { format: 'pdf', sheet: null },
    ] as const) {
      const prints = new Set<string>()
      for (const who of VIEWERS) prints.add(sha256Hex((await data.getDrawingFile(team[who], revisionId, wanted)).bytes))
      expect(prints.size, wanted.format).toBe(1)
    }
  }, 400_000)

  it('names a person of the team who changed the design', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    const { design, designVersion, createdBy } = await data.getRevision(team.secondLead, revisionId)
    const changed = { ...design, name: `${design.name}, second draft` }
    await expectDone(data.saveDesign(team.secondLead, { revisionId, seenVersion: designVersion, design: changed }))
    const { createdBy: named } = await data.getSheetIdentity(team.observer, revisionId)
    expect(named).toBe(`${createdBy.name} (design), Sunniva Pell (design)`)
  }, 400_000)

  it('is the same in every edition of the package as on the page', async () => {
    const { team, revisionId } = await current().startFrom('released')
    const drawn = new Set<string>()
    for (const who of ['lead', 'fabricator', 'rivalFabricator'] as const) {
      const read = readArchive((await data.getPackageFile(team[who], revisionId)).bytes)
      if (!read.ok) throw new Error('the package cannot be read')
      const sheets = read.value.filter(({ path }) => path.startsWith('drawing/'))
      drawn.add(sheets.map(({ path, bytes }) => `${path} ${sha256Hex(bytes)}`).join('\n'))
    }
    expect(drawn.size).toBe(1)
    const pdf = await data.getDrawingFile(team.observer, revisionId, { format: 'pdf', sheet: null })
    const svg = await data.getDrawingFile(team.fabricator, revisionId, { format: 'svg', sheet: '1' })
    expect([...drawn][0]).toContain(`drawing/sheets.pdf ${sha256Hex(pdf.bytes)}`)
    expect([...drawn][0]).toContain(`drawing/sheet-1.svg ${sha256Hex(svg.bytes)}`)
  }, 400_000)
})
