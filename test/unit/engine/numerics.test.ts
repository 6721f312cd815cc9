import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createRandomStream, findRoot, normalUpperTailFraction, requireNumber } from '@/lib/engine/numerics'
import { between } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

describe('findRoot', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('finds the root of a cubic anywhere in a bracket, falling or rising', () => {
    holds(
      fc.property(
        between(-50, 50),
        between(0.01, 60),
        between(0.01, 60),
        fc.boolean(),
        (root, left, right, falling) => {
          const f = (x: number) => (falling ? -1 : 1) * ((x - root) ** 3 + (x - root))
          const found = findRoot(f, { low: root - left, high: root + right, tolerance: 1e-9 })
          expect(Math.abs(found.root - root)).toBeLessThanOrEqual(2e-9)
        },
      ),
    )
  })

  it('needs at most two evaluations more than bisection, even for a step', () => {
    holds(
      fc.property(between(0.001, 0.999), (edge) => {
        const found = findRoot((x) => (x < edge ? -1 : 1e9), { low: 0, high: 1, tolerance: 2 ** -31 })
        expect(found.evaluations).toBeLessThanOrEqual(2 + 30 + 2)
        expect(Math.abs(found.root - edge)).toBeLessThanOrEqual(2 ** -30)
      }),
    )
  })

  it('takes a root at an end as found', () => {
    expect(findRoot((x) => x, { low: 0, high: 1, tolerance: 1e-9 }).root).toBe(0)
    expect(findRoot((x) => x - 1, { low: 0, high: 1, tolerance: 1e-9 }).root).toBe(1)
  })

  it('refuses a bracket without a change of sign, an empty bracket and a function that is not a number', () => {
    expect(() => findRoot((x) => x + 5, { low: 0, high: 1, tolerance: 1e-9 })).toThrow(/no sign change between low 0/)
    expect(() => findRoot((x) => x, { low: 1, high: 1, tolerance: 1e-9 })).toThrow(/^high must be a number above 1/)
    expect(() => findRoot(() => Number.NaN, { low: 0, high: 1, tolerance: 1e-9 })).toThrow(/^f\(low\)/)
  })

  it('ends when asked for more digits than numbers have', () => {
    const found = findRoot((x) => x * x - 2, { low: 1, high: 2, tolerance: 1e-300 })
    expect(Math.abs(found.root - Math.SQRT2)).toBeLessThanOrEqual(4 * Number.EPSILON)
  })
})

describe('createRandomStream', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('gives the same stream for the same seed and another for another', () => {
    const take = (seed: number) => {
      const stream = createRandomStream(seed)
      return Array.from({ length: 20 }, () => stream.nextUniform())
    }
    expect(take(7)).toEqual(take(7))
    expect(take(7)).not.toEqual(take(8))
  })

  it('is uniform: chi-squared over 64 bins of 64,000 draws stays below its 99.9 % point, for several seeds', () => {
    for (const seed of [0, 1, 12345, 2 ** 32 - 1]) {
      const stream = createRandomStream(seed)
      const counts = new Array<number>(64).fill(0)
      for (let draw = 0; draw < 64_000; draw += 1) {
        const bin = Math.floor(stream.nextUniform() * 64)
        counts[bin] = (counts[bin] ?? 0) + 1
      }
      const chiSquared = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
      expect(chiSquared).toBeLessThan(104)
    }
  })

  it('draws normals with mean 0, variance 1 and the right tail', () => {
    const stream = createRandomStream(3)
    const draws = Array.from({ length: 100_000 }, () => stream.nextNormal())
    const mean = draws.reduce((sum, each) => sum + each, 0) / draws.length
    const variance = draws.reduce((sum, each) => sum + (each - mean) ** 2, 0) / draws.length
    const aboveTwo = draws.filter((each) => each > 2).length / draws.length
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(draws.length))
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / draws.length))
    expect(Math.abs(aboveTwo / normalUpperTailFraction(2) - 1)).toBeLessThan(0.09)
  })

  it('refuses a seed that is not a whole number of 32 bits', () => {
    expect(() => createRandomStream(1.5)).toThrow(/^seed must be a whole number/)
    expect(() => createRandomStream(-1)).toThrow(RangeError)
  })
})

describe('normalUpperTailFraction', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('is symmetric and falls', () => {
    holds(
      // Below -5 one step of z is lost in the rounding of a value next to 1.
      fc.property(between(-5, 8), (z) => {
        expect(normalUpperTailFraction(z) + normalUpperTailFraction(-z)).toBeCloseTo(1, 12)
        expect(normalUpperTailFraction(z + 0.01)).toBeLessThan(normalUpperTailFraction(z))
      }),
    )
  })

  it('joins its two expansions without a step', () => {
    const atJoin = 2 * Math.SQRT2
    const below = normalUpperTailFraction(atJoin * (1 - 1e-13))
    expect(Math.abs(below / normalUpperTailFraction(atJoin) - 1)).toBeLessThan(1e-10)
  })
})

describe('requireNumber', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('names argument, range and value', () => {
    expect(() => requireNumber('thicknessUm', Number.NaN, { above: 0, atMost: 10, unit: 'um' })).toThrow(
      new RangeError('thicknessUm must be a number above 0 um and at most 10 um; found NaN'),
    )
    expect(() => requireNumber('ratio', Number.POSITIVE_INFINITY, {})).toThrow('ratio must be a finite number')
  })
})
