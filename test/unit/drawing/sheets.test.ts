import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type DrawnSheet,
  drawSheets,
  FILE_UNITS,
  makeSheetContents,
  PRINT_PALETTE,
  SHEET_SIZES,
  type SheetIdentity,
  type SheetSize,
  toSvg,
} from '@/lib/drawing'
import { evaluate, makeBlankDesign } from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { type DrawnDesign, loadDesign } from './demo-design'
import { findOutside, findOverlaps, listTextBoxes } from './sheet-boxes'
import { makeStressDesign } from './stress-design'

const IDENTITY: SheetIdentity = {
  ownerName: 'Quillmoor Instruments',
  projectName: 'Skua',
  title: 'Scanning head',
  partNumber: 'QI-1204',
  revisionLabel: 'B',
  issuedOn: '2027-03-03',
  status: 'released',
  createdBy: 'Mara Tolland',
  reviewedBy: [],
  loosenedBy: [],
  revisions: [],
  approvedBy: ['Ines Calder (lead engineer)'],
}

function draw({ design, evaluation }: DrawnDesign, size: SheetSize | null = null, identity = IDENTITY): DrawnSheet[] {
  return drawSheets(design, evaluation, { identity, units: FILE_UNITS, palette: PRINT_PALETTE, size })
}

const CASES: readonly (readonly [name: string, drawn: DrawnDesign])[] = [
  ['Skua A', loadDesign('skua-rev-a.json')],
  ['Skua B', loadDesign('skua-rev-b.json')],
  ['Pipit', loadDesign('pipit-rev-a.json')],
  ['twelve conductor layers, six zones, long names', makeStressDesign()],
  ['nothing yet', { design: makeBlankDesign('Blank'), evaluation: evaluate(makeBlankDesign('Blank')) }],
  ...listStartingConstructions().map((start): readonly [string, DrawnDesign] => {
    const design = start.makeDesign(start.name)
    return [start.name, { design, evaluation: evaluate(design) }]
  }),
]

describe.each(CASES)('drawing sheets: %s', (_name, drawn) => {
  test.each(SHEET_SIZES)('on %s no text leaves the frame or lies over another', (size) => {
    const sheets = draw(drawn, size)
    expect(sheets.flatMap(findOutside)).toEqual([])
    expect(sheets.flatMap(findOverlaps)).toEqual([])
  })

  test('no part reaches the title block or another part', () => {
    for (const { parts } of draw(drawn)) {
      parts.forEach((part, index) => {
        for (const other of parts.slice(index + 1)) {
          const across =
            Math.min(part.rect.x + part.rect.width, other.rect.x + other.rect.width) -
            Math.max(part.rect.x, other.rect.x)
          const down =
            Math.min(part.rect.y + part.rect.height, other.rect.y + other.rect.height) -
            Math.max(part.rect.y, other.rect.y)
          expect(across > 0 && down > 0, `${part.title} and ${other.title}`).toBe(false)
        }
      })
    }
  })

  test.each([null, ...SHEET_SIZES])(
    'every layer, zone, bend and stiffener has exactly one row, and every row is on a sheet of size %s',
    (size) => {
      const { design, evaluation } = drawn
      const blocks = makeSheetContents(design, evaluation, FILE_UNITS)
      const idsOf = (blockId: string) => {
        const block = blocks.find(({ id }) => id === blockId)
        return block?.kind === 'table' ? block.rows.map(({ id }) => id) : []
      }
      const ids = (things: readonly { readonly id: string }[]) => things.map(({ id }) => id)
      expect(idsOf('layers')).toEqual(ids(design.construction.layers))
      expect(idsOf('zones')).toEqual(ids(design.construction.zones))
      expect(idsOf('bends')).toEqual(ids(design.bends))
      expect(idsOf('holes')).toEqual(ids(design.features.holes))
      const described = new Set(design.features.stiffeners.map(({ layerId }) => layerId))
      const bare = design.construction.layers.filter(({ id, kind }) => kind === 'stiffener' && !described.has(id))
      expect(idsOf('stiffeners')).toEqual([...ids(design.features.stiffeners), ...ids(bare)])
      // What the tables say is drawn: every cell's text, wherever its lines broke.
      const letters = (text: string) => text.replaceAll(/\s+/gu, '')
      const sheets = draw(drawn, size)
      const lettersOf = (parts: Parameters<typeof listTextBoxes>[0][]) =>
        letters(
          parts
            .flatMap(listTextBoxes)
            .map(({ text }) => text)
            .join(''),
        )
      const onSheets = lettersOf(sheets)
      const notes = lettersOf(sheets.flatMap(({ parts }) => parts.filter(({ blockId }) => blockId === 'notes')))
        // A note may go on at another place, under the title again.
        .replaceAll('Notes,continued', '')
      for (const block of blocks) {
        if (block.kind === 'notes') for (const { text } of block.notes) expect(notes).toContain(letters(text))
        if (block.kind === 'table') {
          for (const { cells } of block.rows)
            for (const cell of cells) expect(onSheets).toContain(letters(cell).slice(0, 8))
        }
        expect(sheets.some(({ parts }) => parts.some(({ blockId }) => blockId.startsWith(block.id)))).toBe(
          block.kind !== 'table' || block.rows.length > 0,
        )
      }
    },
  )

  test('is the same whenever it is drawn', () => {
    expect(draw(drawn).map((sheet) => toSvg(sheet, 'mm'))).toEqual(draw(drawn).map((sheet) => toSvg(sheet, 'mm')))
  })
})

