import {
  type CommonSlopeFit,
  findFatigueDuctility,
  fitCommonSlope,
  fitWeibull,
  type LifeSpecimen,
  MAX_TEST_CYCLES,
  mandrelStrainRangeFraction,
  strainRangeOfMotion,
} from '../life'
import { findLibraryMaterial } from '../materials'
import { groupBy } from '../numerics'
import type { LimitOwner } from '../results'
import { inSentence } from '../units'
import type { FlexTestRow } from './row'
import type { TestedConstant, TestedLife } from './tested-life'

/** Fewer failures than this give bounds that say nothing: our choice. */
export const LEAST_FAILURES = 3

/** Specimens of a set that were bent to one radius. */
export interface FlexTestCondition {
  readonly insideRadiusMm: number
  readonly thicknessUm: number
  /** Null where it was not stated. */
  readonly strainRangePct: number | null
  readonly specimens: readonly (LifeSpecimen & { readonly specimen: string })[]
  /** Why the fit leaves it out; null where it counts. */
  readonly leftOut: string | null
  /** Place among the conditions that were fitted; null where it was left out. */
  readonly fitted: number | null
  readonly fatigueDuctility: TestedConstant | null
}

/** One set, with what it gives, or why it gives nothing. */
export interface FlexTestSet {
  readonly name: string
  readonly first: FlexTestRow
  readonly conditions: readonly FlexTestCondition[]
  readonly specimens: number
  readonly failures: number
  readonly fit: CommonSlopeFit | null
  readonly tested: TestedLife | null
  /** Why results cannot use the set; null where they can. */
  readonly because: string | null
  /** Why it gives no ductility; null where it does. */
  readonly noDuctilityBecause: string | null
}

/** Sets of a sheet in the order in which they begin, each fitted: pure, and the same for the same rows. */
export function fitFlexTestSets(rows: readonly FlexTestRow[], owner: LimitOwner): FlexTestSet[] {
  const bySet = groupBy(rows, ({ set }) => set.toLowerCase())
  return [...bySet.values()].flatMap((own) => {
    const [first] = own
    return first === undefined ? [] : [fitSet(first, own, owner)]
  })
}

/** What evaluations can use of a sheet. */
export function listTestedLives(rows: readonly FlexTestRow[], owner: LimitOwner): TestedLife[] {
  return fitFlexTestSets(rows, owner).flatMap(({ tested }) => (tested === null ? [] : [tested]))
}

function fitSet(first: FlexTestRow, rows: readonly FlexTestRow[], owner: LimitOwner): FlexTestSet {
  const groups = [...groupBy(rows, ({ insideRadiusMm }) => insideRadiusMm).entries()].toSorted(([a], [b]) => a - b)
  const grouped = groups.map(([, own]) => ({ own, specimens: own.map(toSpecimen) }))
  const readings = grouped.map(({ specimens }) => fitWeibull(specimens))
  const fittable = grouped.filter((_, at) => readings[at]?.ok === true)
  const specimens = fittable.flatMap((each) => each.specimens)
  const failed = specimens.filter(({ hasSurvived }) => !hasSurvived)
  const because =
    failed.length >= LEAST_FAILURES
      ? null
      : explainTooFew(rows.filter(({ result }) => result === 'failed').length, readings)
  const fit = because === null ? fitCommonSlope(fittable.map((each) => each.specimens)) : null
  let fittedCount = 0
  const conditions = grouped.map(({ own, specimens: each }, at): FlexTestCondition => {
    const reading = readings[at]
    const isFitted = fit !== null && reading?.ok === true
    const fitted = isFitted ? fittedCount : null
    if (isFitted) fittedCount += 1
    const median = fitted === null ? null : (fit?.lives[fitted]?.medianCycles ?? null)
    const row = own[0] ?? first
    const strainRangePct = findStrainRangePct(row)
    return {
      insideRadiusMm: row.insideRadiusMm,
      thicknessUm: row.thicknessUm,
      strainRangePct,
      specimens: each,
      leftOut: reading?.ok === false ? reading.because : null,
      fitted,
      fatigueDuctility:
        median === null || strainRangePct === null ? null : findDuctility(first.foil, strainRangePct, median),
    }
  })
  const used = conditions.filter(({ fitted }) => fitted !== null)
  const fatigueDuctility = combine(used.map((each) => each.fatigueDuctility))
  const common = { name: first.set, first, conditions, specimens: rows.length, failures: countFailed(rows) }
  if (fit === null) return { ...common, fit: null, tested: null, because, noDuctilityBecause: because }
  const noDuctilityBecause = fatigueDuctility === null ? explainNoDuctility(first, used) : null
  if (first.kind === 'bare-foil' && fatigueDuctility === null) {
    return { ...common, fit, tested: null, because: noDuctilityBecause, noDuctilityBecause }
  }
  return {
    ...common,
    fit,
    tested: makeTested(first, rows, owner, { used, fit, fatigueDuctility }),
    because: null,
    noDuctilityBecause,
  }
}

