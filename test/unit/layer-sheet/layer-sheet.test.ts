import { describe, expect, it } from 'vitest'
import { type Design, makeBlankDesign } from '@/lib/engine'
import type { LengthUnit } from '@/lib/engine/units'
import { readTableRow } from '@/lib/fabrication/table'
import { applyLayerSheet, makeLayerTable, readLayerBlock, writeLayerSheet, writeLayerTexts } from '@/lib/layer-sheet'
import { readClipboard } from '@/lib/spreadsheet/text'
import { readDemo } from '../remedies/demo'

/** What a paste of these cells makes of a design; throws where a cell is refused. */
function paste(design: Design, block: readonly (readonly string[])[], unit: LengthUnit = 'um'): Design {
  const reading = readLayerBlock(design, block, unit)
  if (reading === null) throw new Error('no headings were found')
  if (!reading.ok) throw new Error(reading.reasons.join('\n'))
  const table = makeLayerTable(design, reading.zones, unit)
  const entries = reading.rows.map((texts, index) => {
    const row = readTableRow(table, texts, index + 1)
    if (!row.ok) throw new Error(row.bad.map(({ column, reason }) => `${index + 1} ${column}: ${reason}`).join('\n'))
    return { layerId: null, texts, row: row.row }
  })
  return applyLayerSheet(design, table, reading.zones, entries)
}

const asTexts = (grid: readonly (readonly (string | number | null)[])[]): string[][] =>
  grid.map((row) => row.map((cell) => (cell === null ? '' : String(cell))))

/** The construction by names, without what a sheet does not hold. */
function nameConstruction(design: Design) {
  const { layers, zones } = design.construction
  const nameOf = (id: string) => layers.find((layer) => layer.id === id)?.name
  return {
    layers: layers.map(({ id: _, ...layer }) => layer),
    zones: zones.map(
      ({ id: _, contactFinish: __, throughExpansionPpmPerC, throughModulusGpa, glassTransitionDegC, ...zone }) => ({
        ...zone,
        presence: zone.presence
          .map(({ layerId, ...rest }) => ({ layer: nameOf(layerId), ...rest }))
          .sort((a, b) => ((a.layer ?? '') < (b.layer ?? '') ? -1 : 1)),
      }),
    ),
  }
}

/** A stackup as a fabricator's sheet may hold it, in mils and ounces. */
const IN_MILS = `Layer\tType\tMaterial\tThickness (mil)\tTol\tCarries\tCopper share\tPlating\tPlated +, um\tPlating ±, um\tLoss in process -, um\tZone: Board\tZone: Link
Zone kind\t\t\t\t\t\t\t\t\t\t\trigid\tflex
Zone length, in\t\t\t\t\t\t\t\t\t\t\t2\t1.5
Top cover\tcoverlay\tpi-coverlay\t1\t10%\t\t\t\t\t\t\t\tx
Cover adhesive\tAdhesive\tacrylic-adhesive\t1\t± 0.1\t\t\t\t\t\t\t\tx
L1\tCopper\tcopper-ra\t0.5 oz\t5%\tconductors\t55\tpanel\t25\t5\t1.5\tx\t40 %; plating none
Base\tbase film\tpi-base-adhesiveless\t1\t10%\t\t\t\t\t\t\tx\tx`

