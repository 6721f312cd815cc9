import { requireNumber } from '../numerics'
import { inSentence } from '../units'

/** A crossed hatch: bars of one width at one pitch in two families at right angles to each other. */
export interface HatchPattern {
  readonly barOverPitch: number
  /** Of the nearer family of bars to the arc of the bend. */
  readonly angleDeg: number
}

interface HatchMaterials {
  readonly modulusGpa: number
  readonly poisson: number
  readonly fillModulusGpa: number
  readonly fillPoisson: number
  /** A strip much wider than the pitch is held sideways; a narrow one contracts freely. */
  readonly lateral: 'held' | 'free'
}

/** Ends of the tables: bar over pitch that was solved. */
export const HATCH_BAR_OVER_PITCH = { low: 0.2, high: 0.5 } as const
/** Angles that were solved. */
export const HATCH_ANGLES_DEG = [0, 45] as const

const SOLVED_RATIOS = [0.2, 0.4, 0.5] as const

type Row = readonly [number, number, number]

/**
 * Share of a solid plane's modulus at the solved ratios, held and free alike against a plane held or free in the same way; with air in the
 * openings, and as the share to enter where adhesive fills them.
 */
const TABLES: Record<
  (typeof HATCH_ANGLES_DEG)[number],
  Record<'held' | 'free', { readonly air: Row; readonly filled: Row }>
> = {
  45: {
    held: { air: [0.105, 0.274, 0.401], filled: [0.109, 0.282, 0.41] },
    free: { air: [0.0208, 0.174, 0.326], filled: [0.0272, 0.183, 0.336] },
  },
  0: {
    held: { air: [0.187, 0.392, 0.507], filled: [0.19, 0.398, 0.513] },
    free: { air: [0.21, 0.432, 0.548], filled: [0.214, 0.437, 0.553] },
  },
}

/** Whether the tables reach a pattern; if not, why, as a clause. */
export function explainOutsideHatchTable({ barOverPitch, angleDeg }: HatchPattern): string | null {
  const { low, high } = HATCH_BAR_OVER_PITCH
  if (HATCH_ANGLES_DEG.every((angle) => angle !== angleDeg)) {
    return `the stiffness of a hatch is known for bars at ${HATCH_ANGLES_DEG.join('° and ')}°, not at ${angleDeg}°`
  }
  // Ratios of typed lengths carry rounding.
  if (barOverPitch < low - 1e-9 || barOverPitch > high + 1e-9) {
    return `the stiffness of a hatch is known for bar over pitch of ${low} to ${high}, not of ${inSentence(barOverPitch)}`
  }
  return null
}

/**
 * In-plane modulus of a hatched foil along the arc of the bend; it sits away from the axis, so that this governs its part in bending.
 *
 * Model    table of a unit cell of square hatch, parabola through its three ratios of bar to pitch; share f of the solid plane's modulus, and
 *          1 - f of the fill's
 * Holds    bar over pitch 0.2 to 0.5, bars at 0 or 45 degrees to the arc, Poisson ratio near 0.34. Strain at the crossings of bars is not in it.
 * @returns GPa; null outside the table
 * @throws  RangeError naming the argument
 * Source   SOURCES.finiteElementBending; cases in test/standards/finite-elements
 */
export function hatchModulusGpa(pattern: HatchPattern, materials: HatchMaterials): number | null {
  requireNumber('barOverPitch', pattern.barOverPitch, { above: 0, below: 1 })
  if (explainOutsideHatchTable(pattern) !== null) return null
  const table = TABLES[pattern.angleDeg === 45 ? 45 : 0][materials.lateral]
  const { modulusGpa, poisson, fillModulusGpa, fillPoisson, lateral } = materials
  const share = interpolate(fillModulusGpa > 0 ? table.filled : table.air, pattern.barOverPitch)
  const isHeld = lateral === 'held'
  const solidGpa = modulusGpa / (isHeld ? 1 - poisson ** 2 : 1)
  const fillGpa = fillModulusGpa / (isHeld ? 1 - fillPoisson ** 2 : 1)
  return share * solidGpa + (1 - share) * fillGpa
}

/**
 * The same as the width of solid copper in plane strain that is as stiff, beside fill in plane strain: what a section takes.
 *
 * @returns the share for a wide strip, which a circuit is, and that of a narrow one; where one goes over into the other is not known.
 *          Null outside the table
 */
export function hatchWidthFraction(
  pattern: HatchPattern,
  materials: Omit<HatchMaterials, 'lateral'>,
): { wide: number; narrow: number } | null {
  const solidGpa = materials.modulusGpa / (1 - materials.poisson ** 2)
  const fillGpa = materials.fillModulusGpa / (1 - materials.fillPoisson ** 2)
  const shareOf = (lateral: 'held' | 'free'): number | null => {
    const modulusGpa = hatchModulusGpa(pattern, { ...materials, lateral })
    return modulusGpa === null ? null : (modulusGpa - fillGpa) / (solidGpa - fillGpa)
  }
  const wide = shareOf('held')
  const narrow = shareOf('free')
  return wide === null || narrow === null ? null : { wide, narrow }
}

/** Newton's form of the parabola through the three solved ratios. */
function interpolate([first, second, third]: Row, ratio: number): number {
  const [a, b, c] = SOLVED_RATIOS
  const slope = (second - first) / (b - a)
  const bend = ((third - second) / (c - b) - slope) / (c - a)
  return first + (ratio - a) * (slope + (ratio - b) * bend)
}
