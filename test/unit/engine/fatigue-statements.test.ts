import { describe, expect, it } from 'vitest'
import {
  computeAllowableStrain,
  computeMedianLife,
  EXTRAPOLATION_CYCLES,
  type FatigueFoil,
  fatigueStrainRangeFraction,
  RANKING_LIMIT_CYCLES,
  strainRangeOfMotion,
} from '@/lib/engine/life'

/** What prose and cautions say about fatigue, held against the relation as it is built in. */
describe('statements about fatigue', () => {
  const rolled: FatigueFoil = { fatigueDuctility: 0.65, tensileStrengthMpa: 172, modulusGpa: 110 }
  const deposited: FatigueFoil = { fatigueDuctility: 0.25, tensileStrengthMpa: 310, modulusGpa: 110 }

  it('0.3 % is not endless life: the median is 3e4 to 2e5 cycles one way', () => {
    for (const foil of [rolled, deposited]) {
      const { cycles } = computeMedianLife(foil, strainRangeOfMotion(0.003, 'one-way'))
      expect(cycles).toBeGreaterThan(3e4)
      expect(cycles).toBeLessThan(2e5)
    }
  })

  it('at 1e5 cycles the long-life term is 0.9 Su/E whatever the ductility', () => {
    const longLife = fatigueStrainRangeFraction(rolled, 1e5) - 1e5 ** -0.6 * 0.65 ** 0.75
    expect(longLife / ((0.9 * 172) / 110e3)).toBeCloseTo(1, 12)
  })

  it('the relation puts strong electrodeposited foil above ductile rolled foil at 0.3 %, where it marks both as strength-governed', () => {
    const rolledLife = computeMedianLife(rolled, 0.003)
    const depositedLife = computeMedianLife(deposited, 0.003)
    expect(depositedLife.cycles).toBeGreaterThan(rolledLife.cycles)
    expect(rolledLife.cycles).toBeGreaterThan(RANKING_LIMIT_CYCLES)
    expect(rolledLife.strengthGoverned && depositedLife.strengthGoverned).toBe(true)
    expect(rolledLife.extrapolated).toBe(rolledLife.cycles > EXTRAPOLATION_CYCLES)
  })

  it('two million one-way cycles allow about 0.1 % at the median', () => {
    const { strainPct } = computeAllowableStrain({
      foil: rolled,
      requiredCycles: 2e6,
      motion: 'one-way',
      survival: { failureFraction: 0.5, weibullSlope: 2 },
    })
    expect(strainPct).toBeGreaterThan(0.085)
    expect(strainPct).toBeLessThan(0.115)
  })
})
