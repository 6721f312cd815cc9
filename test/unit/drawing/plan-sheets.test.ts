import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type DrawnSheet, drawSheets, FILE_UNITS, makeSheetContents, PRINT_PALETTE, SHEET_SIZES } from '@/lib/drawing'
import type { Design } from '@/lib/engine'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { loadDesign } from './demo-design'
import { findOutside, findOverlaps, listTextBoxes } from './sheet-boxes'

const { design: whole, evaluation } = loadDesign('skua-rev-b.json')

const draw = (design: Design, size: (typeof SHEET_SIZES)[number] | null = null): DrawnSheet[] =>
  drawSheets(design, evaluation, {
    identity: {
      ownerName: 'Quillmoor Instruments',
      projectName: 'Skua',
      title: 'Scanning head',
      partNumber: 'QI-2041',
      revisionLabel: 'B',
      issuedOn: null,
      status: 'early review',
      createdBy: 'Mara Tolland',
      reviewedBy: [],
      loosenedBy: [],
      revisions: [],
      approvedBy: [],
    },
    units: FILE_UNITS,
    palette: PRINT_PALETTE,
    size,
  })

const rowsOf = (design: Design, id: string) => {
  const block = makeSheetContents(design, evaluation, FILE_UNITS).find((each) => each.id === id)
  return block?.kind === 'table' ? block.rows : []
}

describe.each(['skua-rev-a', 'skua-rev-a-alternative', 'skua-rev-b', 'pipit-rev-a'])(
  'the plan of %s on its sheet',
  (name) => {
    const drawn = loadDesign(`${name}.json`)
    const plan = drawn.design.plan as Plan

    test('has a row, with its place, for each thing that is drawn', () => {
      const rows = (id: string) => rowsOf(drawn.design, id)
      expect(rows('bend-lines').map(({ id }) => id)).toEqual(plan.bendLines.map(({ id }) => id))
      expect(rows('hole-places').map(({ id }) => id)).toEqual(plan.holes.map(({ id }) => id))
      expect(rows('plan-dimensions').map(({ id }) => id)).toEqual(plan.dimensions.map(({ id }) => id))
      expect(rows('plan-shapes')).toHaveLength(
        plan.stiffeners.length +
          plan.coverlayOpenings.length +
          plan.components.length +
          plan.connectorEnds.length +
          plan.pads.length,
      )
      const points = rows('plan-points').filter(({ id }) => id.startsWith('outline-'))
      expect(points.map(({ cells }) => [Number(cells[2]), Number(cells[3])])).toEqual(
        plan.outline?.map(({ atMm }) => [...atMm]),
      )
    })

    test('names every zone, bend, hole, stiffener and datum in the view', () => {
      const sheets = draw(drawn.design)
      const view = sheets.flatMap(({ parts }) => parts.filter(({ blockId }) => blockId === 'plan'))
      const texts = new Set(view.flatMap(listTextBoxes).map(({ text }) => text))
      const expected = [
        ...drawn.design.construction.zones.map((_, index) => `Z${index + 1}`),
        ...drawn.design.bends.map((_, index) => `B${index + 1}`),
        ...drawn.design.features.holes.map((_, index) => `H${index + 1}`),
        ...plan.stiffeners.map((_, index) => `S${index + 1}`),
        ...plan.datums.map(({ letter }) => `[${letter}]`),
      ]
      for (const text of expected) expect(texts, text).toContain(text)
    })
  },
)

const mm = (low: number, high: number) =>
  fc.integer({ min: Math.round(low * 1000), max: Math.round(high * 1000) }).map((um) => um / 1000)
const point = (reach: number): fc.Arbitrary<[number, number]> => fc.tuple(mm(-reach, reach), mm(-reach, reach))
const numbered = <T extends object>(arb: fc.Arbitrary<T>, maxLength: number) =>
  fc.array(arb, { maxLength }).map((list) => list.map((each, at) => ({ ...each, id: `e-${at + 1}` })))