function makeTested(
  first: FlexTestRow,
  rows: readonly FlexTestRow[],
  owner: LimitOwner,
  {
    used,
    fit,
    fatigueDuctility,
  }: {
    readonly used: readonly FlexTestCondition[]
    readonly fit: CommonSlopeFit
    readonly fatigueDuctility: TestedConstant | null
  },
): TestedLife {
  const specimens = used.flatMap((each) => each.specimens)
  const failed = specimens.filter(({ hasSurvived }) => !hasSurvived)
  const strains = used.flatMap(({ strainRangePct }) => (strainRangePct === null ? [] : [strainRangePct]))
  const isCircuit = first.kind === 'circuit'
  return {
    owner,
    set: first.set,
    kind: first.kind,
    foil: first.foil,
    foilUm: first.foilUm,
    motion: first.motion,
    specimens: specimens.length,
    failures: failed.length,
    slope: isCircuit ? fit.slope : null,
    fatigueDuctility,
    radiusRatio: isCircuit
      ? rangeOf(used.map(({ insideRadiusMm, thicknessUm }) => (1000 * insideRadiusMm) / thicknessUm))
      : null,
    medians: isCircuit
      ? used.flatMap(({ insideRadiusMm, thicknessUm, fitted }) => {
          const low = fitted === null ? null : (fit.lives[fitted]?.medianCycles.low ?? null)
          return low === null ? [] : [{ radiusRatio: (1000 * insideRadiusMm) / thicknessUm, lowCycles: low }]
        })
      : [],
    strainRangePct: strains.length === used.length ? rangeOf(strains) : null,
    cycles: {
      low: Math.min(...failed.map(({ cycles }) => cycles)),
      high: Math.max(...specimens.map(({ cycles }) => cycles)),
    },
    temperatureDegC: first.temperatureDegC,
    reports: [...new Set(rows.map(({ report }) => report).filter((report) => report !== ''))],
  }
}

const toSpecimen = ({ specimen, cycles, result }: FlexTestRow) => ({
  specimen,
  cycles,
  hasSurvived: result === 'survived',
})

const countFailed = (rows: readonly FlexTestRow[]): number => rows.filter(({ result }) => result === 'failed').length

const rangeOf = (values: readonly number[]) => ({ low: Math.min(...values), high: Math.max(...values) })

function explainTooFew(failedCount: number, readings: readonly ReturnType<typeof fitWeibull>[]): string {
  if (failedCount === 0) return 'no specimen failed: survivors alone tell neither slope nor ductility'
  const reasons = readings.flatMap((reading) => (reading.ok ? [] : [reading.because]))
  if (failedCount >= LEAST_FAILURES && reasons.length > 0) {
    return `fewer than ${LEAST_FAILURES} failures can be fitted: ${[...new Set(reasons)].join('; ')}`
  }
  return `${failedCount === 1 ? 'only one specimen' : `only ${failedCount} specimens`} failed: it takes ${LEAST_FAILURES} failures at least`
}

/** Strain range of the copper over one cycle: as stated, or of bare foil on its mandrel, which one way is half of to and fro. */
function findStrainRangePct(row: FlexTestRow): number | null {
  if (row.kind === 'circuit') return row.strainRangePct
  const toAndFro = mandrelStrainRangeFraction({
    coreThicknessUm: row.foilUm,
    totalThicknessUm: row.thicknessUm,
    mandrelRadiusMm: row.insideRadiusMm,
  })
  return 100 * strainRangeOfMotion(toAndFro / 2, row.motion)
}

/**
 * Ductility that explains a median life and its bounds, with strength and modulus of the foil's record.
 *
 * Holds    medians up to 1e5 cycles: beyond, the relation's strength term rules and has two ductilities for one life
 * @returns null where nobody can tell the value or one of its bounds
 */
function findDuctility(
  foilId: string,
  strainRangePct: number,
  { value, low, high }: { readonly value: number; readonly low: number | null; readonly high: number | null },
): TestedConstant | null {
  const material = findLibraryMaterial(foilId)
  if (material?.foil == null || low === null || high === null || low < 1 || high > MAX_TEST_CYCLES) return null
  const { foil, modulusGpa } = material
  const find = (cycles: number) =>
    findFatigueDuctility({
      cycles,
      strainRangeFraction: strainRangePct / 100,
      tensileStrengthMpa: foil.tensileStrengthMpa.value,
      modulusGpa: modulusGpa.value,
    })
  const [own, least, most] = [find(value), find(low), find(high)]
  return own === null || least === null || most === null ? null : { value: own, low: least, high: most }
}

/** Over several radii: the geometric mean, between the least and the greatest bound. Our choice: radii that disagree widen the range. */
function combine(constants: readonly (TestedConstant | null)[]): TestedConstant | null {
  const known = constants.flatMap((each) => (each === null ? [] : [each]))
  if (known.length === 0 || known.length < constants.length) return null
  return {
    value: Math.exp(known.reduce((sum, { value }) => sum + Math.log(value), 0) / known.length),
    low: Math.min(...known.map(({ low }) => low)),
    high: Math.max(...known.map(({ high }) => high)),
  }
}

function explainNoDuctility(first: FlexTestRow, used: readonly FlexTestCondition[]): string {
  if (first.kind === 'circuit' && used.some(({ strainRangePct }) => strainRangePct === null)) {
    return 'no ductility: the strain range of the copper is not stated at every radius'
  }
  const without = used.filter(({ fatigueDuctility }) => fatigueDuctility === null)
  // Where other radii give one, it stands in their rows, and the set still uses none.
  const where =
    without.length === used.length
      ? 'no ductility:'
      : `no ductility for the set: at inside radius ${without.map(({ insideRadiusMm }) => inSentence(insideRadiusMm, 'mm')).join(' and ')}`
  return `${where} the median life, with its bounds, does not lie between 1 and 100 000 cycles, where ductility decides, or no ductility up to 5 explains it`
}
