import { findSectionFaults, type LineSection } from './section'
import { solveCharges } from './solve-charges'
import { USUAL_FINENESS } from './solve-section'

/** A piece of a copper face with the charge on it. */
export interface ChargedFace {
  readonly fromUm: readonly [x: number, y: number]
  readonly toUm: readonly [x: number, y: number]
  /** Index of the conductor in the section. */
  readonly conductor: number
  /** Free charge per area, in units of the permittivity of vacuum times 1 V/µm, with each line at the potential that was asked for. */
  readonly density: number
}

/**
 * Charge on the faces of conductors: where it is dense the field is strong, and current crowds at the same places.
 *
 * @param potentials  of the lines that carry signals, in the order of the section, V
 * @returns null where the section has no solution
 */
export function findChargedFaces(section: LineSection, potentials: readonly number[]): readonly ChargedFace[] | null {
  if (findSectionFaults(section).length > 0) return null
  const lines = section.conductors.flatMap(({ isGrounded }, index) => (isGrounded === true ? [] : [index]))
  const [solved] = solveCharges(section, USUAL_FINENESS, lines, ['whole'])
  if (solved === undefined || typeof solved === 'string') return null
  return solved.listFaces().map(({ x, y, halfX, halfY, conductor, densities, scaleUm }) => ({
    fromUm: [(x - halfX) * scaleUm, (y - halfY) * scaleUm],
    toUm: [(x + halfX) * scaleUm, (y + halfY) * scaleUm],
    conductor,
    density: densities.reduce((sum, density, line) => sum + (density * (potentials[line] ?? 0)) / scaleUm, 0),
  }))
}