describe('the sheet of layers', () => {
  it.each(['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const)(
    'enters %s into an empty design by one paste of what it wrote, in any unit',
    (name) => {
      const demo = readDemo(name)
      for (const unit of ['um', 'mm', 'mil', 'in'] as const) {
        const entered = paste(makeBlankDesign(name), asTexts(writeLayerSheet(demo, unit)))
        expect(nameConstruction(entered)).toEqual(nameConstruction(demo))
        expect(entered.assumed).toEqual([])
      }
    },
  )

  it('reads a table in mils, inches and ounces under the headings of the trade', () => {
    const made = paste(makeBlankDesign('link'), readClipboard(IN_MILS))
    const { layers, zones } = made.construction
    expect(layers.map(({ kind, thicknessUm }) => [kind, thicknessUm])).toEqual([
      ['coverlay-film', 25.4],
      ['adhesive', 25.4],
      // Half an ounce of foil by the nominal of the foil standard, 34.3 um for one ounce (IPC-4562).
      ['conductor', 17.15],
      ['base-film', 25.4],
    ])
    expect(layers[0]).toMatchObject({ tolerancePlusUm: 2.54, toleranceMinusUm: 2.54 })
    expect(layers[1]).toMatchObject({ tolerancePlusUm: 2.54 })
    expect(layers[2]).toMatchObject({
      coverageFraction: 0.55,
      processingLossUm: 1.5,
      plating: { process: 'panel', thicknessUm: 25, toleranceUm: 5 },
    })
    expect(zones.map(({ name, kind, lengthMm }) => [name, kind, lengthMm])).toEqual([
      ['Board', 'rigid', 50.8],
      ['Link', 'flex', 38.1],
    ])
    expect(zones[1]?.presence.find(({ layerId }) => layerId === layers[2]?.id)).toMatchObject({
      coverageFraction: 0.4,
      platedCopper: 'none',
    })
    expect(made.assumed).toEqual([])
  })

  it('marks what an empty cell leaves open as assumed, also when the sheet leaves and comes back', () => {
    const made = paste(makeBlankDesign('open'), [
      ['Layer', 'Kind', 'Zone: Link'],
      ['L1', 'Conductor', 'x'],
    ])
    const [layer] = made.construction.layers
    const [zone] = made.construction.zones
    expect(made.assumed).toEqual([
      ...[
        'thicknessUm',
        'tolerancePlusUm',
        'toleranceMinusUm',
        'materialId',
        'coverageFraction',
        'plating',
        'processingLossUm',
      ].map((field) => `layers.${layer?.id}.${field}`),
      `zones.${zone?.id}.kind`,
    ])
    const again = paste(makeBlankDesign('again'), asTexts(writeLayerSheet(made, 'um')))
    expect(new Set(again.assumed)).toEqual(new Set(made.assumed))
  })

  it('keeps a layer the same one by its name when rows move, and exact values under another unit', () => {
    const demo = readDemo('skua-rev-b')
    const zones = demo.construction.zones.map(({ id, name }) => ({ id, name, facts: null }))
    const table = makeLayerTable(demo, zones, 'mil')
    const texts = writeLayerTexts(demo, table, zones)
    const read = (lines: readonly (readonly string[])[]) =>
      lines.map((line, index) => {
        const row = readTableRow(table, line, index + 1)
        if (!row.ok) throw new Error(JSON.stringify(row.bad))
        return { layerId: demo.construction.layers[index]?.id ?? null, texts: line, row: row.row }
      })
    expect(applyLayerSheet(demo, table, zones, read(texts))).toEqual(demo)
    const turned = applyLayerSheet(demo, table, zones, read([...texts].reverse()))
    expect(turned.construction.layers).toEqual([...demo.construction.layers].reverse())
  })

  it('leaves the zones alone where a table has none, and marks where a new layer was put', () => {
    const demo = readDemo('pipit-rev-a')
    const made = paste(demo, [
      ...asTexts(writeLayerSheet(demo, 'um')).map((row) => row.slice(0, -demo.construction.zones.length)),
      ['Shield', 'Shield film', '', '20'],
    ])
    expect(made.construction.zones.map(({ presence }) => presence.length)).toEqual(
      demo.construction.zones.map(({ presence }) => presence.length + 1),
    )
    expect(made.assumed.filter((mark) => mark.startsWith('zones.'))).toEqual(
      demo.construction.zones.map(({ id }) => `zones.${id}.presence`),
    )
  })

  it.each([
    ['Thickness', '1,5,0', 'contains a comma'],
    ['Thickness', '1 furlong', 'is not a unit of length known here'],
    ['Material', 'unobtainium', '"unobtainium" is no material for a conductor'],
    ['Copper share', '0.5', 'may be a fraction or a percentage'],
    ['Copper share', '140 %', 'more than 100 %'],
    ['Carries', 'water', 'is none of: conductors, plane, both'],
    ['Plated +', '25', 'say under Plating which process adds it'],
    ['Plating', 'panel', 'say how much copper the plating adds'],
    ['Zone: Link', '1', 'may be a mark or a share'],
    ['Zone: Link', 'perhaps', 'is not a share such as 40 %'],
  ])('refuses %s "%s" by its cell', (heading, text, reason) => {
    const block = [
      ['Layer', 'Kind', heading],
      ['L1', 'Conductor', text],
    ]
    expect(() => paste(makeBlankDesign('bad'), block)).toThrow(reason)
  })

  it('refuses copper in a film, a window with one end, and two columns of one zone', () => {
    const film = [
      ['Layer', 'Kind', 'Copper share'],
      ['Base', 'Base film', '50 %'],
    ]
    expect(() => paste(makeBlankDesign('film'), film)).toThrow('only copper has this')
    const window = [
      ['Layer', 'Kind', 'Zone: Finger'],
      ['Connector minimum, um', '', '270'],
      ['L1', 'Conductor', 'x'],
    ]
    expect(() => paste(makeBlankDesign('window'), window)).toThrow('Connector maximum of Finger: is empty')
    const twice = [
      ['Layer', 'Kind', 'Zone: A', 'Zone: a'],
      ['L1', 'Conductor', 'x', 'x'],
    ]
    expect(() => paste(makeBlankDesign('twice'), twice)).toThrow('Two columns are zone a')
  })

  it('takes a block without headings for cells, and names headings that it passes over', () => {
    const blank = makeBlankDesign('cells')
    expect(readLayerBlock(blank, [['25', '2.5']], 'um')).toBeNull()
    const reading = readLayerBlock(
      blank,
      [
        ['Layer', 'Kind', 'Resin content'],
        ['Bond', 'Bondply', '55 %'],
      ],
      'um',
    )
    expect(reading).toMatchObject({ ok: true, unknownHeadings: ['Resin content'] })
  })
})
