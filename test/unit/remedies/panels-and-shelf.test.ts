import { describe, expect, it } from 'vitest'
import { toRemedyOptions } from '@/app/_components/engineering/remedies/remedy-bases'
import type { RemedyBasisView } from '@/lib/data'
import { findRemedies } from '@/lib/engine/remedies'
import {
  estimateByBasis,
  listPurchases,
  makeCostBasis,
  makeNester,
  makeRates,
  type PanelFormat,
  readNestedPart,
  type ShelfContent,
  type ShelfRow,
} from '@/lib/fabrication'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

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
  usesIllustrativeRates: true,
  shelf: null,
  unavailableMaterialIds: [],
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

describe('cost and panels inside remedies', () => {
  const report = findRemedies(skua, 'hinge', toRemedyOptions(view, '2026-11-25'))

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
    const found = findRemedies(skua, 'hinge', { partsPerPanelOf: (design) => partsOf.get(design) ?? 30 })
    for (const { partsPerPanel } of found.remedies) expect(partsPerPanel).toEqual({ before: 40, after: 30 })
  })

  it('nothing is said where nothing is known', () => {
    for (const { partsPerPanel, offShelf, after } of findRemedies(skua, 'hinge').remedies) {
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
    const { remedies } = findRemedies(skua, 'hinge', toRemedyOptions({ ...view, shelf }, '2026-11-25'))
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
    const { remedies } = findRemedies(
      skua,
      'hinge',
      toRemedyOptions({ ...view, unavailableMaterialIds: ['epoxy-adhesive'] }, '2026-11-25'),
    )
    for (const { forbiddenBy, patch } of remedies) {
      const needsIt = JSON.stringify(patch).includes('"epoxy-adhesive"')
      expect(forbiddenBy.some(({ kind }) => kind === 'material')).toBe(needsIt)
    }
  })
})
