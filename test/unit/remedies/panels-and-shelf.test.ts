import { describe, expect, it } from 'vitest'
import type { RemedyBasisView } from '@/lib/data'
import { type Design, NO_PLATING } from '@/lib/engine'
import {
  estimateByBasis,
  explainUnpriced,
  listPurchases,
  makeCostBasis,
  makeNester,
  makeRates,
  type PanelFormat,
  readNestedPart,
  type ShelfContent,
  type ShelfRow,
  toRemedyOptions,
} from '@/lib/fabrication'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { findPairs } from './demo'

const FORMAT: PanelFormat = {
  id: 'large',
  name: 'Large',
  widthMm: 457.2,
  heightMm: 609.6,
  marginLeftMm: 20,
  marginRightMm: 20,
  marginTopMm: 20,
  marginBottomMm: 20,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: 'along-height',
  note: '',
}
const skua = readDemoDesign('skua-rev-a')
const reading = readNestedPart(skua)
if (!reading.ok) throw new Error(reading.reason)
const basis = makeCostBasis(reading.part, [FORMAT], makeRates(null), makeNester())

const view: RemedyBasisView = {
  company: { id: 'brackenfold', kind: 'fabricator', name: 'Brackenfold Circuits' },
  basis,
  noBasisReason: '',
  part: reading.part,
  usesIllustrativeRates: true,
  shelf: null,
  unavailableMaterialIds: [],
}

/** The same value with its keys in the other order. */
function turnKeys<T extends object | null>(value: T): T {
  return value === null ? value : (Object.fromEntries(Object.entries(value).reverse()) as T)
}

/** Everything that the design is made of stands on this shelf, and nothing else. */
function makeOwnShelf(more: readonly Partial<ShelfRow>[] = []): ShelfContent {
  const blank = {
    foil: null,
    foilUm: null,
    foilSides: null,
    adhesive: null,
    adhesiveUm: null,
    form: null,
    widthMm: null,
    onShelf: true,
    leadTimeDays: null,
    minimumOrderM2: null,
    note: '',
  }
  const own = listPurchases(skua).map(({ layer, foilLayers: [foil, other], adhesiveLayers: [adhesive] }) => ({
    ...blank,
    material: layer.materialId,
    thicknessUm: layer.thicknessUm,
    ...(foil === undefined
      ? {}
      : { foil: foil.materialId, foilUm: foil.thicknessUm, foilSides: other === undefined ? 1 : 2 }),
    ...(adhesive === undefined ? {} : { adhesive: adhesive.materialId, adhesiveUm: adhesive.thicknessUm }),
  }))
  return { buildTimeDays: 20, rows: [...own, ...more.map((row) => ({ ...blank, ...row }) as ShelfRow)] }
}

/** Plated copper would break first whatever the foil. */
function makeUnplated(): Design {
  const design = structuredClone(skua)
  for (const layer of design.construction.layers) if (layer.kind === 'conductor') layer.plating = NO_PLATING
  return design
}

