import { requireNumber } from '../numerics'
import type { Loading } from './strain'

/**
 * Inside radius over thickness below which no figure of strain is known to be right: there the unknown law of the films at large strain is
 * the error, not the formula.
 */
export const LEAST_RADIUS_RATIO = 5

/** Largest difference from finite elements, in per cent of the strain; between these ratios it is taken as straight on log axes. */
const KNOWN: readonly { readonly ratio: number; readonly accuracyPct: number }[] = [
  { ratio: 50, accuracyPct: 3 },
  { ratio: 10, accuracyPct: 16 },
  { ratio: LEAST_RADIUS_RATIO, accuracyPct: 25 },
]

/** Never surer than this, however wide the bend: what the cases of cycles show that the first bend does not. */
const LEAST_BY_LOADING_PCT: Readonly<Record<Loading, number>> = { once: 3, 'one-way': 4, reversed: 7 }
/**
 * Conductors with gaps are taken as free to contract sideways. Those 1.5 mm wide begin to be held by their own width (strain 7 % off, moment 4 %
 * low), and how wide they are no section knows.
 */
const LEAST_WITH_GAPS_PCT = 7

/**
 * How far a computed copper strain may be off, apart from materials and tolerances.
 *
 * @param radiusToThickness  inside radius over the thickness of the bonded section, >= 0
 * @param hasGaps            a conductor layer covers less than the whole width
 * @returns per cent of the strain; null below LEAST_RADIUS_RATIO
 * @throws  RangeError naming the argument
 * Source   SOURCES.finiteElementBending
 */
export function accuracyOfStrainPct(
  radiusToThickness: number,
  { loading = 'once', hasGaps = false }: { readonly loading?: Loading; readonly hasGaps?: boolean } = {},
): number | null {
  const byRadius = accuracyByRadiusPct(radiusToThickness)
  return byRadius === null ? null : Math.max(byRadius, LEAST_BY_LOADING_PCT[loading], hasGaps ? LEAST_WITH_GAPS_PCT : 0)
}

/** Said with the accuracy where conductors cover less than the width. */
export const NARROW_CONDUCTORS_NOTE =
  'Conductors are taken as free to contract sideways; wide ones among them are held in part, which is not modelled and is in the figure.'

/** The same for the moment of the formed state. */
const KNOWN_MOMENT: typeof KNOWN = [
  { ratio: 50, accuracyPct: 2 },
  { ratio: 10, accuracyPct: 7 },
  { ratio: LEAST_RADIUS_RATIO, accuracyPct: 15 },
]
const LEAST_MOMENT_WITH_GAPS_PCT = 5

/**
 * How far the moment of the bend may be off, apart from materials and tolerances.
 *
 * @returns per cent of the moment; null below LEAST_RADIUS_RATIO
 * @throws  RangeError naming the argument
 * Source   SOURCES.finiteElementBending
 */
export function accuracyOfMomentPct(radiusToThickness: number, hasGaps = false): number | null {
  const byRadius = accuracyByRadiusPct(radiusToThickness, KNOWN_MOMENT)
  return byRadius === null ? null : Math.max(byRadius, hasGaps ? LEAST_MOMENT_WITH_GAPS_PCT : 0)
}

function accuracyByRadiusPct(radiusToThickness: number, known = KNOWN): number | null {
  requireNumber('radiusToThickness', radiusToThickness, { atLeast: 0 })
  for (let at = 0; at < known.length; at += 1) {
    const tighter = known[at]
    const wider = known[at - 1]
    if (tighter === undefined || radiusToThickness < tighter.ratio) continue
    if (wider === undefined) return tighter.accuracyPct
    const share = Math.log(radiusToThickness / tighter.ratio) / Math.log(wider.ratio / tighter.ratio)
    return tighter.accuracyPct * (wider.accuracyPct / tighter.accuracyPct) ** share
  }
  return null
}
