import { describe, expect, it } from 'vitest'
import { type Design, evaluate, makeBlankDesign } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import {
  compareWithAlternatives,
  type ExtraRoom,
  estimate,
  estimateByBasis,
  type FabricatorBasis,
  findPricedNesting,
  gatherProductionFacts,
  listAlternatives,
  makeCostBasis,
  makeNester,
  makeRates,
  type NestedPart,
  NestingMemory,
  nestPart,
  type PanelFormat,
  priceOverQuantity,
  readNestedPart,
} from '@/lib/fabrication'
import { readDemoDesign } from '../../engine-assembly/demo-design-files'

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
const SMALL: PanelFormat = { ...FORMAT, id: 'small', name: 'Small', widthMm: 305, heightMm: 457 }
const basisOf = (...formats: PanelFormat[]): FabricatorBasis => ({ formats: { formats }, rates: null })
const nest = makeNester()

const makeDesign = (id: string): Design => {
  const construction = findStartingConstruction(id)
  if (construction === null) throw new Error(id)
  return construction.makeDesign('Trial')
}
const withZones = (...sizes: readonly (readonly [number | null, number | null])[]): Design => {
  const design = makeDesign('double-sided')
  const [zone] = design.construction.zones
  if (zone === undefined) throw new Error('no zone')
  const zones = sizes.map(([lengthMm, widthMm], at) => ({
    ...zone,
    id: `zone-${at}`,
    name: `Z${at}`,
    lengthMm,
    widthMm,
  }))
  return { ...design, construction: { ...design.construction, zones } }
}

describe('the part that is nested', () => {
  it('is the outline where there is one', () => {
    expect(readNestedPart(readDemoDesign('skua-rev-a'))).toMatchObject({
      ok: true,
      basis: 'outline',
      part: { rollingDirection: 'along-x', outline: { length: 19 } },
    })
  })

  it('is the zones’ rectangle where they leave no doubt, and says so', () => {
    expect(readNestedPart(withZones([40, 12]))).toMatchObject({ ok: true, basis: 'zones' })
    const strip = readNestedPart(withZones([40, 12], [20.5, 12]))
    expect(strip).toMatchObject({ ok: true, note: expect.stringContaining('a strip of its 2 zones') })
    expect(strip.ok && strip.part.outline[2]).toEqual([60_500, 12_000])
  })

  it.each([
    [withZones([40, 12], [20, 13]), ['features', 'outline'], 'differ in width'],
    [withZones([40, 12], [null, 12]), ['construction', 'zones', 1, 'lengthMm'], 'zone “Z1” states no length'],
    [withZones([40, null]), ['construction', 'zones', 0, 'widthMm'], 'states no width'],
    [makeBlankDesign('Trial'), ['features', 'outline'], 'neither an outline nor a zone'],
  ])('is not computed otherwise, with what is missing', (design, path, reason) => {
    expect(readNestedPart(design)).toMatchObject({
      ok: false,
      missingPath: path,
      reason: expect.stringContaining(reason),
    })
  })
})

describe('estimate', () => {
  const skua = readDemoDesign('skua-rev-a')

  it('prices on the panel where a good part costs least', () => {
    const both = estimate(skua, basisOf(SMALL, FORMAT), nest)
    const single = [SMALL, FORMAT].map((format) => estimate(skua, basisOf(format), nest))
    const indexes = single.map((each) => (each.ok ? each.cost?.indexPerGoodPart : null))
    expect(both.ok && both.cost?.indexPerGoodPart).toBe(Math.min(...indexes.map((index) => index ?? Infinity)))
    expect(findPricedNesting(both)?.nesting.count).toBeGreaterThan(0)
  })

  it('registration takes room on the panel: revision B, with wider webs, gets more parts than A', () => {
    const [a, b] = [skua, readDemoDesign('skua-rev-b')].map((design) =>
      findPricedNesting(estimate(design, basisOf(FORMAT), nest)),
    )
    expect(a?.extraSpacingMm).toBeGreaterThan(0)
    expect(b?.extraSpacingMm).toBe(0)
    expect(b?.nesting.count).toBeGreaterThan(a?.nesting.count ?? 0)
  })

  it('says what is missing', () => {
    expect(estimate(skua, { formats: null, rates: null }, nest)).toMatchObject({ ok: false, code: 'no-formats' })
    expect(estimate(makeBlankDesign('Trial'), basisOf(FORMAT), nest)).toMatchObject({ ok: false, code: 'no-part' })
    const tiny = { ...SMALL, widthMm: 60, heightMm: 60 }
    expect(estimate(skua, basisOf(tiny), nest)).toMatchObject({ ok: true, cost: null })
  })

  it('over quantity the index falls', () => {
    const result = estimate(skua, basisOf(FORMAT), nest)
    if (!result.ok) throw new Error(result.reason)
    const line = priceOverQuantity(result, [10, 100, 1000, 10_000]).map(({ indexPerGoodPart }) => indexPerGoodPart)
    expect(line).toHaveLength(4)
    expect([...line].sort((a, b) => b - a)).toEqual(line)
  })
})