describe('the title block', () => {
  test('wraps long names and says what is missing', () => {
    const long =
      'A name that nobody would choose but that the form accepts, all hundred and twenty characters of it, word after word'
    const sheets = draw(loadDesign('skua-rev-b.json'), null, {
      ownerName: long,
      projectName: long,
      title: long,
      partNumber: '',
      revisionLabel: 'B',
      issuedOn: null,
      status: 'early review',
      createdBy: [long, long, long].join(', '),
      reviewedBy: [],
      loosenedBy: [],
      revisions: [],
      approvedBy: [],
    })
    expect(sheets.flatMap(findOutside)).toEqual([])
    expect(sheets.flatMap(findOverlaps)).toEqual([])
    const texts = sheets.flatMap(listTextBoxes).map(({ text }) => text)
    expect(texts).toContain('not approved')
    expect(texts).toContain('not issued')
    expect(texts.join(' ')).toContain('do not build')
  })

  test('has the revisions that were issued beside it on the first sheet, whatever their reasons', () => {
    const revisions = Array.from({ length: 30 }, (_, index) => ({
      label: `R${index + 1}`,
      change: index % 2 === 0 ? '' : `C-${index}: ${'the arm was too short and the window too narrow, '.repeat(8)}end`,
      releasedBy: index % 3 === 0 ? '' : 'Ines Calder',
      issuedOn: index === 29 ? null : '2027-03-03',
    }))
    for (const size of SHEET_SIZES) {
      const sheets = draw(loadDesign('skua-rev-b.json'), size, { ...IDENTITY, revisions })
      expect(sheets.flatMap(findOutside)).toEqual([])
      expect(sheets.flatMap(findOverlaps)).toEqual([])
      const texts = sheets.flatMap(listTextBoxes).map(({ text }) => text)
      for (const { label } of revisions) expect(texts).toContain(label)
      expect(texts).toContain('not issued')
    }
    const [entry] = revisions
    const [first] = draw(loadDesign('skua-rev-b.json'), null, {
      ...IDENTITY,
      revisions: entry === undefined ? [] : [entry],
    })
    expect(first?.parts.map(({ blockId }) => blockId)).toContain('revisions')
  })

  test('names every note that holds tolerances, and says so where none does', () => {
    const { design, evaluation } = loadDesign('skua-rev-b.json')
    const blank = makeBlankDesign('Blank').brief
    const unitsOf = (change: Partial<typeof blank>): string => {
      const changed = { ...design, brief: { ...design.brief, ...change } }
      const texts = draw({ design: changed, evaluation }).flatMap(listTextBoxes)
      const [titles, said] = [
        texts.filter(({ text }) => /^Tolerances( and datums)?:/.test(text)).length,
        texts.map(({ text }) => text).join(' '),
      ]
      return `${titles} ${/Tolerances as in the tables[^.]*\./.exec(said)?.[0]}`
    }
    const { tolerances } = blank
    expect(unitsOf({})).toMatch(/^2 Tolerances as in the tables and notes \d+ and \d+\.$/)
    expect(unitsOf({ toleranceScheme: '' })).toMatch(/^1 Tolerances as in the tables and note \d+\.$/)
    expect(unitsOf({ tolerances })).toMatch(/^1 Tolerances as in the tables and note \d+\.$/)
    expect(unitsOf({ tolerances, toleranceScheme: '' })).toBe(
      '0 Tolerances as in the tables; general tolerances are not stated.',
    )
  })

  test('counts the sheets', () => {
    const sheets = draw(makeStressDesign())
    expect(sheets.length).toBeGreaterThan(3)
    sheets.forEach((sheet, index) => {
      const texts = listTextBoxes(sheet).map(({ text }) => text)
      expect(texts).toContain(`${index + 1} of ${sheets.length}`)
    })
  })
})

