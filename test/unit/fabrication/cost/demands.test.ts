import { describe, expect, it } from 'vitest'
import type { Design } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import {
  describeConstruction,
  makeRates,
  type PricedPanel,
  priceConstruction,
  priceOnBestPanel,
} from '@/lib/fabrication/cost'
import { readDemoDesign } from '../designs'

// That each of these makes a part dearer is common practice, no published source; by how much is illustrative.

const PANEL: PricedPanel = { formatId: 'p', formatName: 'Production', areaM2: 0.2787, partsPerPanel: 60 }
const RATES = makeRates(null)

const price = (design: Design, quantity: number | null = 500) =>
  priceConstruction(describeConstruction(design), RATES, PANEL, quantity)

const change = (edit: (design: Design) => void): Design => {
  const design = structuredClone(readDemoDesign('skua-rev-b'))
  edit(design)
  return design
}

type Hole = Design['features']['holes'][number]
const editHoles = (edit: (hole: Hole, index: number) => Partial<Hole>) =>
  change(({ features }) => {
    features.holes = features.holes.map((hole, index) => ({ ...hole, ...edit(hole, index) }))
  })

const withClass = (performanceClass: Design['brief']['performanceClass']) =>
  change(({ brief }) => {
    brief.performanceClass = performanceClass
  })
const withWidth = (widthMm: number) =>
  change(({ features }) => {
    features.conductors = features.conductors.map((conductor, index) => ({
      ...conductor,
      widthMm: index === 0 ? widthMm : 0.2,
      spaceMm: 0.2,
    }))
  })
const withDrill = (drillMm: number) => editHoles((_, index) => ({ drillMm: index === 0 ? drillMm : 0.5 }))
const withFoil = (thicknessUm: number) =>
  change(({ construction }) => {
    construction.layers = construction.layers.map((layer) =>
      layer.kind === 'conductor' ? { ...layer, thicknessUm } : layer,
    )
  })
const withFinish = (surfaceFinish: Design['brief']['surfaceFinish']) =>
  change(({ brief }) => {
    brief.surfaceFinish = surfaceFinish
  })
const withHoles = (count: number) =>
  change(({ features, plan }) => {
    const [hole] = features.holes
    if (hole === undefined) throw new Error('no hole')
    features.holes = Array.from({ length: count }, (_, index) => ({ ...hole, id: `hole-${index}` }))
    if (plan !== null) plan.holes = []
  })

/** Six layers pressed in one, and holes between layers of it, counted from the top. */
function withSpans(spans: readonly (readonly [number, number])[]): Design {
  const design = findStartingConstruction('six-layer-unbonded-leaves')?.makeDesign('Trial')
  const [model] = readDemoDesign('skua-rev-b').features.holes
  const zone = design?.construction.zones.find(({ kind }) => kind === 'rigid')
  if (design === undefined || model === undefined || zone === undefined) throw new Error('no design to try')
  const present = new Set(zone.presence.map(({ layerId }) => layerId))
  const copper = design.construction.layers.filter(({ id, kind }) => kind === 'conductor' && present.has(id))
  const holes = spans.map(
    ([from, to], index): Hole => ({
      ...model,
      id: `hole-${index}`,
      plated: true,
      zoneId: zone.id,
      drillMm: 0.3,
      fromLayerId: copper[from - 1]?.id ?? null,
      toLayerId: copper[to - 1]?.id ?? null,
    }),
  )
  return { ...design, features: { ...design.features, holes } }
}

