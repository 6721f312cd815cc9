import { findRoot, requireNumber } from '../numerics'

/** One specimen of a life test. */
export interface LifeSpecimen {
  /** At failure; at the end of its test where it survived. Above 0. */
  readonly cycles: number
  /** Taken out of the test unbroken: it would have lasted longer, nobody knows by how much (right-censored). */
  readonly hasSurvived: boolean
}

/** Estimate with the two-sided 90 % bounds; null where the test sets no such end. */
export interface BoundedEstimate {
  readonly value: number
  readonly low: number | null
  readonly high: number | null
}

/** One condition of a life test. */
export interface FittedLife {
  readonly specimens: number
  readonly failures: number
  /** Life that 63.2 % fail before. */
  readonly characteristicCycles: BoundedEstimate
  readonly medianCycles: BoundedEstimate
}

export interface WeibullFit extends FittedLife {
  readonly slope: BoundedEstimate
}

/** Conditions that share their slope and have a life each. */
export interface CommonSlopeFit {
  readonly slope: BoundedEstimate
  /** In the order of the conditions. */
  readonly lives: readonly FittedLife[]
}

export type WeibullReading =
  | { readonly ok: true; readonly fit: WeibullFit }
  | { readonly ok: false; readonly because: string }

/**
 * Bounds are 90 %, two-sided, so that each end by itself is passed with 5 %: common practice for life tests, no published source. Chi-square, one
 * degree of freedom: the square of the normal quantile 1.6449 (tables of any handbook of statistics).
 */
const CHI_SQUARE_90 = 2.705543454095404
/** A slope past this is no scatter that a test of some specimens could tell from none. */
const LARGEST_SLOPE = 1000
const SMALLEST_SLOPE = 1e-3
const LOG_TOLERANCE = 1e-12
/** In log cycles: bounds further than this from the estimate are none. */
const FURTHEST_BOUND = 60

/**
 * Weibull slope and characteristic life of a life test with survivors, by maximum likelihood.
 *
 * Model    ln L = sum over failures of ln f(t) + sum over survivors of ln S(t), S(t) = exp(-(t / eta)^beta). For a slope the scale has a
 *          closed form; the slope is the root of the score, which falls throughout, so there is only one.
 * Bounds   likelihood ratio: twice the fall of the profile likelihood equals the 90 % point of chi-square with one degree of freedom
 * Holds    one population, one condition. Slopes of few specimens are biased high; no correction is made, the bounds show how little is known.
 * @returns why nobody can tell where fewer than two failed, or all failures came at one number of cycles
 * @throws  RangeError naming the specimen whose cycles are not above 0
 * Source   SOURCES.weibullCensoredFit; check values in test/standards/life
 */
export function fitWeibull(specimens: readonly LifeSpecimen[]): WeibullReading {
  requireCycles(specimens)
  const because = explainNoFit(specimens)
  if (because !== null) return { ok: false, because }
  const { slope, lives } = fitCommonSlope([specimens])
  const [life] = lives
  if (life === undefined) throw new RangeError('a fit has one life for each condition')
  return { ok: true, fit: { ...life, slope } }
}

/**
 * One slope for several conditions, such as radii, each with a characteristic life of its own: by maximum likelihood over all of them.
 *
 * Model    as fitWeibull, the likelihoods of the conditions multiplied
 * Holds    the scatter is the same under all conditions; common practice where they differ in strain alone
 * @param conditions  each with two failures at least, at different cycles or outlasted (`fitWeibull` says why not)
 * @throws  RangeError where a condition cannot be fitted by itself, or a specimen's cycles are not above 0
 * Source   as fitWeibull
 */
