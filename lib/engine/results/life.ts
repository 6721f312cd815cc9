import { MAX_CYCLES, MIN_CYCLES } from '../life'
import { asComputed, type ComputedFigure, digitsAsComputed, NO_FIGURE } from '../units'
import type { BendResult } from './bend'
import type { ConductorStrainResult } from './copper-strain'
import type { DamageResult } from './evaluation'
import { type Bound, getBoundPrefix, type Quantity, type QuantityRange } from './outcome'

/** Said in place of a figure that nobody can give. */
export const CANNOT_TELL = 'cannot tell'

/** A figure as it may be shown: the number with what it stands for, or that nobody can tell. */
export type Reading = Quantity | typeof CANNOT_TELL

type Lives = Pick<ConductorStrainResult, 'medianLifeCycles' | 'survivalLifeCycles' | 'isLifeAtCap'>
/** The median is the middle of the parts; the other is reached by the share that was asked for. */
export type LifeFigure = 'median' | 'survival'

/** A life past either end of the fatigue relation stands at that end: it is longer, or shorter, than its figure. */
function boundOf({ medianLifeCycles, isLifeAtCap }: Lives): Bound | undefined {
  if (isLifeAtCap) return 'longer-than'
  return medianLifeCycles !== null && medianLifeCycles <= MIN_CYCLES ? 'shorter-than' : undefined
}

function cyclesOf(value: number, bound: Bound | undefined): Quantity {
  if (bound === undefined) return { value, unit: 'cycles' }
  // Shorter than a part of a cycle is shorter than one: less than that is no number of cycles.
  return { value: bound === 'shorter-than' ? Math.max(MIN_CYCLES, value) : value, unit: 'cycles', bound }
}

/** The figure that the relation gives for a life, with the end that it stands at; null where none was computed. */
export function readRelationLife(lives: Lives, figure: LifeFigure = 'survival'): Quantity | null {
  const cycles = figure === 'median' ? lives.medianLifeCycles : lives.survivalLifeCycles
  return cycles === null ? null : cyclesOf(cycles, boundOf(lives))
}

type Bend = Pick<BendResult, 'modelLimits' | 'requiredCycles'>

/** Foil that would reach its cycles by its tensile strength alone; one that falls short even so falls short. */
function isUnproven({ lifeReach, survivalLifeCycles }: ConductorStrainResult, { requiredCycles }: Bend): boolean {
  return lifeReach === 'strength-governed' && (survivalLifeCycles ?? 0) >= (requiredCycles ?? 0)
}

/** A conductor's life in its bend, as every table shows it. */
export function readConductorLife(conductor: ConductorStrainResult, bend: Bend): Reading | null {
  const life = readRelationLife(conductor)
  if (life === null) return null
  return bend.modelLimits.length > 0 || isUnproven(conductor, bend) ? CANNOT_TELL : life
}

/** The least life of a bend, as every table, headline and sentence shows it. */
export function readBendLife(
  bend: Lives & Bend & { readonly conductors: BendResult['conductors'] },
  figure: LifeFigure = 'survival',
): Reading | null {
  const life = readRelationLife(bend, figure)
  if (life === null) return null
  // Copper whose life nobody can tell may be the first to break, unless another falls short before.
  const fallsShort = (bend.survivalLifeCycles ?? 0) < (bend.requiredCycles ?? 0)
  const isUnknown =
    bend.modelLimits.length > 0 || (!fallsShort && bend.conductors.some((conductor) => isUnproven(conductor, bend)))
  return isUnknown ? CANNOT_TELL : life
}

/** Both ends of a bend's life over its range; null where its life cannot be told either. */
export function readBendLifeRange(bend: BendResult): { readonly low: Quantity; readonly high: Quantity } | null {
  return readBendLife(bend) === CANNOT_TELL ? null : readRelationLifeRange(bend)
}

export function readRelationLifeRange({
  medianLifeCycles,
  survivalLifeCycles,
  survivalLifeRangeCycles: range,
}: Omit<Lives, 'isLifeAtCap'> & { readonly survivalLifeRangeCycles: QuantityRange | null }): {
  readonly low: Quantity
  readonly high: Quantity
} | null {
  if (range === null || medianLifeCycles === null || survivalLifeCycles === null) return null
  const survivalOverMedian = survivalLifeCycles / medianLifeCycles
  const end = (cycles: number): Quantity => {
    const median = cycles / survivalOverMedian
    // A hair inside the ends: the quotient is rounded.
    const bound =
      median >= MAX_CYCLES * (1 - 1e-12)
        ? 'longer-than'
        : median <= MIN_CYCLES * (1 + 1e-12)
          ? 'shorter-than'
          : undefined
    return cyclesOf(cycles, bound)
  }
  return { low: end(range.low), high: end(range.high) }
}

/** The strain of the copper that decides; nobody can tell it where no model reaches the bend. */
export function readBendStrain({
  peakStrainPct,
  modelLimits,
}: Pick<BendResult, 'peakStrainPct' | 'modelLimits'>): Reading | null {
  if (peakStrainPct === null) return null
  return modelLimits.length > 0 ? CANNOT_TELL : { value: peakStrainPct, unit: 'pct' }
}

/** The share of life that the bends of a layer use up together. */
export function readDamage({
  damageSum,
  cappedDamageSum,
  beyondModel,
}: Pick<DamageResult, 'damageSum' | 'cappedDamageSum' | 'beyondModel'>): Reading {
  if (beyondModel !== null) return CANNOT_TELL
  const bound = readDamageBound({ cappedDamageSum })
  return bound === undefined ? { value: damageSum, unit: 'fraction' } : { value: damageSum, unit: 'fraction', bound }
}

/** Lives that are longer than their figure use up less than is counted for them. */
export function readDamageBound({ cappedDamageSum }: Pick<DamageResult, 'cappedDamageSum'>): Bound | undefined {
  return cappedDamageSum > 0 ? 'less-than' : undefined
}

/**
 * A reading in words, by the number format of the caller.
 *
 * @param format  the number with its unit: `2.1e6 cycles`
 */
export function formatReading(reading: Reading | null, format: (quantity: Quantity) => string): string {
  if (reading === null) return NO_FIGURE
  return reading === CANNOT_TELL ? CANNOT_TELL : `${getBoundPrefix(reading.bound)}${format(reading)}`
}

/** The same as a computed figure with its unit: `longer than 2 × 10⁹ cycles`. */
export function formatComputedReading(reading: Reading | null, figure: ComputedFigure): string {
  return formatReading(reading, ({ value }) => asComputed(value, figure))
}

/** The same for a column whose head names the unit. */
export function formatComputedDigits(reading: Reading | null, figure: ComputedFigure): string {
  return formatReading(reading, ({ value }) => digitsAsComputed(value, figure))
}
