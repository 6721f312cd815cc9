import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitWeibull, type LifeSpecimen } from '@/lib/engine/life'
import { createRandomStream } from '@/lib/engine/numerics'

const specimen = fc.record({ cycles: fc.integer({ min: 50, max: 2_000_000 }), hasSurvived: fc.boolean() })
const test = fc
  .array(specimen, { minLength: 3, maxLength: 25 })
  .filter((each) => new Set(each.filter(({ hasSurvived }) => !hasSurvived).map(({ cycles }) => cycles)).size >= 2)

function fitOf(specimens: readonly LifeSpecimen[]) {
  const reading = fitWeibull(specimens)
  if (!reading.ok) throw new Error(reading.because)
  return reading.fit
}

describe('fitWeibull', () => {
  it('scales life with the cycles and leaves the slope', () => {
    fc.assert(
      fc.property(test, fc.double({ min: 0.01, max: 100, noNaN: true }), (specimens, factor) => {
        const fit = fitOf(specimens)
        const scaled = fitOf(specimens.map((each) => ({ ...each, cycles: each.cycles * factor })))
        expect(scaled.slope.value / fit.slope.value).toBeCloseTo(1, 6)
        expect(scaled.characteristicCycles.value / fit.characteristicCycles.value / factor).toBeCloseTo(1, 6)
      }),
    )
  })

  it('never gives a shorter characteristic life for survivors that outlasted every specimen', () => {
    fc.assert(
      fc.property(test, fc.integer({ min: 1, max: 5 }), (specimens, count) => {
        const longest = Math.max(...specimens.map(({ cycles }) => cycles))
        const more = Array.from({ length: count }, () => ({ cycles: longest, hasSurvived: true }))
        expect(fitOf([...specimens, ...more]).characteristicCycles.value).toBeGreaterThanOrEqual(
          fitOf(specimens).characteristicCycles.value * (1 - 1e-9),
        )
      }),
    )
  })

  it('has its estimate within its bounds', () => {
    fc.assert(
      fc.property(test, (specimens) => {
        const { slope, characteristicCycles, medianCycles } = fitOf(specimens)
        for (const { value, low, high } of [slope, characteristicCycles, medianCycles]) {
          expect(low ?? 0).toBeLessThan(value)
          expect(high ?? Number.POSITIVE_INFINITY).toBeGreaterThan(value)
        }
      }),
    )
  })

  it('covers the true slope and median about as often as its confidence says', () => {
    const random = createRandomStream(20_261_129)
    const truth = { slope: 2.5, scale: 40_000 }
    const median = truth.scale * Math.LN2 ** (1 / truth.slope)
    let [slopes, medians] = [0, 0]
    const runs = 400
    for (let run = 0; run < runs; run += 1) {
      const lives = Array.from(
        { length: 20 },
        () => truth.scale * (-Math.log(1 - random.nextUniform())) ** (1 / truth.slope),
      )
      const fit = fitOf(lives.map((life) => ({ cycles: Math.min(life, 50_000), hasSurvived: life > 50_000 })))
      const covers = ({ low, high }: { low: number | null; high: number | null }, value: number) =>
        (low ?? 0) <= value && value <= (high ?? Number.POSITIVE_INFINITY)
      if (covers(fit.slope, truth.slope)) slopes += 1
      if (covers(fit.medianCycles, median)) medians += 1
    }
    // 90 % of 400 runs, with a standard error of 1.5 %: likelihood ratio bounds are a little short for 20 specimens.
    expect(slopes / runs).toBeGreaterThan(0.84)
    expect(medians / runs).toBeGreaterThan(0.84)
    expect(slopes / runs).toBeLessThan(0.96)
    expect(medians / runs).toBeLessThan(0.96)
  })

  it.each([
    ['none failed', [{ cycles: 1e5, hasSurvived: true }], 'no specimen failed'],
    [
      'one failed',
      [
        { cycles: 1e5, hasSurvived: true },
        { cycles: 2e4, hasSurvived: false },
      ],
      'only one specimen failed',
    ],
    [
      'all failed at once',
      [1, 2, 3].map(() => ({ cycles: 2e4, hasSurvived: false })),
      'all failures came at the same number of cycles',
    ],
  ])('cannot tell where %s', (_, specimens, because) => {
    expect(fitWeibull(specimens)).toEqual({ ok: false, because: expect.stringContaining(because) })
  })

  it('tells a slope where failures came at once and another outlasted them', () => {
    const fit = fitOf([
      { cycles: 100, hasSurvived: false },
      { cycles: 100, hasSurvived: false },
      { cycles: 300, hasSurvived: true },
    ])
    expect(fit.slope.value).toBeGreaterThan(0.3)
    expect(fit.slope.value).toBeLessThan(5)
  })

  it('refuses cycles that are none', () => {
    expect(() => fitWeibull([{ cycles: 0, hasSurvived: false }])).toThrow(/specimens\[0\]/)
  })
})