export function fitCommonSlope(conditions: readonly (readonly LifeSpecimen[])[]): CommonSlopeFit {
  if (conditions.length === 0) throw new RangeError('conditions is empty')
  for (const specimens of conditions) {
    requireCycles(specimens)
    const because = explainNoFit(specimens)
    if (because !== null) throw new RangeError(because)
  }
  const tests = conditions.map(summarise)
  const slope = findSlope(tests)
  const best = sumOf(tests, (test) => profileOfSlope(test, slope))
  return {
    slope: boundSlope(tests, slope, best),
    lives: tests.map((test, at) => ({
      specimens: conditions[at]?.length ?? 0,
      failures: test.failures,
      characteristicCycles: boundLife(tests, test, { slope, best, hazard: 1 }),
      medianCycles: boundLife(tests, test, { slope, best, hazard: Math.LN2 }),
    })),
  }
}

/**
 * Life before which a share fails, with bounds: what the band of a Weibull plot shows.
 *
 * @param conditions       as fitCommonSlope
 * @param at               the condition whose life is asked for
 * @param failureFraction  above 0 and below 1
 * @throws  RangeError naming the argument
 * Source   as fitWeibull
 */
export function fitLifeAtFraction(
  conditions: readonly (readonly LifeSpecimen[])[],
  at: number,
  failureFraction: number,
): BoundedEstimate {
  requireNumber('failureFraction', failureFraction, { above: 0, below: 1 })
  const tests = conditions.map(summarise)
  const test = tests[at]
  if (test === undefined) throw new RangeError(`there is no condition ${at}`)
  const slope = findSlope(tests)
  const best = sumOf(tests, (each) => profileOfSlope(each, slope))
  return boundLife(tests, test, { slope, best, hazard: -Math.log1p(-failureFraction) })
}

function requireCycles(specimens: readonly LifeSpecimen[]): void {
  for (const [index, { cycles }] of specimens.entries()) {
    requireNumber(`specimens[${index}].cycles`, cycles, { above: 0, unit: 'cycles' })
  }
}

/** Null where a slope can be told. */
function explainNoFit(specimens: readonly LifeSpecimen[]): string | null {
  const failed = specimens.filter(({ hasSurvived }) => !hasSurvived)
  if (failed.length === 0) return 'no specimen failed'
  if (failed.length === 1) return 'only one specimen failed: a slope takes two failures at least'
  const first = failed[0]?.cycles ?? 0
  const isAllAtOnce = failed.every(({ cycles }) => cycles === first)
  // A survivor that outlasted them shows scatter, which has a slope.
  if (isAllAtOnce && specimens.every(({ cycles }) => cycles <= first)) {
    return 'all failures came at the same number of cycles: the inspection interval is wider than the scatter'
  }
  return null
}

/** Logarithms of the cycles over the geometric mean of the failures, so that powers of them stay within range. */
interface Summary {
  readonly failures: number
  readonly logs: readonly number[]
  readonly failedLogSum: number
  readonly origin: number
}

function summarise(specimens: readonly LifeSpecimen[]): Summary {
  const failed = specimens.filter(({ hasSurvived }) => !hasSurvived)
  const origin = failed.reduce((sum, { cycles }) => sum + Math.log(cycles), 0) / failed.length
  const logs = specimens.map(({ cycles }) => Math.log(cycles) - origin)
  const failedLogSum = failed.reduce((sum, { cycles }) => sum + Math.log(cycles) - origin, 0)
  return { failures: failed.length, logs, failedLogSum, origin }
}

const sumOf = (tests: readonly Summary[], read: (test: Summary) => number): number =>
  tests.reduce((sum, test) => sum + read(test), 0)

/** Log of the sum of t^slope, and the mean of ln t weighted by t^slope. */
function weigh({ logs }: Summary, slope: number): { readonly logSum: number; readonly mean: number } {
  const top = slope * Math.max(...logs)
  let sum = 0
  let weighted = 0
  for (const log of logs) {
    const weight = Math.exp(slope * log - top)
    sum += weight
    weighted += weight * log
  }
  return { logSum: top + Math.log(sum), mean: weighted / sum }
}

/** Rise of a condition's profile likelihood with the slope; it falls throughout. */
function scoreOfSlope(test: Summary, slope: number): number {
  return test.failures / slope + test.failedLogSum - test.failures * weigh(test, slope).mean
}

