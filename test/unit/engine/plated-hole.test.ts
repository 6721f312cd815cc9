import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { computeBarrelStrain } from '@/lib/engine/life'

const copper = { modulusGpa: 82.7, yieldStrengthMpa: 172, tensileStrengthMpa: 276, fatigueDuctility: 0.3 }
const hole = {
  expansionPpmPerC: 60,
  stackModulusGpa: 10,
  stackThicknessMm: 1,
  drillMm: 0.3,
  wallUm: 20,
  temperatureRangeDegC: 100,
  copper,
}
const strainOf = (change: Partial<typeof hole>) => computeBarrelStrain({ ...hole, ...change }).strainRangeFraction

describe('strain of the wall of a plated hole', () => {
  it('grows with temperature, expansion, stiffness and thickness of the stack, and falls with the wall', () => {
    const factor = fc.double({ min: 1.01, max: 3, noNaN: true })
    fc.assert(
      fc.property(factor, (more) => {
        for (const key of [
          'expansionPpmPerC',
          'stackModulusGpa',
          'stackThicknessMm',
          'temperatureRangeDegC',
        ] as const) {
          expect(strainOf({ [key]: more * hole[key] }), key).toBeGreaterThan(strainOf({}))
        }
        expect(strainOf({ wallUm: more * hole.wallUm })).toBeLessThan(strainOf({}))
      }),
    )
  })

  it('never exceeds what the stack expands freely past the copper, and comes near it where the stack is stiff', () => {
    const free = (60 - 18) * 1e-6 * 100
    expect(strainOf({})).toBeLessThan(free)
    expect(strainOf({ stackModulusGpa: 100, stackThicknessMm: 10 })).toBeGreaterThan(0.99 * free)
  })

  it('has no jump where copper starts to yield', () => {
    let low = 1
    let high = 100
    for (let step = 0; step < 60; step += 1) {
      const middle = (low + high) / 2
      if (computeBarrelStrain({ ...hole, temperatureRangeDegC: middle }).isPastYield) high = middle
      else low = middle
    }
    expect(strainOf({ temperatureRangeDegC: high }) / strainOf({ temperatureRangeDegC: low })).toBeCloseTo(1, 9)
  })

  it('strains nothing where the stack expands as copper does', () => {
    expect(strainOf({ expansionPpmPerC: 18 })).toBe(0)
  })

  it('refuses a wall that leaves no bore', () => {
    expect(() => strainOf({ wallUm: 150 })).toThrow(/wallUm/)
  })
})
