import { describe, expect, it } from 'vitest'
import { findStartingConstruction, listStartingConstructions } from '@/lib/engine/starting-constructions'
import {
  describeConstruction,
  findRegistrationCost,
  listRules,
  makeRates,
  PROCESS_STEPS,
  type PricedPanel,
  priceConstruction,
  priceOnBestPanel,
  processRatesContentSchema,
  type Rates,
  selectSteps,
} from '@/lib/fabrication/cost'
import { readDemoDesign } from '../../engine-assembly/demo-design-files'

const PANEL: PricedPanel = { formatId: 'p', formatName: 'Production', areaM2: 0.2787, partsPerPanel: 60 }
const RATES = makeRates(null)

const makeDesign = (id: string) => {
  const construction = findStartingConstruction(id)
  if (construction === null) throw new Error(id)
  return construction.makeDesign('Trial')
}

/** The delivered table with one line of it changed. */
const change = (stepId: string, changed: Partial<Rates['steps'][number]>): Rates => ({
  ...RATES,
  steps: RATES.steps.map((step) => (step.id === stepId ? { ...step, ...changed } : step)),
})

describe('impedances', () => {
  const withClass = (coupon: boolean | null) => {
    const design = structuredClone(readDemoDesign('skua-rev-a'))
    design.brief.couponTest = null
    const [conductor] = design.features.conductors
    if (conductor === undefined) throw new Error('no conductor')
    design.features.netClasses.push({
      id: 'data',
      name: 'Data',
      impedanceOhm: 60,
      tolerancePct: 20,
      kind: 'single',
      referenceLayerId: null,
      coupon,
      crosstalkLimitPct: null,
      riseTimePs: null,
    })
    conductor.netClassId = 'data'
    return design
  }

  it('a coupon that a net class asks for costs what one of the brief does, and is said', () => {
    const indexOf = (design: Parameters<typeof describeConstruction>[0]) =>
      priceConstruction(describeConstruction(design), RATES, PANEL, 500).indexPerGoodPart
    const without = withClass(false)
    const byBrief = { ...without, brief: { ...without.brief, couponTest: true } }
    expect(indexOf(withClass(true))).toBeGreaterThan(indexOf(without))
    expect(indexOf(withClass(true))).toBe(indexOf(byBrief))
    expect(indexOf(withClass(null))).toBe(indexOf(without))
    const step = selectSteps(describeConstruction(withClass(true))).find(({ stepId }) => stepId === 'coupon-test')
    expect(step?.because).toContain('Conductors whose impedance is stated with a coupon: 1.')
  })
})

describe('identities', () => {
  const designs = [
    ...listStartingConstructions().map(({ id, makeDesign: make }) => [id, make('Trial')] as const),
    ['Skua A', readDemoDesign('skua-rev-a')] as const,
    ['Pipit A', readDemoDesign('pipit-rev-a')] as const,
  ]

  it.each(designs)('%s: shares add up to 1 and steps to the index, whatever the quantity', (_name, design) => {
    for (const quantity of [null, 1, 59, 2400, 1_000_000]) {
      const cost = priceConstruction(describeConstruction(design), RATES, PANEL, quantity)
      expect(cost.steps.reduce((sum, { shareFraction }) => sum + shareFraction, 0)).toBeCloseTo(1, 12)
      const sum = cost.steps.reduce((total, { indexPerGoodPart }) => total + indexPerGoodPart, 0)
      expect(sum).toBeCloseTo(cost.indexPerGoodPart, 9)
      expect(cost.yieldChain.at(-1)?.runningFraction).toBe(cost.yieldFraction)
    }
  })

  it('a yield of 1 equals leaving the yield out', () => {
    const traits = describeConstruction(makeDesign('four-layer-inner-flex'))
    for (const { stepId } of selectSteps(traits)) {
      const at1 = priceConstruction(traits, change(stepId, { yieldFraction: 1 }), PANEL, 500)
      const without = priceConstruction(traits, change(stepId, { yieldFraction: null }), PANEL, 500)
      expect(at1.indexPerGoodPart).toBe(without.indexPerGoodPart)
      expect(at1.yieldFraction).toBe(without.yieldFraction)
    }
  })

  it('a rate that is scaled scales the cost of its step, and leaves the others', () => {
    const traits = describeConstruction(makeDesign('three-layer-outer-flex'))
    const before = priceConstruction(traits, RATES, PANEL, null)
    for (const { stepId } of before.steps) {
      const rate = RATES.steps.find(({ id }) => id === stepId)?.rateIndex ?? 0
      const after = priceConstruction(traits, change(stepId, { rateIndex: 3 * rate }), PANEL, null)
      after.steps.forEach((step, at) => {
        const factor = step.stepId === stepId ? 3 : 1
        expect(step.indexPerGoodPart).toBeCloseTo(factor * (before.steps[at]?.indexPerGoodPart ?? 0), 9)
      })
    }
  })

  it('all rates scaled alike change no share', () => {
    const traits = describeConstruction(makeDesign('six-layer-unbonded-leaves'))
    const scaled: Rates = {
      ...RATES,
      steps: RATES.steps.map((step) => ({ ...step, rateIndex: 7 * step.rateIndex, setUpIndex: 7 * step.setUpIndex })),
    }
    const [before, after] = [RATES, scaled].map((rates) => priceConstruction(traits, rates, PANEL, 300))
    expect(after?.indexPerGoodPart).toBeCloseTo(7 * (before?.indexPerGoodPart ?? 0), 9)
    after?.steps.forEach(({ shareFraction }, at) => {
      expect(shareFraction).toBeCloseTo(before?.steps[at]?.shareFraction ?? 0, 12)
    })
  })

  it('set-up fades with the quantity, and an endless run has none', () => {
    const traits = describeConstruction(makeDesign('double-sided'))
    const indexes = [10, 100, 1000, 10_000, 1_000_000].map(
      (quantity) => priceConstruction(traits, RATES, PANEL, quantity).indexPerGoodPart,
    )
    expect([...indexes].sort((a, b) => b - a)).toEqual(indexes)
    expect(indexes.at(-1)).toBeCloseTo(priceConstruction(traits, RATES, PANEL, null).indexPerGoodPart, 2)
  })

  it('starts whole panels, as many as the good parts need', () => {
    const traits = describeConstruction(makeDesign('single-sided'))
    const { yieldFraction } = priceConstruction(traits, RATES, PANEL, null)
    const perPanel = 60 * yieldFraction
    expect(priceConstruction(traits, RATES, PANEL, Math.floor(perPanel)).panelCount).toBe(1)
    expect(priceConstruction(traits, RATES, PANEL, Math.ceil(perPanel)).panelCount).toBe(2)
  })
})

