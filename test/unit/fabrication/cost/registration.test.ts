import { describe, expect, it } from 'vitest'
import { findStartingConstruction, listStartingConstructions } from '@/lib/engine/starting-constructions'
import { describeConstruction, findRegistrationCost, makeRates, priceConstruction } from '@/lib/fabrication/cost'
import { nestPart, type PanelFormat } from '@/lib/fabrication/panel'

/** 18 x 24 in, a usual size of the trade; borders and spacing are our choice. */
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
const RATES = makeRates(null)
const PART_UM = [
  [0, 0],
  [100_000, 0],
  [100_000, 30_000],
  [0, 30_000],
] as const

function priceOf(id: string, rates = RATES) {
  const construction = findStartingConstruction(id)
  if (construction === null) throw new Error(id)
  const traits = describeConstruction(construction.makeDesign('Trial'))
  const { count } = nestPart(
    { outline: PART_UM, rollingDirection: null },
    FORMAT,
    findRegistrationCost(rates, traits.registration),
  )
  return priceConstruction(
    traits,
    rates,
    { formatId: FORMAT.id, formatName: FORMAT.name, areaM2: 0.4572 * 0.6096, partsPerPanel: count },
    null,
  )
}

describe('flex on the outside against flex on the inside', () => {
  const outer = priceOf('three-layer-outer-flex')
  const inner = priceOf('four-layer-inner-flex')

  it('coverlay over outer flexible layers takes the laser and tight registration', () => {
    expect(outer.steps.some(({ stepId }) => stepId === 'coverlay-laser')).toBe(true)
    expect(inner.steps.some(({ stepId }) => stepId === 'coverlay-laser')).toBe(false)
    expect([outer.registration, inner.registration]).toEqual(['tight', 'ordinary'])
  })

  it('tight registration leaves fewer parts on the panel', () => {
    expect(outer.panel.partsPerPanel).toBeLessThan(inner.panel.partsPerPanel)
  })

  it('laser and registration raise the cost; without them the fourth layer does', () => {
    const level = findRegistrationCost(RATES, 'ordinary')
    const drill = RATES.steps.find(({ id }) => id === 'coverlay-drill')
    if (drill === undefined) throw new Error('no drill')
    const without = {
      steps: RATES.steps.map((step) =>
        step.id === 'coverlay-laser' ? { ...drill, id: step.id, name: step.name } : step,
      ),
      registration: RATES.registration.map(({ demand }) => ({ ...level, demand })),
    }
    const bare = priceOf('three-layer-outer-flex', without)
    expect(bare.indexPerGoodPart).toBeLessThan(outer.indexPerGoodPart)
    expect(priceOf('four-layer-inner-flex', without).indexPerGoodPart).toBeGreaterThan(bare.indexPerGoodPart)
  })
})

describe('the delivered rates', () => {
  it.each(listStartingConstructions().map(({ id }) => [id]))(
    '%s: sheet materials are 20 to 60 % of the cost, which the rates were chosen for',
    (id) => {
      const materials = priceOf(id).steps.filter(({ step }) => step.group === 'materials')
      const share = materials.reduce((sum, { shareFraction }) => sum + shareFraction, 0)
      expect(share).toBeGreaterThan(0.2)
      expect(share).toBeLessThan(0.6)
    },
  )
})