describe('cost and panels inside remedies', () => {
  const report = findPairs(skua, 'hinge', toRemedyOptions(view, skua, '2026-11-25'))

  it('every remedy carries the cost and the parts per panel that the basis gives of its design', () => {
    const before = estimateByBasis(skua, basis)
    expect(report.before.costIndex).toBe(before?.indexPerGoodPart)
    expect(report.remedies.length).toBeGreaterThan(0)
    for (const { after, partsPerPanel } of report.remedies) {
      expect(after.costIndex).toBeGreaterThan(0)
      expect(partsPerPanel).toEqual({ before: before?.partsPerPanel, after: expect.any(Number) })
    }
  })

  it('remedies that take steps away or add them differ in cost', () => {
    expect(new Set(report.remedies.map(({ after }) => after.costIndex?.toFixed(6))).size).toBeGreaterThan(1)
  })

  it('a change of parts per panel is carried, before and after', () => {
    const partsOf = new Map([[skua, 40]])
    const found = findPairs(skua, 'hinge', { partsPerPanelOf: (design) => partsOf.get(design) ?? 30 })
    for (const { partsPerPanel } of found.remedies) expect(partsPerPanel).toEqual({ before: 40, after: 30 })
  })

  it('the part is compared by value: the order of keys, which the database and the page differ in, plays no part', () => {
    const turned: Design = { ...skua, features: { ...skua.features, outline: turnKeys(skua.features.outline) } }
    expect(Object.keys(turned.features.outline ?? {})).not.toEqual(Object.keys(skua.features.outline ?? {}))
    expect(explainUnpriced(view, turned)).toBe('')
    expect(findPairs(turned, 'hinge', toRemedyOptions(view, turned, '2026-11-25')).before.costIndex).toBe(
      report.before.costIndex,
    )
  })

  it('every reason for having no price is the true one', () => {
    const { outline } = skua.features
    if (outline === null) throw new Error('Skua has an outline')
    const shifted = outline.verticesMm.map(([x, y], at): [number, number] => [at === 0 ? x - 5 : x, y])
    const other: Design = {
      ...skua,
      features: { ...skua.features, outline: { ...outline, verticesMm: shifted } },
    }
    const bare: Design = { ...skua, features: { ...skua.features, outline: null } }
    const empty = makeCostBasis(reading.part, [{ ...FORMAT, widthMm: 50, heightMm: 50 }], makeRates(null), makeNester())
    expect(explainUnpriced(view, other)).toMatch(/differs from the stored one/)
    expect(explainUnpriced(view, bare)).toMatch(/^There is no outline, and the zones differ in width/)
    expect(explainUnpriced({ ...view, basis: empty }, skua)).toBe('The part does not fit on any panel format.')
    const none = { ...view, basis: null, noBasisReason: 'The fabricator keeps no panel formats.' }
    expect(explainUnpriced(none, skua)).toBe('The fabricator keeps no panel formats.')
    for (const [design, each] of [
      [other, view],
      [bare, view],
      [skua, none],
    ] as const) {
      expect(findPairs(design, 'hinge', toRemedyOptions(each, design, '2026-11-25')).before.costIndex).toBeNull()
    }
  })

  it('nothing is said where nothing is known', () => {
    for (const { partsPerPanel, offShelf, after } of findPairs(skua, 'hinge').remedies) {
      expect([partsPerPanel, offShelf, after.costIndex]).toEqual([null, [], null])
    }
  })
})

describe('the shelf inside remedies', () => {
  it('says which remedies need a material that is not on it, with its lead time', () => {
    const shelf = makeOwnShelf([
      {
        material: 'pi-base-adhesiveless',
        thicknessUm: 25,
        foil: 'copper-ra',
        foilUm: 12,
        foilSides: 2,
        onShelf: false,
        leadTimeDays: 35,
      },
    ])
    const { remedies } = findPairs(makeUnplated(), 'hinge', toRemedyOptions({ ...view, shelf }, skua, '2026-11-25'))
    const ordered = remedies.flatMap(({ offShelf }) => offShelf.filter(({ state }) => state === 'to-order'))
    expect(ordered.length).toBeGreaterThan(0)
    for (const { name, leadTimeDays } of ordered) {
      expect(name).toContain('12 µm')
      expect(leadTimeDays).toBe(35)
    }
    // What only takes copper or coverlay away needs nothing new.
    expect(remedies.some(({ offShelf }) => offShelf.length === 0)).toBe(true)
  })

  it('a material that is listed and not to be had forbids the remedy, with its name', () => {
    const { remedies } = findPairs(
      skua,
      'hinge',
      toRemedyOptions({ ...view, unavailableMaterialIds: ['epoxy-adhesive'] }, skua, '2026-11-25'),
    )
    for (const { forbiddenBy, patch } of remedies) {
      const needsIt = JSON.stringify(patch).includes('"epoxy-adhesive"')
      expect(forbiddenBy.some(({ kind }) => kind === 'material')).toBe(needsIt)
    }
  })
})