function findSlope(tests: readonly Summary[]): number {
  return findZeroSlope((slope) => sumOf(tests, (test) => scoreOfSlope(test, slope)))
}

/** Where a score that falls with the slope passes zero, within the slopes that can be told. */
function findZeroSlope(scoreAt: (slope: number) => number): number {
  const score = (logSlope: number): number => scoreAt(Math.exp(logSlope))
  const [low, high] = [Math.log(SMALLEST_SLOPE), Math.log(LARGEST_SLOPE)]
  if (score(high) >= 0) return LARGEST_SLOPE
  if (score(low) <= 0) return SMALLEST_SLOPE
  return Math.exp(findRoot(score, { low, high, tolerance: LOG_TOLERANCE }).root)
}

/** Log likelihood at a slope with the scale that suits it best, but for a constant. */
function profileOfSlope(test: Summary, slope: number): number {
  const { failures, failedLogSum } = test
  return failures * Math.log(slope) + slope * failedLogSum - failures * (weigh(test, slope).logSum - Math.log(failures))
}

function boundSlope(tests: readonly Summary[], slope: number, best: number): BoundedEstimate {
  const fall = (logSlope: number) =>
    2 * (best - sumOf(tests, (test) => profileOfSlope(test, Math.exp(logSlope)))) - CHI_SQUARE_90
  const at = Math.log(slope)
  const find = (end: number): number | null =>
    end === at || fall(end) <= 0
      ? null
      : Math.exp(findRoot(fall, { low: Math.min(at, end), high: Math.max(at, end), tolerance: LOG_TOLERANCE }).root)
  return { value: slope, low: find(Math.log(SMALLEST_SLOPE)), high: find(Math.log(LARGEST_SLOPE)) }
}

/** @param hazard  -ln(1 - F) of the share F that fails before the life: 1 for the characteristic life, ln 2 for the median */
function boundLife(
  tests: readonly Summary[],
  test: Summary,
  { slope, best, hazard }: { readonly slope: number; readonly best: number; readonly hazard: number },
): BoundedEstimate {
  const { failures, failedLogSum } = test
  const others = tests.filter((each) => each !== test)
  const logLife = (weigh(test, slope).logSum - Math.log(failures) + Math.log(hazard)) / slope
  const profile = (log: number): number => {
    const of = (own: number): number =>
      failures * Math.log(own) +
      own * (failedLogSum - failures * log) +
      failures * Math.log(hazard) -
      hazard * Math.exp(Math.min(700, weigh(test, own).logSum - own * log)) +
      sumOf(others, (other) => profileOfSlope(other, own))
    return of(findSlopeAtLife(test, others, log, hazard)) + failures
  }
  const fall = (log: number) => 2 * (best - profile(log)) - CHI_SQUARE_90
  const find = (side: 1 | -1): number | null => {
    for (let step = 0.25; step <= FURTHEST_BOUND; step *= 2) {
      const end = logLife + side * step
      if (fall(end) > 0) {
        const { root } = findRoot(fall, {
          low: Math.min(logLife, end),
          high: Math.max(logLife, end),
          tolerance: LOG_TOLERANCE,
        })
        return Math.exp(root + test.origin)
      }
    }
    return null
  }
  return { value: Math.exp(logLife + test.origin), low: find(-1), high: find(1) }
}

/** Slope that suits best where the life before which a share fails is given for one condition: the score falls with the slope. */
function findSlopeAtLife(test: Summary, others: readonly Summary[], logLife: number, hazard: number): number {
  const { failures, failedLogSum, logs } = test
  return findZeroSlope((slope) => {
    let weighted = 0
    for (const log of logs) weighted += Math.exp(Math.min(700, slope * (log - logLife))) * (log - logLife)
    const own = failures / slope + failedLogSum - failures * logLife - hazard * weighted
    return own + sumOf(others, (other) => scoreOfSlope(other, slope))
  })
}