describe('units', () => {
  test('follow the choice, and are stated', () => {
    const { design, evaluation } = loadDesign('skua-rev-b.json')
    const [first] = drawSheets(design, evaluation, {
      identity: IDENTITY,
      units: { thickness: 'mil', plan: 'mil' },
      palette: PRINT_PALETTE,
      size: null,
    })
    const texts = first === undefined ? [] : listTextBoxes(first).map(({ text }) => text)
    expect(texts.join(' ')).toContain('Thickness in mil, plan in mil.')
    // 25.4 um are one mil: 25 um of polyimide read 0.984252, six digits, as nobody typed it in mil.
    expect(texts).toContain('0.984252')
  })
})

describe('any design', () => {
  const { design: whole } = makeStressDesign()
  /** Anything that may be typed as a name, in any script. */
  const name = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 60 })
    .map((text) => text.replaceAll(/[\p{Cc}\p{Cs}\s]+/gu, ' ').trim() || 'x')

  test('fits, whatever its zones, bends, holes and names', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: whole.construction.zones.length }),
        fc.integer({ min: 0, max: whole.bends.length }),
        fc.integer({ min: 0, max: whole.features.holes.length }),
        fc.array(name, { minLength: 3, maxLength: 12 }),
        fc.constantFrom(...SHEET_SIZES),
        (zoneCount, bendCount, holeCount, names, size) => {
          const design = structuredClone(whole)
          design.construction.zones.splice(zoneCount)
          const zoneIds = new Set(design.construction.zones.map(({ id }) => id))
          design.bends.splice(bendCount)
          design.bends = design.bends.filter(({ zoneId }) => zoneIds.has(zoneId))
          design.features.holes.splice(holeCount)
          for (const hole of design.features.holes) hole.nearestBend = null
          const things = [
            ...design.construction.layers,
            ...design.construction.zones,
            ...design.bends,
            ...design.features.holes,
          ]
          things.forEach((thing, index) => {
            thing.name = names[index % names.length] ?? thing.name
          })
          const drawn = { design, evaluation: evaluate(design) }
          const sheets = draw(drawn, size)
          expect(sheets.flatMap(findOutside)).toEqual([])
          expect(sheets.flatMap(findOverlaps)).toEqual([])
          const rows = makeSheetContents(design, drawn.evaluation, FILE_UNITS).flatMap((block) =>
            block.kind === 'table' ? block.rows.map(({ id }) => `${block.id} ${id}`) : [],
          )
          expect(new Set(rows).size).toBe(rows.length)
          for (const { id } of design.construction.layers) expect(rows).toContain(`layers ${id}`)
          for (const { id } of design.construction.zones) expect(rows).toContain(`zones ${id}`)
          for (const { id } of design.bends) expect(rows).toContain(`bends ${id}`)
        },
      ),
      { numRuns: 15, seed: 20_261_125 },
    )
  }, 120_000)
})
