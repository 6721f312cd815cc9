import { describe, expect, it } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import {
  adviseOrder,
  assessShelf,
  findSubstitutes,
  findWorseVerdicts,
  listPurchases,
  type ShelfRow,
  shelfContentSchema,
} from '@/lib/fabrication'
import { readDemoDesign } from './designs'

const ROW: ShelfRow = {
  material: 'pi-base-adhesiveless',
  thicknessUm: 25,
  foil: 'copper-ra',
  foilUm: 12,
  foilSides: 2,
  adhesive: null,
  adhesiveUm: null,
  form: 'roll',
  widthMm: 500,
  onShelf: true,
  leadTimeDays: null,
  minimumOrderM2: null,
  note: '',
}
const COVERLAY: ShelfRow = {
  ...ROW,
  material: 'pi-coverlay',
  foil: null,
  foilUm: null,
  foilSides: null,
  adhesive: 'acrylic-adhesive',
  adhesiveUm: 25,
}
const bare = (material: string, thicknessUm: number): ShelfRow => ({
  ...COVERLAY,
  material,
  thicknessUm,
  adhesive: null,
  adhesiveUm: null,
})

const TODAY = '2026-11-20'
const shelf = (rows: ShelfRow[], buildTimeDays: number | null = 30) => ({ buildTimeDays, rows })