describe('steps', () => {
  it('every rule names a step of the table, and every step has a rule', () => {
    expect(
      listRules()
        .map(({ stepId }) => stepId)
        .sort(),
    ).toEqual(PROCESS_STEPS.map(({ id }) => id).sort())
    expect(new Set(PROCESS_STEPS.map(({ id }) => id)).size).toBe(PROCESS_STEPS.length)
  })

  const stepsOf = (id: string) => new Map(selectSteps(describeConstruction(makeDesign(id))).map((s) => [s.stepId, s]))

  it('coverlay over outer flexible layers is opened by laser, within the rigid ones by drill', () => {
    const [outer, inner] = [stepsOf('three-layer-outer-flex'), stepsOf('four-layer-inner-flex')]
    expect(outer.get('coverlay-laser')).toMatchObject({
      count: 2,
      because: expect.stringContaining('2 of 2 coverlays lie over an outer flexible layer'),
    })
    expect(outer.has('coverlay-drill')).toBe(false)
    expect(inner.get('coverlay-drill')).toMatchObject({ count: 2 })
    expect(inner.has('coverlay-laser')).toBe(false)
    expect(inner.get('imaging')?.count).toBe(4)
    expect(outer.get('imaging')?.count).toBe(3)
    expect(inner.get('cap-windows')?.count).toBe(2)
    expect(outer.has('cap-removal')).toBe(false)
  })

  it('a flexible circuit has no rigid steps, and says what it assumed of the finish', () => {
    const steps = stepsOf('double-sided')
    for (const id of ['rigid-clad', 'final-press', 'cap-windows', 'prepreg-windows', 'solder-mask']) {
      expect(steps.has(id), id).toBe(false)
    }
    expect(steps.get('finish-other')?.because).toContain('one without nickel is assumed')
  })

  it('a narrow web asks for tight registration, by name', () => {
    const skua = describeConstruction(readDemoDesign('skua-rev-a'))
    expect(skua).toMatchObject({ registration: 'tight', coverlayMethod: 'laser' })
    expect(skua.registrationBecause).toContain('Test points on the link')
    expect(describeConstruction(readDemoDesign('skua-rev-b')).registration).toBe('ordinary')
  })
})

describe('a fabricator’s rates', () => {
  it('replace lines of the table, and only those', () => {
    const rates = makeRates({
      steps: [{ stepId: 'imaging', rateIndex: 1, setUpIndex: 2, yieldFraction: null }],
      registration: [{ demand: 'tight', extraMarginMm: 1, extraSpacingMm: 2, yieldFraction: 0.5 }],
    })
    expect(rates.steps.find(({ id }) => id === 'imaging')).toMatchObject({ rateIndex: 1, isIllustrative: false })
    expect(rates.steps.filter(({ isIllustrative }) => !isIllustrative)).toHaveLength(1)
    expect(findRegistrationCost(rates, 'tight')).toMatchObject({ yieldFraction: 0.5, isIllustrative: false })
    expect(findRegistrationCost(rates, 'loose').isIllustrative).toBe(true)
  })

  it('are refused with the line and the reason', () => {
    const line = { stepId: 'imaging', rateIndex: 1, setUpIndex: 0, yieldFraction: null }
    const read = (steps: unknown[]) => {
      const parsed = processRatesContentSchema.safeParse({ steps, registration: [] })
      return parsed.success ? [] : parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
    }
    expect(read([line, line])).toEqual(['steps.1.stepId: "imaging" is replaced twice'])
    expect(read([{ ...line, rateIndex: -1 }])).toEqual(['steps.0.rateIndex: must not be negative'])
    expect(read([{ ...line, yieldFraction: 0 }])).toEqual([
      'steps.0.yieldFraction: must be greater than 0: nothing would be left',
    ])
    expect(read([{ ...line, stepId: 'alchemy' }])).toEqual(['steps.0.stepId: is not a step of the table'])
  })

  it('the cheapest panel that holds a part is taken', () => {
    const traits = describeConstruction(makeDesign('double-sided'))
    const small = { ...PANEL, formatId: 'small', partsPerPanel: 3 }
    const none = { ...PANEL, formatId: 'none', partsPerPanel: 0 }
    expect(priceOnBestPanel(traits, RATES, [none, small, PANEL], null)?.panel.formatId).toBe('p')
    expect(priceOnBestPanel(traits, RATES, [none], null)).toBeNull()
  })
})