describe('more demanding is dearer, and the step says why', () => {
  it.each<[string, string, readonly Design[]]>([
    ['class', 'class-3', [withClass('class-1'), withClass('class-3')]],
    ['fine lines', 'fine-lines', [withWidth(0.1), withWidth(0.099)]],
    ['finest lines', 'finest-lines', [withWidth(0.08), withWidth(0.07)]],
    ['small drills', 'small-drills', [withDrill(0.25), withDrill(0.2)]],
    ['smallest drills', 'smallest-drills', [withDrill(0.2), withDrill(0.1)]],
    ['heavy copper', 'heavy-copper', [withFoil(34.3), withFoil(68.6)]],
    ['heaviest copper', 'heaviest-copper', [withFoil(68.6), withFoil(102.9)]],
    [
      'gold over palladium',
      'finish-palladium',
      [withFinish('immersion-gold-over-electroless-nickel'), withFinish('immersion-gold-over-palladium-nickel')],
    ],
    [
      'plated gold',
      'finish-electroplated',
      [withFinish('immersion-gold-over-palladium-nickel'), withFinish('electroplated-nickel-gold')],
    ],
    [
      'a nickel finish',
      'finish-nickel',
      [withFinish('immersion-tin'), withFinish('immersion-gold-over-electroless-nickel')],
    ],
    [
      'a lamination for a buried hole',
      'further-press',
      [
        withSpans([
          [1, 6],
          [2, 5],
        ]),
        withSpans([
          [1, 6],
          [2, 5],
          [3, 4],
        ]),
      ],
    ],
    [
      'another span of holes',
      'further-span',
      [
        withSpans([[1, 6]]),
        withSpans([
          [1, 6],
          [2, 5],
        ]),
      ],
    ],
  ])('%s', (_name, stepId, [easy, hard]) => {
    if (easy === undefined || hard === undefined) throw new Error('two designs are compared')
    for (const quantity of [null, 1, 500, 100_000]) {
      const [before, after] = [price(easy, quantity), price(hard, quantity)]
      expect(before.steps.map((step) => step.stepId)).not.toContain(stepId)
      expect(after.steps.find((step) => step.stepId === stepId)?.because).toMatch(/\w{3,}.*\.$/)
      expect(after.indexPerGoodPart).toBeGreaterThan(before.indexPerGoodPart)
    }
  })

  it('each hole more, those of drawn patterns among them', () => {
    const indexes = [1, 10, 100, 1000].map((count) => price(withHoles(count), null).indexPerGoodPart)
    expect(indexes).toEqual([...indexes].sort((a, b) => a - b))
    expect(new Set(indexes).size).toBe(4)
    const skua = readDemoDesign('skua-rev-b')
    const drawn = (skua.plan?.holes ?? []).reduce((sum, { columns, rows }) => sum + columns * rows, 0)
    expect(describeConstruction(skua).holeCount).toBeGreaterThanOrEqual(drawn)
    expect(drawn).toBeGreaterThan(skua.features.holes.length)
  })

  it('names the finest line and the smallest drill of the design', () => {
    const becauseOf = (design: Design, stepId: string) =>
      price(design).steps.find((step) => step.stepId === stepId)?.because
    expect(becauseOf(withWidth(0.06), 'fine-lines')).toContain('0.06 mm')
    expect(becauseOf(withDrill(0.12), 'small-drills')).toContain('0.12 mm')
  })
})

describe('what nobody stated', () => {
  it('is not counted, and named', () => {
    expect(describeConstruction(readDemoDesign('skua-rev-b')).notCounted).toEqual([])
    const silent = change(({ brief, features }) => {
      brief.performanceClass = null
      features.holes = features.holes.map((hole) => ({ ...hole, drillMm: null, fromLayerId: null }))
      features.conductors = features.conductors.map((conductor) => ({ ...conductor, widthMm: null, spaceMm: null }))
    })
    expect(describeConstruction(silent).notCounted).toEqual([
      'the performance class',
      'widths and spaces of conductors',
      'drills of holes',
      'layers that plated holes join',
    ])
    expect(price(silent).indexPerGoodPart).toBeLessThanOrEqual(price(readDemoDesign('skua-rev-b')).indexPerGoodPart)
  })

  it('a part that is said to have no hole and no conductor lacks nothing', () => {
    const bare = change(({ features }) => {
      features.holes = []
      features.conductors = []
      features.none = ['holes', 'conductors']
    })
    expect(describeConstruction(bare).notCounted).toEqual([])
  })
})

it('features of layers that another construction lacks count for no more layers than it has', () => {
  const fine = change(({ features }) => {
    features.conductors = features.conductors.map((conductor, index) => ({
      ...conductor,
      layerId: `gone-${index}`,
      widthMm: 0.06,
    }))
  })
  const traits = describeConstruction(fine)
  expect(traits.finestLayerCount).toBeLessThanOrEqual(traits.conductorCount)
  expect(priceOnBestPanel(traits, RATES, [PANEL], null)).not.toBeNull()
})