/** Any plan: a rectangle of any size with some of its sides bulging, and things anywhere, off the part as well. */
const anyPlan: fc.Arbitrary<Plan> = fc
  .tuple(mm(1, 600), mm(1, 400))
  .chain(([width, height]) => {
    const place = point(Math.max(width, height))
    const bulge = (mm: number) => Math.round(mm * 1e6) / 1e6
    const outline: NonNullable<Plan['outline']> = [
      { atMm: [0, 0], viaMm: null },
      { atMm: [width, 0], viaMm: [bulge(width + height / 4), bulge(height / 2)] },
      { atMm: [width, height], viaMm: null },
      { atMm: [0, height], viaMm: null },
    ]
    const box = fc.tuple(place, mm(0.1, 30), mm(0.1, 30)).map(([[x, y], w, h]) =>
      [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ].map(([px = 0, py = 0]) => ({
        atMm: [Math.round(px * 1e6) / 1e6, Math.round(py * 1e6) / 1e6] as [number, number],
        viaMm: null,
      })),
    )
    return fc.record({
      outline: fc.constant(outline),
      bendLines: numbered(fc.record({ bendId: fc.constantFrom('hinge', 'fold'), fromMm: place, toMm: place }), 8),
      holes: numbered(
        fc.record({
          holeId: fc.constantFrom('via-l2-l3', 'board-vias', 'mounting'),
          atMm: place,
          columns: fc.integer({ min: 1, max: 6 }),
          rows: fc.integer({ min: 1, max: 6 }),
          columnStepMm: fc.constant<[number, number]>([1.5, 0]),
          rowStepMm: fc.constant<[number, number]>([0, 1.5]),
        }),
        20,
      ),
      stiffeners: numbered(fc.record({ stiffenerId: fc.constant('finger-stiffener-part'), nodes: box }), 4),
      components: numbered(
        fc.record({
          componentId: fc.constant('detector'),
          face: fc.constant('top' as const),
          nodes: box,
          heightMm: fc.constant(1),
        }),
        8,
      ),
      dimensions: numbered(
        fc.record({
          direction: fc.constantFrom('along-x' as const, 'along-y' as const, 'straight' as const),
          fromMm: place,
          toMm: place,
          plusMm: fc.constantFrom(null, 0.1),
          minusMm: fc.constantFrom(null, 0.25),
          isReference: fc.boolean(),
        }),
        25,
      ),
      notes: numbered(fc.record({ text: fc.string({ maxLength: 200 }), atMm: place }), 8),
      markings: numbered(
        fc.record({
          text: fc.constant('QI-2041 B'),
          face: fc.constant('top' as const),
          atMm: place,
          heightMm: fc.constant(1),
        }),
        6,
      ),
      rollingDirectionDeg: fc.constantFrom(null, 0, 37, 90),
    })
  })
  .map((drawn) => ({ ...EMPTY_PLAN, ...drawn }))

describe('any plan', () => {
  test('is drawn without a text over another or past the frame, and what the view leaves out stands in a table', () => {
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(...SHEET_SIZES), (plan, size) => {
        const design: Design = { ...whole, plan }
        const sheets = draw(design, size)
        expect(sheets.flatMap(findOutside)).toEqual([])
        expect(sheets.flatMap(findOverlaps)).toEqual([])
        for (const [table, list] of [
          ['bend-lines', plan.bendLines],
          ['hole-places', plan.holes],
          ['plan-dimensions', plan.dimensions],
        ] as const) {
          expect(rowsOf(design, table)).toHaveLength(list.length)
        }
      }),
      { numRuns: 40, seed: 20_261_129 },
    )
  }, 120_000)
})

const ARRAY: NonNullable<Plan['array']> = {
  columns: 3,
  rows: 2,
  columnStepMm: 120,
  rowStepMm: 70,
  frameMm: 8,
  tabs: [{ id: 'tab', atMm: [0, 8], widthMm: 2 }],
  fiducials: [{ id: 'mark', atMm: [-4, -4] }],
}

describe('views beside the plan', () => {
  const withArray = (array: Plan['array']): Design => ({ ...whole, plan: { ...(whole.plan as Plan), array } })
  const partOf = (design: Design, id: string) =>
    draw(design)
      .flatMap(({ parts }) => parts)
      .find(({ blockId }) => blockId === id)
  const textIn = (design: Design, id: string) => JSON.stringify(partOf(design, id)?.nodes)

  test('the part folded stands on the sheet with the box that it fills, and not where it cannot be folded', () => {
    expect(partOf(whole, 'folded')?.title).toBe('Part folded')
    expect(textIn(whole, 'folded')).toMatch(/fills a box of .*mm/)
    expect(partOf({ ...whole, plan: { ...(whole.plan as Plan), bendLines: [] } }, 'folded')).toBeUndefined()
  })

  test('the array shows each part at its step, with the size over all that step, frame and outline give', () => {
    const text = textIn(withArray(ARRAY), 'array')
    // 114 by 63 mm of outline, two steps along x and one along y, a frame of 8 mm on all sides.
    expect(text).toContain('370 mm by 149 mm over all')
    const paths = partOf(withArray(ARRAY), 'array')?.nodes.filter(({ tag }) => tag === 'path')
    expect(paths).toHaveLength(3 * 2)
  })

  test('an array whose step nobody knows is not drawn', () => {
    expect(partOf(withArray({ ...ARRAY, columnStepMm: null }), 'array')).toBeUndefined()
    expect(partOf(withArray({ ...ARRAY, rows: 1, rowStepMm: null }), 'array')).toBeDefined()
  })

  test('nothing is cut or overprinted with them', () => {
    for (const sheet of draw(withArray(ARRAY))) {
      expect(findOutside(sheet)).toEqual([])
      expect(findOverlaps(sheet)).toEqual([])
    }
  })
})

