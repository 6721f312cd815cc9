import { findLibraryMaterial } from '@/lib/engine'
import {
  FLEX_TEST_KINDS,
  FLEX_TEST_MOTIONS,
  FLEX_TEST_RESULTS,
  type FlexTestCondition,
  type FlexTestRow,
  type FlexTestSet,
  type TestedConstant,
} from '@/lib/engine/flex-tests'
import type { BoundedEstimate } from '@/lib/engine/life'
import {
  asCount,
  capitalise,
  digitsAsComputed,
  digitsOfEnteredLength,
  formatEnteredLength,
  getShownUnit,
  inSentence,
  type LengthUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { PictureTable } from './picture'

/** What was tested, and whether results use it: the paragraph above a set's tables. */
export function describeFlexTestSet(set: FlexTestSet, chosen: LengthUnit = 'um'): string {
  const { foil, foilUm, kind, motion, temperatureDegC } = set.first
  const tested = [
    findLibraryMaterial(foil)?.name ?? foil,
    `${formatEnteredLength(foilUm, 'um', chosen)} foil`,
    kind === 'circuit' ? FLEX_TEST_KINDS.circuit : 'bare foil over mandrels',
    FLEX_TEST_MOTIONS[motion],
    temperatureDegC === null ? 'temperature not stated' : inSentence(temperatureDegC, 'degC'),
  ]
  const ductility =
    set.because === null && set.noDuctilityBecause !== null ? ` ${sentence(set.noDuctilityBecause)}` : ''
  return `${tested.join(', ')}. ${describeUse(set)}${ductility}`
}

function describeUse({ fit, tested, because }: FlexTestSet): string {
  if (because !== null || tested === null || fit === null) return `Not used in results: ${because ?? 'nothing fitted'}.`
  if (tested.slope === null)
    return 'Used for ductility alone: bare foil has no etched conductors, whose scatter the slope is.'
  const { value, low, high } = tested.slope
  const bounds = `90 % bounds ${low === null ? 'open' : inSentence(low)} to ${high === null ? 'open' : inSentence(high)}`
  return low === null
    ? `Weibull slope ${inSentence(value)}, ${bounds}: without a lower bound results cannot use it.`
    : `Weibull slope ${inSentence(value)}, ${bounds}; results use the lower bound.`
}

const sentence = (text: string) => `${capitalise(text)}.`

/** What a reader must know of a set beside its figures. */
export function cautionOfFlexTestSet({ specimens, conditions }: FlexTestSet): string {
  const cycles = conditions.flatMap((condition) => condition.specimens.map((each) => each.cycles))
  // Median rank of the first of n by Benard's approximation.
  const firstRankPct = (100 * 0.7) / (specimens + 0.4)
  return (
    `Tested up to ${asCount(Math.max(...cycles))} cycles, ${asCount(specimens)} specimens: longer lives, and survival above ` +
    `${inSentence(100 - Math.round(10 * firstRankPct) / 10, 'pct')}, are extrapolated along the fitted line. ` +
    'Survivors count as lives that lasted at least so long. Specimens are not the part: qualify by test.'
  )
}

/** Slope, lives and ductility at each radius of a set, with their bounds. */
export function listFlexTestConditions(set: FlexTestSet, chosen: LengthUnit = 'mm'): PictureTable {
  const unit = getShownUnit('mm', chosen)
  const column = (key: string, label: string, numeric = true) => ({ key, label, numeric })
  return {
    caption: `Conditions of set ${set.name}`,
    columns: [
      column('radius', withUnitInHead('Inside radius', unit)),
      column('ratio', 'R/t'),
      column('strain', 'Strain range, %'),
      column('specimens', 'Specimens'),
      column('failed', 'Failed'),
      column('characteristic', 'Life of 63.2 % failed, cycles (90 % bounds)'),
      column('median', 'Median life, cycles (90 % bounds)'),
      column('ductility', 'Fatigue ductility (90 % bounds)'),
    ],
    rows: set.conditions.map((condition) => makeCells(set, condition, unit)),
  }
}

function makeCells({ fit, first }: FlexTestSet, condition: FlexTestCondition, unit: LengthUnit) {
  const { insideRadiusMm, thicknessUm, strainRangePct, specimens, leftOut, fitted, fatigueDuctility } = condition
  const life = fitted === null ? null : (fit?.lives[fitted] ?? null)
  return {
    radius: digitsOfEnteredLength(insideRadiusMm, 'mm', unit),
    ratio: first.kind === 'circuit' ? digitsAsComputed((1000 * insideRadiusMm) / thicknessUm, 'times') : '',
    strain: strainRangePct === null ? 'not stated' : inSentence(strainRangePct),
    specimens: asCount(specimens.length),
    failed: asCount(specimens.filter(({ hasSurvived }) => !hasSurvived).length),
    characteristic: life === null ? (leftOut ?? '') : describeCycles(life.characteristicCycles),
    median: life === null ? '' : describeCycles(life.medianCycles),
    ductility: fatigueDuctility === null ? '' : describeConstant(fatigueDuctility),
  }
}

function describeCycles({ value, low, high }: BoundedEstimate): string {
  const digits = (cycles: number | null) => (cycles === null ? 'open' : digitsAsComputed(cycles, 'lifeCycles'))
  return `${digits(value)} (${digits(low)} to ${digits(high)})`
}

function describeConstant({ value, low, high }: TestedConstant): string {
  return `${inSentence(value)} (${inSentence(low)} to ${inSentence(high)})`
}

/** Every specimen as entered, with who tested it, when, and where that is written. */
export function listFlexTestSpecimens(rows: readonly FlexTestRow[], chosen: LengthUnit = 'mm'): PictureTable {
  const unit = getShownUnit('mm', chosen)
  const column = (key: string, label: string, numeric = false) => ({ key, label, numeric })
  return {
    caption: `Specimens of set ${rows[0]?.set ?? ''}`,
    columns: [
      column('specimen', 'Specimen'),
      column('radius', withUnitInHead('Inside radius', unit), true),
      column('cycles', 'Cycles', true),
      column('result', 'Result'),
      column('testedOn', 'Tested on'),
      column('laboratory', 'Laboratory'),
      column('report', 'Report'),
      column('note', 'Note'),
    ],
    rows: rows.map(({ specimen, insideRadiusMm, cycles, result, testedOn, laboratory, report, note }) => ({
      specimen,
      radius: digitsOfEnteredLength(insideRadiusMm, 'mm', unit),
      cycles: asCount(cycles),
      result: FLEX_TEST_RESULTS[result],
      testedOn: testedOn ?? 'not stated',
      laboratory: laboratory === '' ? 'not stated' : laboratory,
      report: report === '' ? 'not stated' : report,
      note,
    })),
  }
}
