import { requireNumber } from '../numerics'

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

/**
 * How far a computed copper strain may be off, apart from materials and tolerances.
 *
 * @param radiusToThickness  inside radius over the thickness of the bonded section, >= 0
 * @returns per cent of the strain; null below LEAST_RADIUS_RATIO
 * @throws  RangeError naming the argument
 * Source   SOURCES.finiteElementBending
 */
export function accuracyOfStrainPct(radiusToThickness: number): number | null {
  requireNumber('radiusToThickness', radiusToThickness, { atLeast: 0 })
  for (let at = 0; at < KNOWN.length; at += 1) {
    const tighter = KNOWN[at]
    const wider = KNOWN[at - 1]
    if (tighter === undefined || radiusToThickness < tighter.ratio) continue
    if (wider === undefined) return tighter.accuracyPct
    const share = Math.log(radiusToThickness / tighter.ratio) / Math.log(wider.ratio / tighter.ratio)
    return tighter.accuracyPct * (wider.accuracyPct / tighter.accuracyPct) ** share
  }
  return null
}