/** A strip of 60 by 20 mm with an inside corner, and a slit whose one end lies within it. */
const STOPPED: Plan = {
  ...EMPTY_PLAN,
  outline: (
    [
      [0, 0],
      [60, 0],
      [60, 20],
      [30, 20],
      [30, 10],
      [0, 10],
    ] as const
  ).map(([x, y]) => ({ atMm: [x, y], viaMm: null })),
  slits: [
    {
      id: 'cut',
      name: 'Parting',
      slitId: 'parting',
      nodes: [
        { atMm: [60, 5], viaMm: null },
        { atMm: [45, 5], viaMm: null },
      ],
      widthMm: 0.3,
      startReliefDiameterMm: null,
      endReliefDiameterMm: 1,
    },
  ],
  corners: [{ id: 'inner', cornerId: 'inner', atMm: [30, 10] }],
}

const lengthOfPath = (d: string) => {
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = (d.match(/-?\d+\.?\d*/g) ?? []).map(Number)
  return Math.round(Math.hypot(x2 - x1, y2 - y1) * 10) / 10
}

describe('details of the border', () => {
  const design = (tearStop: boolean | null, plan: Plan = STOPPED): Design => ({
    ...whole,
    plan,
    features: {
      ...whole.features,
      outlineCorners: [
        { id: 'inner', name: 'Inner corner', insideRadiusMm: 0, bordersFlex: true, isPulled: true, tearStop },
      ],
      slits: [{ id: 'parting', name: 'Parting of the leaves', endReliefDiameterMm: 1, widthMm: 0.3, tearStop }],
    },
  })
  const partsOf = (drawn: Design) =>
    draw(drawn).flatMap(({ parts }) => parts.filter(({ blockId }) => blockId === 'plan'))
  const textsOf = (drawn: Design) =>
    partsOf(drawn)
      .flatMap(listTextBoxes)
      .map(({ text }) => text)

  test('a tear stop is marked at each of its places, named there and in the table, and drawn larger with its sizes', () => {
    const texts = textsOf(design(true))
    expect(texts).toEqual(expect.arrayContaining(['T1', 'T2', 'D1', 'D2']))
    const said = texts.join(' ')
    expect(said).toContain('D1, scale 20:1')
    expect(said).toContain('Inner corner: inside radius 0 mm, tear stop T1; at (30, 10).')
    expect(said).toContain('Parting of the leaves: width 0.3 mm, relief diameter 1 mm, tear stop T2; end at (45, 5).')
    expect(rowsOf(design(true), 'outline-details').map(({ cells }) => cells[3])).toEqual(['yes, T1', 'yes, T2'])
  })

  test('where none is stated none is marked, and the end of a slit still has its detail', () => {
    const said = textsOf(design(false)).join(' ')
    expect(said).not.toMatch(/\bT1\b|Squares/)
    expect(said).not.toContain('Inner corner')
    expect(said).toContain('relief diameter 1 mm, no tear stop stated; end at (45, 5).')
    expect(rowsOf(design(false), 'outline-details').map(({ cells }) => cells[3])).toEqual(['no', 'no'])
  })

  test('what the view shows large enough has no detail', () => {
    const [slit] = STOPPED.slits
    const wide = { ...STOPPED, slits: slit === undefined ? [] : [{ ...slit, endReliefDiameterMm: 5 }] }
    expect(textsOf(design(false, wide)).join(' ')).not.toMatch(/\bD1\b/)
  })

  test('a detail draws the slit itself, from its relief to the rim of the circle, and the border of a zone', () => {
    const { design: skua } = loadDesign('skua-rev-b.json')
    const nodes = partsOf(skua).flatMap((part) => part.nodes)
    // 1 mm dashes of a border that is straight: within the circle of 30 mm that a detail is drawn in.
    const lines = nodes.filter(({ attributes }) => attributes['stroke-dasharray'] === '1 1')
    expect(lines.length).toBeGreaterThan(skua.plan?.dividingLines.length ?? 0)
    const widths = partsOf(design(false))
      .flatMap((part) => part.nodes)
      .filter(({ tag, attributes }) => tag === 'path' && attributes['stroke-width'] === 3 + 0.5)
    // 0.3 mm at 10:1 between two edges, as far as the circle of 15 mm reaches.
    expect(widths.map(({ attributes }) => lengthOfPath(String(attributes.d)))).toEqual([15])
  })

  test('a detail draws the relief at its scale: 1 mm at 10:1 is a circle of 10 mm', () => {
    const widths = partsOf(design(false))
      .flatMap(({ nodes }) => nodes)
      .flatMap(({ tag, attributes }) => {
        const d = String(attributes.d ?? '')
        const numbers = (d.match(/-?\d+\.?\d*/g) ?? []).map(Number)
        const xs = numbers.filter((_, index) => index % 2 === 0)
        return tag === 'path' && d.includes('L') && numbers.length > 100 ? [Math.max(...xs) - Math.min(...xs)] : []
      })
    expect(textsOf(design(false)).join(' ')).toContain('D1, scale 10:1')
    expect(widths.some((width) => Math.abs(width - 10) < 0.03)).toBe(true)
  })
})
