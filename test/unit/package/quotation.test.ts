import { beforeAll, describe, expect, it } from 'vitest'
import { drawPlanPicture, PRINT_PALETTE } from '@/lib/drawing'
import { CAUTIONS, type Design, evaluate } from '@/lib/engine'
import { estimate, makeNester, NO_EXTRA, nestPart, type PanelFormat, readNestedPart } from '@/lib/fabrication'
import { writeQuotationJson, writeQuotationPdf, writeQuotationXlsx } from '@/lib/package'
import {
  listQuotationTables,
  makeQuotationRequest,
  QUOTATION_STATEMENT,
  type QuotationRequest,
  quotationRequestSchema,
  writeQuotationCell,
} from '@/lib/package/quotation'
import { findDrawingGaps } from '@/lib/review'
import { readXlsx } from '@/lib/spreadsheet'
import { readDemoDesign, readDrawnDesign } from '../engine-assembly/demo-design-files'
import { readPdfPages } from './pdf-text'

const FORMAT: PanelFormat = {
  id: 'production',
  name: 'Production panel',
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

type Source = Parameters<typeof makeQuotationRequest>[0]

const THREADS: Source['threads'] = [
  {
    kind: 'engineering-query',
    state: 'open',
    title: 'Foil of L2',
    anchorKind: 'layer',
    anchorLabel: 'L2',
    dueOn: '2026-12-01',
  },
  {
    kind: 'must-change',
    state: 'answered',
    title: 'Move the hole',
    anchorKind: 'revision',
    anchorLabel: '',
    dueOn: null,
  },
  {
    kind: 'must-change',
    state: 'closed',
    title: 'Settled long ago',
    anchorKind: 'revision',
    anchorLabel: '',
    dueOn: null,
  },
  {
    kind: 'engineering-query',
    state: 'open',
    title: 'Which shelf',
    anchorKind: 'item',
    anchorLabel: 'Is it held?',
    dueOn: null,
  },
  { kind: 'note', state: 'open', title: 'By the way', anchorKind: 'revision', anchorLabel: '', dueOn: null },
]

function makeSource(design: Design, change: Partial<Source> = {}): Source {
  return {
    design,
    zones: evaluate(design).zones,
    project: 'Skua',
    revision: 'B',
    stage: 'fabricator-review',
    from: 'Quillmoor Instruments',
    to: 'Brackenfold Circuits',
    today: '2026-11-23',
    estimate: estimate(design, { formats: { formats: [FORMAT] }, rates: null }, makeNester()),
    isPanelShown: true,
    threads: THREADS,
    ...change,
  }
}

const lettersOf = (text: string) => text.replaceAll(/[\s\u200b]+/g, '')
const drawn = readDrawnDesign('skua-rev-b')

describe('what a request for quotation says', () => {
  let request: QuotationRequest
  beforeAll(() => {
    request = makeQuotationRequest(makeSource(drawn))
  }, 60_000)

  it('has the layers of the design, top face first, with thickness and tolerance as they are bought', () => {
    const { layers } = drawn.construction
    expect(request.layers.map(({ name, thicknessUm }) => [name, thicknessUm])).toEqual(
      layers.map(({ name, thicknessUm }) => [name, thicknessUm]),
    )
    expect(request.layers.map(({ position }) => position)).toEqual(layers.map((_, index) => index + 1))
    const film = request.layers.find(({ name }) => name === 'Flexible base film')
    const hinge = drawn.construction.zones.find(({ name }) => name === 'Hinge')
    expect(film?.zones).toContain('Hinge')
    expect(request.layers.filter(({ zones }) => zones.includes('Hinge'))).toHaveLength(hinge?.presence.length ?? -1)
  })

  it('has the finished thickness of each zone as the engine works it out', () => {
    const results = evaluate(drawn).zones
    expect(request.zones.map(({ name, finishedUm }) => [name, finishedUm?.nominal, finishedUm?.high])).toEqual(
      results.map(({ name, thicknessUm, worstCaseUm }) => [name, thicknessUm, worstCaseUm.high]),
    )
  })

  it('counts parts on the panel as nesting does, and panels as cost does', () => {
    const reading = readNestedPart(drawn)
    const found = makeSource(drawn).estimate
    if (!reading.ok || !found.ok || found.cost === null) throw new Error('the demo part has an outline and fits')
    const [format] = request.panel.formats
    const extra = found.nested[0] ?? { ...NO_EXTRA }
    expect(format?.partsPerPanel).toBe(nestPart(reading.part, FORMAT, extra).count)
    expect(format?.partsPerPanel).toBeGreaterThan(1)
    expect(format?.panelAreaPerPartMm2).toBeCloseTo((457.2 * 609.6) / (format?.partsPerPanel ?? 1), 6)
    expect(request.panel.panelsPerYear).toBe(found.cost.panelCount)
    expect(request.panel.sheetAreaPerYearM2).toBeCloseTo((found.cost.panelCount ?? 0) * 0.4572 * 0.6096, 9)
    expect(request.panel.panelsPerYear).toBeGreaterThanOrEqual(Math.ceil(2400 / (format?.partsPerPanel ?? 1)))
    // The parts lie on the panel: more than their area they cannot use of it.
    expect((format?.usedFraction ?? 1) * 457.2 * 609.6).toBeGreaterThan((request.outline?.areaMm2 ?? 0) * 0.99)
  })

  it('asks what a fabricator would still ask, after what is talked about, and nothing that is settled', () => {
    expect(request.openPoints.slice(0, 3).map(({ kind, text, about, dueOn }) => [kind, text, about, dueOn])).toEqual([
      ['must-change', 'Move the hole', 'the whole revision', null],
      ['engineering-query', 'Foil of L2', 'layer L2', '2026-12-01'],
      ['engineering-query', 'Which shelf', 'the item “Is it held?”', null],
    ])
    expect(request.openPoints.slice(3).map(({ text }) => text)).toEqual(
      findDrawingGaps(drawn).map(({ question }) => question),
    )
    const blank = makeQuotationRequest(
      makeSource({ ...drawn, brief: { ...drawn.brief, surfaceFinish: null, quantityPerYear: null } }),
    )
    expect(blank.openPoints.find(({ severity }) => severity === 'blocking')?.text).toMatch(/finish/i)
    expect(blank.panel.panelsPerYear).toBeNull()
    expect(blank.materials.every(({ areaPerYearM2 }) => areaPerYearM2 === null)).toBe(true)
  })

  it('says that it is no release, and carries the cautions', () => {
    expect(request.statement).toBe(QUOTATION_STATEMENT)
    expect(request.statement).toMatch(/For quotation only.*not a release/)
    expect(request.cautions).toEqual(CAUTIONS)
  })
})

describe('areas of materials', () => {
  it('are those of the zones that they lie in: length times width where nothing is drawn', () => {
    const request = makeQuotationRequest(makeSource(readDemoDesign('skua-rev-b')))
    // By hand from the zones of the demo file: 52 x 34, 38 x 18, 24 x 22, 30 x 14 and 7 x 14.5 mm.
    const sizes: Record<string, number> = {
      'Controller board': 1768,
      Hinge: 684,
      'Sensor board': 528,
      'Link to the optics': 420,
      'Optics finger': 101.5,
    }
    for (const { name, areaMm2, areaBasis } of request.zones) {
      expect([name, areaMm2, areaBasis]).toEqual([name, sizes[name], 'stated'])
    }
    const film = request.materials.find(({ layers }) => layers.includes('Flexible base film'))
    expect(film?.zones).toEqual(Object.keys(sizes))
    expect(film?.areaPerPartMm2).toBeCloseTo(3501.5, 9)
    // 2400 parts a year: 3501.5 mm2 x 2400 = 8.4036 m2.
    expect(film?.areaPerYearM2).toBeCloseTo(8.4036, 9)
    const stiffener = request.materials.find(({ layers }) => layers.includes('Finger stiffener'))
    expect([stiffener?.zones, stiffener?.areaPerPartMm2]).toEqual([['Optics finger'], 101.5])
    // Every layer that is bought is in one line, and air in none.
    const listed = request.materials.flatMap(({ layers }) => layers)
    expect(listed.toSorted()).toEqual(
      request.layers
        .filter(({ material }) => material !== 'air')
        .map(({ name }) => name)
        .toSorted(),
    )
  })

  it('are measured where a plan is drawn, and together no more than the part', () => {
    const request = makeQuotationRequest(makeSource(drawn))
    const sum = request.zones.reduce((total, { areaMm2 }) => total + (areaMm2 ?? 0), 0)
    expect(request.zones.map(({ areaBasis }) => areaBasis)).toEqual(request.zones.map(() => 'drawn'))
    expect(sum).toBeCloseTo(request.outline?.areaMm2 ?? 0, 3)
  })

  it('are not made up where a zone has no size', () => {
    const design = readDemoDesign('skua-rev-b')
    const zones = design.construction.zones.map((zone) => (zone.name === 'Hinge' ? { ...zone, widthMm: null } : zone))
    const request = makeQuotationRequest(makeSource({ ...design, construction: { ...design.construction, zones } }))
    const film = request.materials.find(({ layers }) => layers.includes('Flexible base film'))
    expect(film).toMatchObject({ areaPerPartMm2: null, areaPerYearM2: null })
    expect(film?.because).toBe('Zone Hinge is not drawn and states no length and width.')
  })
})

describe('what there is not', () => {
  it('an empty design is said to be empty, in every table', () => {
    const design: Design = {
      ...drawn,
      plan: null,
      bends: [],
      construction: { layers: [], zones: [] },
      features: { ...drawn.features, outline: null },
    }
    const request = makeQuotationRequest(makeSource(design, { zones: null, threads: [] }))
    expect(quotationRequestSchema.parse(request)).toEqual(request)
    expect(request.outline).toBeNull()
    for (const { title, rows, note } of listQuotationTables(request)) {
      expect(rows.length === 0 ? note : 'has rows', title).not.toBe('')
    }
  })

  it('of panels that are not shown nothing is said, nor why', () => {
    const request = makeQuotationRequest(makeSource(drawn, { isPanelShown: false }))
    expect(request.panel).toEqual({
      formats: [],
      panelsPerYear: null,
      sheetAreaPerYearM2: null,
      yieldNote: '',
      because: 'Brackenfold Circuits does not show its panel formats here.',
    })
  })

  it('a part that fits on no panel has no cheapest one', () => {
    const small = { ...FORMAT, widthMm: 60, heightMm: 60 }
    const found = estimate(drawn, { formats: { formats: [small] }, rates: null }, makeNester())
    const { panel } = makeQuotationRequest(makeSource(drawn, { estimate: found }))
    expect(panel.formats).toMatchObject([{ partsPerPanel: 0, panelAreaPerPartMm2: null, isCheapest: false }])
    expect(panel.because).toBe('The part does not fit on any panel.')
  })
})

describe('its files', () => {
  let request: QuotationRequest
  beforeAll(() => {
    request = makeQuotationRequest(makeSource(drawn))
  }, 60_000)

  it('JSON reads back by its schema as the same request', () => {
    const read = JSON.parse(new TextDecoder().decode(writeQuotationJson(request)))
    expect(quotationRequestSchema.parse(read)).toEqual(request)
  })

  it('the workbook holds each table, with numbers that stay numbers', async () => {
    const bytes = await writeQuotationXlsx(request)
    const readSheet = (head: string) => {
      const reading = readXlsx(bytes, ([first]) => first?.[0] === head)
      if (!reading.ok) throw new Error(reading.reason)
      expect(reading.grid.refused).toEqual([])
      expect(reading.grid.rows[0]?.[0]).toBe(head)
      return reading.grid.rows
    }
    expect(readSheet('Request for quotation')[0]).toEqual(['Request for quotation', QUOTATION_STATEMENT])
    const layers = readSheet('No.')
    expect(layers).toHaveLength(1 + request.layers.length)
    const thickness = layers[0]?.indexOf('As bought, µm') ?? -1
    expect(layers.slice(1).map((row) => Number(row[thickness]))).toEqual(
      request.layers.map(({ thicknessUm }) => thicknessUm),
    )
    const panel = readSheet('Panel format')
    expect(Number(panel[1]?.[3])).toBe(request.panel.formats[0]?.partsPerPanel)
    expect(readSheet('Point')).toHaveLength(1 + request.openPoints.length)
    expect(readSheet('Material as bought').length).toBeGreaterThanOrEqual(1 + request.materials.length)
    expect(readSheet('Zone')).toHaveLength(1 + request.zones.length)
  })

  // A part that is ready to be asked about has few open points; a draft goes on to a second page with them.
  it.each([
    ['skua-rev-b', 1],
    ['pipit-rev-a', 1],
    ['skua-rev-a', 2],
  ] as const)(
    'the PDF of %s has %i page or pages, says on each what it is, and has every cell of every table',
    async (name, count) => {
      const design = readDrawnDesign(name)
      const asked = makeQuotationRequest(makeSource(design))
      const outline = drawPlanPicture(design, { palette: PRINT_PALETTE, widthPx: 520 })
      const bytes = await writeQuotationPdf(asked, outline, {
        title: 'Request for quotation',
        subject: 'Skua, revision B',
        author: 'Quillmoor Instruments',
        at: '2026-11-23T09:00:00.000Z',
      })
      const pages = readPdfPages(bytes).map(lettersOf)
      expect(pages).toHaveLength(count)
      for (const page of pages) expect(page).toContain(lettersOf('For quotation only, no release.'))
      const all = pages.join('')
      expect(pages[0]).toContain(lettersOf(QUOTATION_STATEMENT))
      for (const caution of CAUTIONS) expect(all).toContain(lettersOf(caution))
      for (const { columns, rows } of listQuotationTables(asked)) {
        for (const row of rows) {
          columns.forEach((column, at) => {
            const text = writeQuotationCell(column, row[at] ?? null)
            // Zones are called by number in the other tables: their names stand in their own, without what parts a list.
            for (const word of text.split(/\s+/)) expect(all, text).toContain(lettersOf(word.replace(/[,.]$/, '')))
          })
        }
      }
    },
    60_000,
  )
})
