import { requireNumber } from '../numerics'
import type { BendLayer } from './layers'
import { computePullStrainPct } from './pull'
import type { Loading } from './strain'

const PCT = 100
/** A kilometre: as flat as makes no difference. */
const FLAT_RADIUS_MM = 1e6
/** Of the force. */
const FORCE_TOLERANCE = 1e-9

/** Stretching stiffness of a leaf while nothing yields, free to contract sideways: sum(E t), N per mm of width. */
export function stretchingNPerMm(layers: readonly BendLayer[]): number {
  return layers.reduce((sum, { thicknessUm, modulusGpa, conductor }) => {
    const coverage = conductor?.coverageFraction ?? 1
    // 1 GPa um is 1 N/mm.
    return sum + thicknessUm * (coverage * modulusGpa + (1 - coverage) * (conductor?.fillModulusGpa ?? 0))
  }, 0)
}

/** A leaf that is held at both ends and too short for its way round the bend. */
interface HeldLeaf {
  readonly insideRadiusMm: number
  readonly loading: Loading
  /** Of the leaf in the bend, and of all of it between the places where it is held. */
  readonly arcMm: number
  readonly lengthMm: number
  /** By how much it has to stretch. */
  readonly shortMm: number
}

/**
 * Strain that being too short brings a leaf in its bend.
 *
 * Model    one force all along the leaf: shortMm = arcMm e_bend(F) + (lengthMm - arcMm) e_straight(F), each e by computePullStrainPct. In the bend
 *          copper is past yield already and carries less, so that the bend stretches more than the straight rest.
 * Holds    a leaf that slides over its neighbours without friction (with friction the bend stretches less, or a place of its own more), and
 *          whose ends do not give
 * @param layers  of the leaf, innermost first
 * @returns null past MOST_PULL_STRAIN_PCT
 * @throws  RangeError naming the argument
 * Source   SOURCES.compositeBeam, SOURCES.plasticBending; bars of unequal length side by side in test/standards/bending
 */
export function computeHeldLeaf(
  layers: readonly BendLayer[],
  { insideRadiusMm, loading, arcMm, lengthMm, shortMm }: HeldLeaf,
): { readonly strainPct: number; readonly straightPct: number; readonly forceNPerMm: number } | null {
  requireNumber('arcMm', arcMm, { above: 0, unit: 'mm' })
  requireNumber('lengthMm', lengthMm, { atLeast: arcMm, unit: 'mm' })
  requireNumber('shortMm', shortMm, { atLeast: 0, unit: 'mm' })
  if (shortMm === 0) return { strainPct: 0, straightPct: 0, forceNPerMm: 0 }
  const at = (pullNPerMm: number) => {
    const strainPct = computePullStrainPct(layers, { insideRadiusMm, loading, pullNPerMm })
    const straightPct = computePullStrainPct(layers, { insideRadiusMm: FLAT_RADIUS_MM, loading, pullNPerMm })
    return strainPct === null || straightPct === null
      ? null
      : { strainPct, straightPct, longerMm: (arcMm * strainPct + (lengthMm - arcMm) * straightPct) / PCT }
  }
  // Nothing is stiffer than all of it elastic.
  let high = (stretchingNPerMm(layers) * shortMm) / lengthMm
  let low = 0
  while (high - low > FORCE_TOLERANCE * high) {
    const middle = (low + high) / 2
    const found = at(middle)
    if (found !== null && found.longerMm < shortMm) low = middle
    else high = middle
  }
  // The force at which it is just past its reach is no answer.
  const found = at(low)
  const isReached = at(high) !== null
  return found === null || !isReached
    ? null
    : { strainPct: found.strainPct, straightPct: found.straightPct, forceNPerMm: low }
}
