import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  computeAllowableStrain,
  computeBendLife,
  computeMedianLife,
  type FatigueFoil,
  fatigueStrainRangeFraction,
  lifeOverMedianFraction,
} from '@/lib/engine/life'
import { between } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

/** Any foil that could be entered: brittle to very ductile, soft to hard. */
const foil: fc.Arbitrary<FatigueFoil> = fc.record({
  fatigueDuctility: between(0.005, 5),
  tensileStrengthMpa: between(50, 1000),
  modulusGpa: between(30, 200),
})
const motion = fc.constantFrom('one-way' as const, 'reversed' as const)
const survival = fc.record({ failureFraction: between(0.0001, 0.5), weibullSlope: between(1, 6) })

describe('median life', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('inverts the relation over the whole domain of 1 to 1e12 cycles', () => {
    holds(
      fc.property(foil, between(0, 12), (each, logCycles) => {
        const cycles = 10 ** logCycles
        const life = computeMedianLife(each, fatigueStrainRangeFraction(each, cycles))
        // 1e-11 decades of the root finder, and what one rounding of the strain range moves a flat curve.
        expect(Math.abs(life.cycles / cycles - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: 2000 },
    )
  })

  it('converges for any strain range, and says when the life lies outside the domain', () => {
    holds(
      fc.property(foil, between(-6, 0.9), (each, logRange) => {
        const range = 10 ** logRange
        const { cycles, bound } = computeMedianLife(each, range)
        expect(cycles).toBeGreaterThanOrEqual(1)
        expect(cycles).toBeLessThanOrEqual(1e12)
        if (range > fatigueStrainRangeFraction(each, 1)) expect(bound).toBe('below')
        else if (range < fatigueStrainRangeFraction(each, 1e12)) expect(bound).toBe('above')
        else expect(bound).toBe('within')
      }),
      { numRuns: 2000 },
    )
  })

  it('falls when strain rises', () => {
    holds(
      fc.property(foil, between(0.0002, 0.3), between(1.001, 3), (each, range, factor) => {
        const gentle = computeMedianLife(each, range)
        const severe = computeMedianLife(each, range * factor)
        if (gentle.bound === 'within' && severe.bound === 'within') expect(severe.cycles).toBeLessThan(gentle.cycles)
        else expect(severe.cycles).toBeLessThanOrEqual(gentle.cycles)
      }),
    )
  })

  it('is shorter reversed than one way at the same strain', () => {
    const rolled: FatigueFoil = { fatigueDuctility: 0.65, tensileStrengthMpa: 172, modulusGpa: 110 }
    const even = { failureFraction: 0.5, weibullSlope: 2 }
    const at = (strainPct: number, way: 'one-way' | 'reversed') =>
      computeBendLife({ foil: rolled, strainPct, motion: way, survival: even }).median.cycles
    // Twice the range is about a third of the life where life is short, and far less where it is long.
    expect(at(5, 'one-way') / at(5, 'reversed')).toBeGreaterThan(2.5)
    expect(at(5, 'one-way') / at(5, 'reversed')).toBeLessThan(4)
    expect(at(0.06, 'one-way') / at(0.06, 'reversed')).toBeGreaterThan(50)
  })
})

describe('allowable strain', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('gives back the life that it was asked for', () => {
    holds(
      fc.property(foil, between(0.5, 8), motion, survival, (each, logCycles, way, chosen) => {
        const requiredCycles = 10 ** logCycles
        const allowable = computeAllowableStrain({ foil: each, requiredCycles, motion: way, survival: chosen })
        if (allowable.beyondRelation) return
        const life = computeBendLife({ foil: each, strainPct: allowable.strainPct, motion: way, survival: chosen })
        expect(Math.abs(life.survivalCycles / requiredCycles - 1)).toBeLessThan(1e-8)
      }),
    )
  })

  it('says when the survival asks for more than 1e12 median cycles', () => {
    const rolled: FatigueFoil = { fatigueDuctility: 0.65, tensileStrengthMpa: 172, modulusGpa: 110 }
    const { beyondRelation } = computeAllowableStrain({
      foil: rolled,
      requiredCycles: 1e11,
      motion: 'one-way',
      survival: { failureFraction: 0.0001, weibullSlope: 1 },
    })
    expect(beyondRelation).toBe(true)
  })

  it('is the strain at which the required life is just reached', () => {
    const rolled: FatigueFoil = { fatigueDuctility: 0.65, tensileStrengthMpa: 172, modulusGpa: 110 }
    for (const lifeFraction of [1, 0.2]) {
      const common = {
        foil: rolled,
        motion: 'one-way',
        survival: { failureFraction: 0.01, weibullSlope: 2, lifeFraction },
      } as const
      const { strainPct } = computeAllowableStrain({ ...common, requiredCycles: 1e5 })
      const lives = [1.1, 1, 0.9].map(
        (share) => computeBendLife({ ...common, strainPct: share * strainPct }).survivalCycles,
      )
      expect(lives[0]).toBeLessThan(1e5)
      expect(Math.abs((lives[1] ?? Number.NaN) / 1e5 - 1)).toBeLessThan(1e-8)
      expect(lives[2]).toBeGreaterThan(1e5)
    }
  })
})

describe('survival', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('is the median at one half, and falls with the share that may fail', () => {
    holds(
      fc.property(between(0.5, 20), between(1e-6, 0.4), (slope, fraction) => {
        expect(lifeOverMedianFraction(0.5, slope)).toBeCloseTo(1, 12)
        expect(lifeOverMedianFraction(fraction, slope)).toBeLessThan(1)
        expect(lifeOverMedianFraction(fraction / 2, slope)).toBeLessThan(lifeOverMedianFraction(fraction, slope))
      }),
    )
  })
})
