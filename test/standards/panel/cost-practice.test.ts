import { describe, expect, it } from 'vitest'
import { findStartingConstruction, listStartingConstructions } from '@/lib/engine/templates'
import { describeConstruction, findRegistrationCost, makeRates, priceConstruction } from '@/lib/fabrication/cost'
import { nestPart, type PanelFormat } from '@/lib/fabrication/panel'

/** 18 x 24 in with a border of 1 in and 0.1 in between parts: usual sizes of the trade, borders from memory. */
const FORMAT: PanelFormat = {
  id: 'production',
  name: '18 x 24 in',
  widthMm: 457.2,
  heightMm: 609.6,
  marginLeftMm: 25.4,
  marginRightMm: 25.4,
  marginTopMm: 25.4,
  marginBottomMm: 25.4,
  spacingMm: 2.54,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}
const AREA_M2 = 0.4572 * 0.6096
const RATES = makeRates(null)

type Outline = readonly (readonly [number, number])[]

function priceOf(id: string, outlineMm: Outline, rates = RATES) {
  const construction = findStartingConstruction(id)
  if (construction === null) throw new Error(id)
  const traits = describeConstruction(construction.makeDesign('Trial'))
  const { count } = nestPart(
    { outline: outlineMm.map(([x, y]) => [1000 * x, 1000 * y]), rollingDirection: null },
    FORMAT,
    findRegistrationCost(rates, traits.registration),
  )
  const panel = { formatId: FORMAT.id, formatName: FORMAT.name, areaM2: AREA_M2, partsPerPanel: count }
  return priceConstruction(traits, rates, panel, null)
}

const OUTLINES: readonly (readonly [string, Outline])[] = [
  [
    '100 x 30 mm',
    [
      [0, 0],
      [100, 0],
      [100, 30],
      [0, 30],
    ],
  ],
  [
    '60 x 35 mm',
    [
      [0, 0],
      [60, 0],
      [60, 35],
      [0, 35],
    ],
  ],
  [
    '110 x 45 mm',
    [
      [0, 0],
      [110, 0],
      [110, 45],
      [0, 45],
    ],
  ],
  [
    '140 x 25 mm',
    [
      [0, 0],
      [140, 0],
      [140, 25],
      [0, 25],
    ],
  ],
  [
    'an L of 80 x 60 mm',
    [
      [0, 0],
      [80, 0],
      [80, 20],
      [20, 20],
      [20, 60],
      [0, 60],
    ],
  ],
  [
    '30 x 20 mm',
    [
      [0, 0],
      [30, 0],
      [30, 20],
      [0, 20],
    ],
  ],
]

describe('three layers with flex outside against four with flex inside [common practice, no published source]', () => {
  it.each(OUTLINES)('%s: the four-layer construction is about a fifth cheaper', (_name, outline) => {
    const three = priceOf('three-layer-outer-flex', outline)
    const four = priceOf('four-layer-inner-flex', outline)
    const savedFraction = 1 - four.indexPerGoodPart / three.indexPerGoodPart
    expect(savedFraction).toBeGreaterThan(0.15)
    expect(savedFraction).toBeLessThan(0.25)
    // The stated mechanism: no laser for the coverlay, looser registration, more parts on the panel.
    expect(three.steps.some(({ stepId }) => stepId === 'coverlay-laser')).toBe(true)
    expect(four.steps.some(({ stepId }) => stepId === 'coverlay-laser')).toBe(false)
    expect([three.registration, four.registration]).toEqual(['tight', 'ordinary'])
    expect(four.panel.partsPerPanel).toBeGreaterThan(three.panel.partsPerPanel)
  })

  it('without that mechanism the fourth layer costs more: nothing else makes the difference', () => {
    const level = findRegistrationCost(RATES, 'ordinary')
    const drill = RATES.steps.find(({ id }) => id === 'coverlay-drill')
    if (drill === undefined) throw new Error('no drill')
    const rates = {
      steps: RATES.steps.map((step) =>
        step.id === 'coverlay-laser' ? { ...drill, id: step.id, name: step.name } : step,
      ),
      registration: RATES.registration.map(({ demand }) => ({ ...level, demand })),
    }
    const outline: Outline = [
      [0, 0],
      [100, 0],
      [100, 30],
      [0, 30],
    ]
    const [three, four] = ['three-layer-outer-flex', 'four-layer-inner-flex'].map((id) => priceOf(id, outline, rates))
    expect(four?.indexPerGoodPart).toBeGreaterThan(three?.indexPerGoodPart ?? 0)
  })
})

describe('sheet materials are 20 to 60 % of the price of flexible work [trade magazine, June 2024]', () => {
  it.each(listStartingConstructions().map(({ id }) => [id]))('%s', (id) => {
    const cost = priceOf(id, [
      [0, 0],
      [60, 0],
      [60, 35],
      [0, 35],
    ])
    const materials = cost.steps.filter(({ step }) => step.group === 'materials')
    const share = materials.reduce((sum, { shareFraction }) => sum + shareFraction, 0)
    expect(share).toBeGreaterThan(0.2)
    expect(share).toBeLessThan(0.6)
  })
})
