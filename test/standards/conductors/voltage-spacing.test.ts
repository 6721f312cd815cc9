import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findKnownSpacing } from '@/lib/engine/conductors'

/** ECSS-Q-ST-70-12C (2014), table 13-3, as quoted in notes on it; the table itself was not read. */
const QUOTED = [
  { surface: 'bare', volt: 20, spaceMm: 0.3 },
  { surface: 'bare', volt: 36, spaceMm: 0.5 },
  { surface: 'covered', volt: 20, spaceMm: 0.12 },
  { surface: 'covered', volt: 36, spaceMm: 0.16 },
  { surface: 'covered', volt: 400, spaceMm: 0.8 },
] as const

describe('spacing by voltage against the quoted table', () => {
  it.each(QUOTED)('$surface at $volt V needs $spaceMm mm, no more and no less', ({ surface, volt, spaceMm }) => {
    expect(findKnownSpacing(volt, surface)).toEqual({ atLeastMm: spaceMm, enoughMm: spaceMm })
  })

  it('says nothing below the first voltage but what is enough, and nothing past the last but what is too little', () => {
    expect(findKnownSpacing(5, 'bare')).toEqual({ atLeastMm: null, enoughMm: 0.3 })
    expect(findKnownSpacing(24, 'covered')).toEqual({ atLeastMm: 0.12, enoughMm: 0.16 })
    expect(findKnownSpacing(1000, 'covered')).toEqual({ atLeastMm: 0.8, enoughMm: null })
  })

  it('never asks less of a higher voltage, nor of bare copper', () => {
    const volts = fc.double({ min: 1, max: 2000, noNaN: true })
    fc.assert(
      fc.property(volts, volts, (one, other) => {
        const [low, high] = one <= other ? [one, other] : [other, one]
        for (const surface of ['bare', 'covered'] as const) {
          const [atLow, atHigh] = [findKnownSpacing(low, surface), findKnownSpacing(high, surface)]
          expect(atHigh.atLeastMm ?? 0).toBeGreaterThanOrEqual(atLow.atLeastMm ?? 0)
          expect(atHigh.enoughMm ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(
            atLow.enoughMm ?? Number.POSITIVE_INFINITY,
          )
          expect(atLow.atLeastMm ?? 0).toBeLessThanOrEqual(atLow.enoughMm ?? Number.POSITIVE_INFINITY)
        }
        expect(findKnownSpacing(low, 'bare').enoughMm ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(
          findKnownSpacing(low, 'covered').atLeastMm ?? 0,
        )
      }),
    )
  })
})
