import { rememberAnswers } from '../numerics'
import type { QuantityRange } from '../results'
import {
  farEndHalfDifference,
  getLineFigures,
  getNearEnd,
  getPairFigures,
  type LineSection,
  type MeshFineness,
  ROUGH_FINENESS,
  solveSection,
  USUAL_FINENESS,
} from '../signals'
import type { ZoneLine } from './zone-line'

type Solvable = Extract<ZoneLine, { kind: 'solvable' }>

export interface SolvedLine {
  /** Of a single line against its planes, or between the lines of a pair. */
  readonly impedanceOhm: number
  readonly effectivePermittivity: number
  readonly delayPsPerMm: number
}

/** Or the sentences that say why there is none. */
export type LineAnswer = SolvedLine | { readonly faults: readonly string[] }

/** A design has a few lines, and what an edit leaves as it is need not be solved again. */
const MOST_KEPT = 400

/** Solved line of a section; the same section is solved once. */
export const solveLine: (section: LineSection) => LineAnswer = rememberAnswers(MOST_KEPT, (section) =>
  answer(section, USUAL_FINENESS),
)

/** What a search asks on its way, and bounds that are wide anyhow: a few parts in a thousand, in a third of the time. */
export const solveRoughly: (section: LineSection) => LineAnswer = rememberAnswers(MOST_KEPT, (section) =>
  answer(section, ROUGH_FINENESS),
)

function answer(section: LineSection, fineness: MeshFineness): LineAnswer {
  const solution = solveSection(section, fineness)
  if (!solution.ok) return { faults: solution.faults }
  if (solution.names.length === 1) return getLineFigures(solution)
  const { differentialOhm, odd } = getPairFigures(solution)
  return {
    impedanceOhm: differentialOhm,
    effectivePermittivity: odd.effectivePermittivity,
    delayPsPerMm: odd.delayPsPerMm,
  }
}

/** What a line shows of a step on another one. */
export interface Coupling {
  /** Saturated, of the step; both lines ended in their own impedance. */
  readonly nearEndFraction: number
  /** The other convention: ¼(C_m/C + L_m/L), half of the coupler's coefficient. */
  readonly backwardFraction: number
  /** Far end, per delay of the coupled length over the rise time. */
  readonly farEndFraction: number
  readonly effectivePermittivity: number
}

/** Null where the section has no solution. */
export const solveCoupling: (section: LineSection) => Coupling | null = rememberAnswers(MOST_KEPT, (section) => {
  const solution = solveSection(section, ROUGH_FINENESS)
  if (!solution.ok) return null
  const pair = getPairFigures(solution)
  const { saturatedStepFraction, backwardFraction } = getNearEnd(pair)
  return {
    nearEndFraction: saturatedStepFraction,
    backwardFraction,
    farEndFraction: farEndHalfDifference(pair),
    effectivePermittivity: pair.even.effectivePermittivity,
  }
})

/** Coupling falls with distance: the least one that keeps it, by halving; null where none up to `most` does. */
export function findLeast(keeps: (size: number) => boolean, least: number, most: number): number | null {
  if (keeps(least)) return least
  if (!keeps(most)) return null
  let [low, high] = [least, most]
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2
    if (keeps(middle)) high = middle
    else low = middle
  }
  return high
}

export interface LineRange {
  readonly nominal: SolvedLine
  readonly rangeOhm: QuantityRange
}

/** At nominal and at both ends of what tolerances and constants allow. */
export function solveRange(line: Solvable, widthMm: number): LineRange | { readonly faults: readonly string[] } {
  const nominal = solveLine(line.makeSection('nominal', widthMm))
  if ('faults' in nominal) return nominal
  const low = solveLine(line.makeSection('low', widthMm))
  if ('faults' in low) return low
  const high = solveLine(line.makeSection('high', widthMm))
  if ('faults' in high) return high
  return {
    nominal,
    rangeOhm: {
      low: Math.min(low.impedanceOhm, nominal.impedanceOhm),
      high: Math.max(high.impedanceOhm, nominal.impedanceOhm),
    },
  }
}

/** What can be etched and laid out, and dielectrics that are sold for a flex or a thin board. */
const WIDTHS_MM = { low: 0.03, high: 3 } as const
const DISTANCES_UM = { low: 10, high: 400 } as const
/** To a hundredth of where it began. */
const HALVINGS = 7
const CLOSE_ENOUGH = 5e-4
const MOST_STEPS = 8

/** Width at which a line has its target, the pitch of a pair kept; null where no width in reach gives it. */
export function findWidthMm(line: Solvable, fromMm: number, targetOhm: number): number | null {
  return seek((widthMm) => line.makeSection('nominal', widthMm), fromMm, targetOhm, WIDTHS_MM)
}

/** Distance to the reference at which a line of this width has its target; null where none in reach gives it. */
export function findDistanceUm(line: Solvable, widthMm: number, targetOhm: number): number | null {
  if (line.distanceUm === 0) return null
  return seek(
    (distanceUm) => line.makeSection('nominal', widthMm, distanceUm / line.distanceUm),
    line.distanceUm,
    targetOhm,
    DISTANCES_UM,
  )
}

/** Impedance goes nearly in proportion to the logarithm of a width or a distance, so a secant on it needs a few solutions. */
function seek(
  makeSection: (size: number) => LineSection,
  from: number,
  targetOhm: number,
  { low, high }: { low: number; high: number },
): number | null {
  const at = (size: number) => {
    const found = solveRoughly(makeSection(size))
    return 'faults' in found ? null : found.impedanceOhm
  }
  let one = from
  let oneOhm = at(one)
  if (oneOhm === null) return null
  if (Math.abs(oneOhm / targetOhm - 1) < CLOSE_ENOUGH) return one
  let other = from * 1.15
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const otherOhm = at(other)
    if (otherOhm === null) return null
    if (Math.abs(otherOhm / targetOhm - 1) < CLOSE_ENOUGH) return other >= low && other <= high ? other : null
    const slope = Math.log(other / one) / (otherOhm - oneOhm)
    const next = other * Math.exp(Math.max(-1.2, Math.min(1.2, slope * (targetOhm - otherOhm))))
    // Twice beyond reach no step will come back.
    if (!(next > low / 4 && next < high * 4)) return null
    one = other
    oneOhm = otherOhm
    other = next
  }
  return null
}