describe('materials as they are bought', () => {
  it('the chest patch: a clad with foil on both sides, two coverlays, a stiffener and its adhesive', () => {
    const found = listPurchases(readDemoDesign('pipit-rev-a')).map(({ kind, id, foilLayers, adhesiveLayers }) => [
      kind,
      id,
      foilLayers.length,
      adhesiveLayers.length,
    ])
    expect(found).toEqual([
      ['coverlay', 'cover-top', 0, 1],
      ['clad', 'base', 2, 0],
      ['coverlay', 'cover-bottom', 0, 1],
      ['plain', 'stiffener-adhesive', 0, 0],
      ['plain', 'stiffener', 0, 0],
    ])
  })

  it('takes every layer of a material exactly once', () => {
    for (const name of ['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const) {
      const design = readDemoDesign(name)
      const taken = listPurchases(design).flatMap(({ layer, foilLayers, adhesiveLayers }) =>
        [layer, ...foilLayers, ...adhesiveLayers].map(({ id }) => id),
      )
      const layers = design.construction.layers.filter(({ kind }) => kind !== 'unbonded-gap').map(({ id }) => id)
      expect([...taken].sort()).toEqual([...layers].sort())
    }
  })
})

describe('a shelf against a construction', () => {
  const design = readDemoDesign('pipit-rev-a')

  it('tells what is held, what is to be ordered, and what nobody knows', () => {
    const found = assessShelf(
      design,
      shelf([ROW, { ...COVERLAY, onShelf: false, leadTimeDays: 21 }, { ...bare('fr4-laminate', 400), onShelf: false }]),
      TODAY,
    )
    expect(found.counts).toEqual({ onShelf: 1, toOrder: 2, unknown: 2 })
    expect(found.purchases.find(({ purchase }) => purchase.id === 'stiffener')?.reason).toContain('lead time')
    expect(found.purchases.find(({ purchase }) => purchase.id === 'stiffener-adhesive')?.reason).toContain('not list')
    // Need date 2027-02-15 less 30 + 21 days is 2026-12-26: 36 days from 2026-11-20.
    expect(found.orderSlackDays).toBe(36)
  })

  it('a material is called by id, by name, or by the sheet that specifies it', () => {
    const named = { ...ROW, material: 'IPC-4204 adhesiveless polyimide clad', foil: 'Rolled-annealed copper foil' }
    expect(assessShelf(design, shelf([named]), TODAY).counts.onShelf).toBe(1)
  })

  it('inch and metric names of a sheet are one; the next size is not', () => {
    const of = (change: Partial<ShelfRow>) => assessShelf(design, shelf([{ ...ROW, ...change }]), TODAY).counts.onShelf
    expect(of({ thicknessUm: 25.4, foilUm: 12.7 })).toBe(1)
    expect(of({ thicknessUm: 50 })).toBe(0)
    expect(of({ foilUm: 9 })).toBe(0)
    expect(of({ foilUm: 17.1 })).toBe(0)
  })

  it('foil on one side does not serve where both have it; foil on both serves for one', () => {
    expect(assessShelf(design, shelf([{ ...ROW, foilSides: 1 }]), TODAY).counts.onShelf).toBe(0)
    const skua = readDemoDesign('skua-rev-b')
    const laminate = { ...ROW, material: 'fr4-laminate', thicknessUm: 150, foil: 'copper-ed', foilUm: 17.1 }
    const held = assessShelf(skua, shelf([laminate]), TODAY).purchases.filter(({ state }) => state === 'on-shelf')
    expect(held.map(({ purchase }) => purchase.id)).toEqual(['laminate-top', 'laminate-bottom'])
  })
})

describe('order dates', () => {
  const dates = { needDate: '2027-03-01', buildTimeDays: 20, today: '2026-11-20' }
  it.each([
    // 2027-03-01 less 20 days is 2027-02-09 (February 2027 has 28 days).
    [40, 'in-time', '2026-12-31', 41],
    [67, 'order-now', '2026-12-04', 14],
    [81, 'order-now', '2026-11-20', 0],
    [82, 'too-late', '2026-11-19', -1],
  ] as const)('lead time %s days: %s, latest %s', (leadTimeDays, kind, latestOrderDate, slackDays) => {
    expect(adviseOrder(leadTimeDays, dates)).toEqual({ kind, latestOrderDate, slackDays })
  })

  it('a missing date is named', () => {
    expect(adviseOrder(40, { ...dates, needDate: null })).toMatchObject({
      reason: expect.stringContaining('need date'),
    })
    expect(adviseOrder(40, { ...dates, buildTimeDays: null })).toMatchObject({
      reason: expect.stringContaining('build time'),
    })
  })
})

describe('substitutes on the shelf', () => {
  const design = readDemoDesign('skua-rev-b')
  const evaluateDesign = (trial: Design) => evaluate(trial)
  const options = { evaluation: evaluateDesign(design), evaluateDesign }
  const missingOf = (id: string, rows: ShelfRow[]) => {
    const found = assessShelf(design, shelf(rows), TODAY).purchases.find(({ purchase }) => purchase.id === id)
    if (found === undefined || found.state === 'on-shelf') throw new Error(`${id} is not missing`)
    return found
  }

  it('keep every verdict, by an evaluation in full, and say what moved', () => {
    const rows = [
      { ...COVERLAY, thicknessUm: 25, adhesiveUm: 25 },
      { ...COVERLAY, thicknessUm: 12.5, adhesiveUm: 15 },
      { ...COVERLAY, thicknessUm: 25, adhesiveUm: 30 },
    ]
    const found = findSubstitutes(design, missingOf('cover-top', rows), shelf(rows), options)
    expect(found.kept.length + found.leftOut.length).toBe(3)
    for (const { design: trial, moves, row } of found.kept) {
      expect(findWorseVerdicts(options.evaluation, evaluate(trial))).toEqual([])
      expect(trial.construction.layers.find(({ id }) => id === 'cover-top')?.thicknessUm).toBe(row.thicknessUm)
      expect(moves.join()).toMatch(/thickness/)
    }
    for (const { because } of found.leftOut) expect(because).toMatch(/, now /)
    expect(found.leftOut.length).toBeGreaterThan(0)
  })

  it('come from the shelf, are of the same kind and shape, and between half and double', () => {
    const rows = [
      { ...COVERLAY, onShelf: false, leadTimeDays: 10, adhesiveUm: 25 },
      bare('pi-coverlay', 25),
      { ...COVERLAY, thicknessUm: 75 },
      { ...COVERLAY, material: 'fr4-laminate' },
    ]
    const found = findSubstitutes(design, missingOf('cover-top', rows), shelf(rows), options)
    expect(found).toEqual({ kept: [], leftOut: [] })
  })

  it('do not leave the matrix', () => {
    const patch = readDemoDesign('pipit-rev-a')
    const rows = [bare('fr4-laminate', 500)]
    const missing = assessShelf(patch, shelf(rows), TODAY).purchases.find(({ purchase }) => purchase.id === 'stiffener')
    if (missing === undefined) throw new Error('no stiffener')
    const own = { evaluation: evaluate(patch), evaluateDesign }
    const [kept] = findSubstitutes(patch, missing, shelf(rows), own).kept
    expect(kept?.moves.join()).toMatch(/thickness [\d.]+ to [\d.]+ µm/)
    const limit = { parameter: 'stiffener-thickness-largest', comfortable: 450, stretch: 450, note: '' }
    const matrix = [
      { ...limit, layersFrom: null, layersTo: null, foilFromUm: null, foilToUm: null, construction: null },
    ]
    const found = findSubstitutes(patch, missing, shelf(rows), { ...own, matrix })
    expect(found.kept).toEqual([])
    expect(found.leftOut[0]?.because).toMatch(/stiffener.*comfortable, now outside/)
  })
})

it('a clad states its foil whole, an adhesive its thickness, and a material stands once', () => {
  const parsed = shelfContentSchema.safeParse(
    shelf([
      { ...ROW, foilUm: null },
      { ...COVERLAY, adhesiveUm: null },
      bare('pi-stiffener', 175),
      bare('pi-stiffener', 175),
    ]),
  )
  expect(parsed.error?.issues.map(({ path }) => path)).toEqual([
    ['rows', 0, 'foilUm'],
    ['rows', 1, 'adhesiveUm'],
    ['rows', 3, 'material'],
  ])
})
