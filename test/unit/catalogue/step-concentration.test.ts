import { describe, expect, it } from 'vitest'
import { computeStepConcentration, filletRadiusOfTaperMm } from '@/lib/engine/catalogue'

describe('stress concentration of a width step', () => {
  it('says when a fillet is sharper than the fit covers (t/r = 25 > 20), and does not extrapolate', () => {
    const sharp = computeStepConcentration(20, 10, 0.2)
    expect(sharp).toEqual({ ratio: computeStepConcentration(20, 10, 0.25).ratio, isOutOfRange: true })
    expect(computeStepConcentration(20, 10, 0)).toEqual(sharp)
  })

  it('falls when the fillet grows, over the whole range of the fit', () => {
    for (const narrowMm of [1, 3, 5, 7, 9]) {
      let previous = Number.POSITIVE_INFINITY
      for (let heightToRadius = 20; heightToRadius >= 0.1; heightToRadius /= 1.1) {
        const { ratio } = computeStepConcentration(10, narrowMm, (10 - narrowMm) / 2 / heightToRadius)
        // The two fits meet at t/r = 2 with a step of up to 4 %.
        expect(ratio).toBeLessThanOrEqual(previous * 1.04)
        previous = ratio
      }
    }
  })

  it('is 1 where nothing steps, and refuses impossible widths by name', () => {
    expect(computeStepConcentration(5, 5, 0)).toEqual({ ratio: 1, isOutOfRange: false })
    expect(() => computeStepConcentration(0, 0, 1)).toThrow('wideMm must be above 0 mm; 0 was given')
    expect(() => computeStepConcentration(4, 5, 1)).toThrow('narrowMm must lie between 0 and wideMm, 4 mm; 5 was given')
    expect(() => computeStepConcentration(5, 4, -1)).toThrow('filletRadiusMm must be 0 mm or more; -1 was given')
    expect(() => computeStepConcentration(5, 4, Number.NaN)).toThrow(RangeError)
  })
})

describe('fillet of a taper (exact geometry: chord and sagitta)', () => {
  it('is a circle through both ends of the taper, tangent to the narrow edge', () => {
    for (const [heightMm, lengthMm] of [
      [0.1, 0.1],
      [0.1, 0.3],
      [0.25, 2],
    ] as const) {
      const radiusMm = filletRadiusOfTaperMm(heightMm, lengthMm)
      // Centre at (0, r): the far end of the taper, (L, t), lies on the circle.
      expect(Math.hypot(lengthMm, heightMm - radiusMm)).toBeCloseTo(radiusMm, 12)
    }
  })

  it('is the taper itself where that is shorter than the step is high', () => {
    expect(filletRadiusOfTaperMm(0.2, 0.05)).toBe(0.05)
    expect(filletRadiusOfTaperMm(0.2, 0)).toBe(0)
    expect(filletRadiusOfTaperMm(0.2, 0.2)).toBeCloseTo(0.2, 12)
  })
})