describe('alternatives', () => {
  it('are of the same family and carry at least as many layers; the part stays the same', () => {
    const three = { ...makeDesign('three-layer-outer-flex'), features: readDemoDesign('skua-rev-b').features }
    expect(listAlternatives(three).map(({ id }) => id)).toEqual([
      'three-layer-outer-flex',
      'four-layer-inner-flex',
      'six-layer-unbonded-leaves',
    ])
    expect(listAlternatives(makeDesign('double-sided')).map(({ id }) => id)).toEqual([
      'double-sided',
      'double-sided-one-layer-in-bend',
    ])
    for (const { design } of listAlternatives(three)) expect(design.features.outline).toBe(three.features.outline)
  })

  it('a three-layer construction with outer flex is dearer than the four-layer one, by name', () => {
    const design = { ...makeDesign('three-layer-outer-flex'), features: readDemoDesign('skua-rev-b').features }
    const compared = compareWithAlternatives(design, basisOf(FORMAT), nest)
    expect(compared?.cheapestName).toBe('Four-layer rigid-flex, inner flex')
    expect(compared?.ratio).toBeGreaterThan(1)
  })

  it('the ratio is 1 for the cheapest itself', () => {
    expect(compareWithAlternatives(withZones([80, 20]), basisOf(FORMAT), nest)?.ratio).toBe(1)
  })
})

describe('facts', () => {
  it('let the items decide, by the worst of several fabricators', () => {
    const design = readDemoDesign('skua-rev-b')
    const [large, small] = [[basisOf(FORMAT)], [basisOf(SMALL)]].map((bases) =>
      gatherProductionFacts(design, bases, nest),
    )
    const both = gatherProductionFacts(design, [basisOf(FORMAT), basisOf(SMALL)], nest)
    expect(both.panelUtilisationFraction).toBe(
      Math.min(large?.panelUtilisationFraction ?? 1, small?.panelUtilisationFraction ?? 1),
    )
    const decided = new Map(evaluate(design, { facts: both }).items.map((item) => [item.itemId, item]))
    for (const id of ['parts-per-panel', 'construction-cost']) {
      expect(decided.get(id)?.verdict, id).toMatch(/meets|fails/)
    }
  })

  it('leave out what nothing is known of', () => {
    expect(gatherProductionFacts(readDemoDesign('skua-rev-b'), [{ formats: null, rates: null }], nest)).toEqual({})
    expect(gatherProductionFacts(readDemoDesign('skua-rev-b'), [], nest)).toEqual({})
  })
})

describe('what is remembered', () => {
  const part: NestedPart = {
    outline: [
      [0, 0],
      [50_000, 0],
      [50_000, 20_000],
    ],
    rollingDirection: null,
  }
  const extra: ExtraRoom = { extraMarginMm: 0, extraSpacingMm: 0 }

  it('the same question is answered by the same object; another measure is another question', () => {
    const remember = makeNester()
    const first = remember(part, FORMAT, extra)
    expect(remember({ ...part }, { ...FORMAT, name: 'Renamed', note: 'x' }, { ...extra })).toBe(first)
    expect(remember(part, { ...FORMAT, spacingMm: 3 }, extra)).not.toBe(first)
    expect(remember(part, FORMAT, { ...extra, extraSpacingMm: 1 })).toEqual(
      nestPart(part, FORMAT, { ...extra, extraSpacingMm: 1 }),
    )
  })

  it('forgets what was asked longest ago', () => {
    const remember = makeNester(new NestingMemory(1))
    const first = remember(part, FORMAT, extra)
    remember(part, SMALL, extra)
    expect(remember(part, FORMAT, extra)).not.toBe(first)
  })

  it('a basis prices a trial as the whole estimate does', () => {
    const design = readDemoDesign('skua-rev-a')
    const result = estimate(design, basisOf(FORMAT, SMALL), nest)
    if (!result.ok) throw new Error(result.reason)
    const basis = makeCostBasis(result.part, [FORMAT, SMALL], makeRates(null), nest)
    expect(estimateByBasis(design, basis)).toEqual({
      indexPerGoodPart: result.cost?.indexPerGoodPart,
      partsPerPanel: result.cost?.panel.partsPerPanel,
    })
  })
})
