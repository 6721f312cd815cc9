import { describe, expect, it } from 'vitest'
import { fitLifeAtFraction, fitWeibull, type LifeSpecimen, rankFailures } from '@/lib/engine/life'

const failed = (cycles: number): LifeSpecimen => ({ cycles, hasSurvived: false })
const survived = (cycles: number): LifeSpecimen => ({ cycles, hasSurvived: true })

function fitOf(specimens: readonly LifeSpecimen[]) {
  const reading = fitWeibull(specimens)
  if (!reading.ok) throw new Error(reading.because)
  return reading.fit
}

/**
 * J. Lieblein and M. Zelen, Statistical investigation of the fatigue life of deep-groove ball bearings, Journal of Research of the National
 * Bureau of Standards 57 (1956) 273: 23 bearings, millions of revolutions. Fits of the set are in many books: slope 2.10, scale 81.9.
 */
const BEARINGS = [
  17.88, 28.92, 33.0, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12, 93.12,
  98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
].map(failed)

/**
 * NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.2.1 and 8.4.1.2: 20 units, ten failures, the others unbroken at 500 h; the handbook
 * gives the maximum likelihood estimates slope 1.7208 and characteristic life 606.5280 h.
 */
const HANDBOOK = [
  ...[54, 187, 216, 240, 244, 335, 361, 373, 375, 386].map(failed),
  ...Array.from({ length: 10 }, () => survived(500)),
]

describe('Weibull fit against published data', () => {
  it('gives the slope and scale of the ball bearings', () => {
    const { slope, characteristicCycles } = fitOf(BEARINGS)
    expect(slope.value).toBeCloseTo(2.1021, 3)
    expect(characteristicCycles.value).toBeCloseTo(81.878, 2)
  })

  it('gives the slope and scale of the censored handbook example', () => {
    const { slope, characteristicCycles } = fitOf(HANDBOOK)
    expect(slope.value).toBeCloseTo(1.7208, 4)
    expect(characteristicCycles.value).toBeCloseTo(606.528, 3)
  })

  it.each([
    ['bearings', BEARINGS],
    ['handbook', HANDBOOK],
  ])('agrees with a search of the likelihood itself: %s', (_, specimens) => {
    const fit = fitOf(specimens)
    const best = searchLikelihood(specimens)
    expect(fit.slope.value).toBeCloseTo(best.slope, 4)
    expect(fit.characteristicCycles.value / best.scale).toBeCloseTo(1, 4)
    // At each bound the likelihood, maximised over the other parameter on a fine grid, has fallen by half of 2.7055 (chi-square, 90 %).
    for (const bound of [fit.slope.low, fit.slope.high]) {
      const at = Math.max(
        ...range(-3, 3, 6000).map((log) => likelihood(specimens, bound ?? 0, best.scale * Math.exp(log))),
      )
      expect(2 * (best.value - at)).toBeCloseTo(2.7055, 3)
    }
    for (const bound of [fit.characteristicCycles.low, fit.characteristicCycles.high]) {
      const at = Math.max(
        ...range(-3, 3, 6000).map((log) => likelihood(specimens, best.slope * Math.exp(log), bound ?? 0)),
      )
      expect(2 * (best.value - at)).toBeCloseTo(2.7055, 3)
    }
    const tenth = fitLifeAtFraction([specimens], 0, 0.1)
    expect(tenth.value).toBeCloseTo(best.scale * (-Math.log(0.9)) ** (1 / best.slope), 2)
    expect(tenth.low ?? 0).toBeLessThan(tenth.value)
    expect(tenth.high ?? 0).toBeGreaterThan(tenth.value)
  })
})

const range = (from: number, to: number, steps: number) =>
  Array.from({ length: steps + 1 }, (_, at) => from + ((to - from) * at) / steps)

/** By definition, with none of the code under test. */
function likelihood(specimens: readonly LifeSpecimen[], slope: number, scale: number): number {
  return specimens.reduce((sum, { cycles, hasSurvived }) => {
    const hazard = (cycles / scale) ** slope
    return sum - hazard + (hasSurvived ? 0 : Math.log(slope / cycles) + slope * Math.log(cycles / scale))
  }, 0)
}

/** A grid that closes in on the best point: slow and simple. */
function searchLikelihood(specimens: readonly LifeSpecimen[]) {
  let best = { slope: 1, scale: 100, value: likelihood(specimens, 1, 100) }
  for (let width = 3; width > 1e-8; width *= 0.7) {
    const { slope: from, scale: own } = best
    for (const a of range(-width, width, 12)) {
      for (const b of range(-width, width, 12)) {
        const [slope, scale] = [from * Math.exp(a), own * Math.exp(b)]
        const value = likelihood(specimens, slope, scale)
        if (value > best.value) best = { slope, scale, value }
      }
    }
  }
  return best
}

describe('median ranks', () => {
  /** The first of n has the exact median rank 1 - 0.5^(1 / n), and the last its mirror image: from the binomial distribution. */
  it.each([2, 5, 10, 23])('stay within 0.01 of the exact rank of the first and the last of %i', (count) => {
    const ranks = rankFailures(Array.from({ length: count }, (_, at) => failed(at + 1)))
    const exact = 1 - 0.5 ** (1 / count)
    expect(Math.abs((ranks[0]?.failureFraction ?? 0) - exact)).toBeLessThan(0.01)
    expect(Math.abs((ranks.at(-1)?.failureFraction ?? 0) - (1 - exact))).toBeLessThan(0.01)
  })

  /**
   * The rule worked by hand: failure, survivor, failure, failure, survivor, failure. Steps are 7/7, then (7 - 1) / (1 + 4) twice, then
   * (7 - 3.4) / (1 + 1).
   */
  it('adjust the order numbers for survivors', () => {
    const ranks = rankFailures([failed(10), survived(20), failed(30), failed(40), survived(50), failed(60)])
    expect(ranks.map(({ order }) => order)).toEqual([1, 2.2, 3.4, 5.2].map((each) => expect.closeTo(each, 12)))
    expect(ranks[1]?.failureFraction).toBeCloseTo((2.2 - 0.3) / 6.4, 12)
  })
})
