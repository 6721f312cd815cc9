import { SPEED_OF_LIGHT, VACUUM_PERMITTIVITY } from './constants'
import { getLineFigures, getPairFigures, type LineFigures } from './line-figures'
import type { LineSection } from './section'
import { type SectionSolution, solveSection } from './solve-section'

/** Permeability of vacuum, H/m, from the two constants that it follows from. */
const VACUUM_PERMEABILITY = 1 / (VACUUM_PERMITTIVITY * SPEED_OF_LIGHT ** 2)
const DB_PER_NEPER = 20 / Math.LN10
/** Walls recede by this share of the smallest dimension: small beside it, large beside what a solution is off. Our choice. */
const RECESSION_SHARE = 0.01
/** Permittivities rise by this share. */
const PERMITTIVITY_STEP = 0.02

/** How much the two lines of a pair may differ, as a share of their capacitance: the modes of unequal lines are others. Mesh error alone is below it. */
const EQUAL_LINES_SHARE = 1e-3

/** A line by itself, or a pair driven against each other (odd) and alike (even). */
export type LineMode = 'alone' | 'odd' | 'even'

/** What of a line's losses does not depend on frequency. Of a pair: what each line of it shows. */
export interface LossBasis {
  readonly mode: LineMode
  readonly impedanceOhm: number
  readonly effectivePermittivity: number
  /** Resistance per length over surface resistance, 1/m: current at the faces alone, return in the planes included. */
  readonly resistanceShape: number
  /** Share of the energy that is in dielectrics: 1 where the line is embedded, less where part of the field is in air. */
  readonly dielectricShare: number
  /** Copper of one line, where the current fills it. */
  readonly crossSectionMm2: number
}

/**
 * What the losses of a line, or of each mode of a pair, rest on, by three field solutions.
 *
 * Model    conductor: the rule of incremental inductance (Wheeler, Proc. IRE 30 (1942) 412, from memory): resistance is surface resistance / µ0 times the change of the
 *          outer inductance as every copper face recedes. Dielectric: the first-order change of the capacitance with the permittivity.
 * Range    faces thicker than two skin depths; one line, or two equal ones; all copper of one resistivity
 * @returns one basis for a single line, odd and even for a pair; none where the section has no solution, more than two lines or unequal ones, or copper without thickness
 */
export function findLossBases(section: LineSection): readonly LossBasis[] {
  const { conductors } = section
  const [line] = conductors.filter(({ isGrounded }) => isGrounded !== true)
  if (line === undefined || conductors.some(({ thicknessUm }) => thicknessUm === 0)) return []
  const solved = solveSection(section)
  if (!solved.ok) return []
  const modes = listModes(solved)
  if (modes.length === 0) return []
  const recessionUm =
    RECESSION_SHARE *
    Math.min(
      ...conductors.flatMap(({ thicknessUm, bottomWidthUm, topWidthUm }) => [thicknessUm, bottomWidthUm, topWidthUm]),
    )
  const receded = solveSection(recede(section, recessionUm))
  const raised = solveSection({
    ...section,
    slabs: section.slabs.map(({ thicknessUm, relativePermittivity }) => ({
      thicknessUm,
      relativePermittivity: relativePermittivity === 1 ? 1 : relativePermittivity * (1 + PERMITTIVITY_STEP),
    })),
  })
  if (!receded.ok || !raised.ok) return []
  // Of a mode, Z √ε is the impedance in air, c times its outer inductance.
  const inductanceOf = (solution: SectionSolution, mode: LineMode) => {
    const { impedanceOhm, effectivePermittivity } = readMode(solution, mode)
    return (impedanceOhm * Math.sqrt(effectivePermittivity)) / SPEED_OF_LIGHT
  }
  return modes.map((mode) => {
    const { impedanceOhm, effectivePermittivity } = readMode(solved, mode)
    const raisedPermittivity = readMode(raised, mode).effectivePermittivity
    return {
      mode,
      impedanceOhm,
      effectivePermittivity,
      resistanceShape:
        (inductanceOf(receded, mode) - inductanceOf(solved, mode)) / (recessionUm * 1e-6) / VACUUM_PERMEABILITY,
      dielectricShare: (raisedPermittivity - effectivePermittivity) / (PERMITTIVITY_STEP * effectivePermittivity),
      crossSectionMm2: ((line.bottomWidthUm + line.topWidthUm) / 2) * line.thicknessUm * 1e-6,
    }
  })
}

function listModes({ names, capacitance, capacitanceInAir }: SectionSolution): readonly LineMode[] {
  if (names.length === 1) return ['alone']
  if (names.length > 2) return []
  const areEqual = [capacitance, capacitanceInAir].every((matrix) => {
    const [one, other] = [matrix[0]?.[0] ?? Number.NaN, matrix[1]?.[1] ?? Number.NaN]
    return Math.abs(one - other) <= EQUAL_LINES_SHARE * one
  })
  return areEqual ? ['odd', 'even'] : []
}

const readMode = (solution: SectionSolution, mode: LineMode): LineFigures =>
  mode === 'alone' ? getLineFigures(solution) : getPairFigures(solution)[mode]

/** Every copper face moved back by the same length, planes included; without dielectrics, which an inductance does not see. */
function recede(section: LineSection, byUm: number): LineSection {
  const belowUm = section.hasPlaneBelow ? byUm : 0
  const aboveUm = section.hasPlaneAbove ? byUm : 0
  const heightUm = section.slabs.reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
  return {
    ...section,
    slabs: [{ thicknessUm: heightUm + belowUm + aboveUm, relativePermittivity: 1 }],
    conductors: section.conductors.map((each) => ({
      ...each,
      bottomUm: each.bottomUm + belowUm + byUm,
      thicknessUm: each.thicknessUm - 2 * byUm,
      bottomWidthUm: each.bottomWidthUm - 2 * byUm,
      topWidthUm: each.topWidthUm - 2 * byUm,
    })),
  }
}

export interface Copper {
  readonly resistivityOhmMm2PerM: number
  /** Root mean square height of the roughness; 0 is smooth. */
  readonly roughnessUm: number
}

export interface LineLoss {
  /** Of the copper, dB per m. */
  readonly conductorDbPerM: number
  /** Of the dielectrics, dB per m, for each 0.01 of their loss tangent. */
  readonly dielectricDbPerMPerHundredth: number
  /** Depth at which the current has fallen to 1/e, um. */
  readonly skinDepthUm: number
}

/**
 * Loss of a line, or of a mode of a pair, at a frequency.
 *
 * Model    surface resistance √(π f µ0 ρ), exact for a plane face. Below, the direct current's resistance is added as the root of the sum of squares, which joins both ends smoothly
 *          and is no more than that (our choice; the return's own direct resistance is left out). Roughness: the factor 1 + (2/π) atan(1.4 (rms/δ)²) of Hammerstad and Jensen (1980, from memory),
 *          which ends at 2 and is too low for rough foils above some GHz.
 * @param frequencyMhz  more than 0
 */
export function findLineLoss(basis: LossBasis, frequencyMhz: number, copper: Copper): LineLoss {
  const resistivity = copper.resistivityOhmMm2PerM * 1e-6
  const frequency = frequencyMhz * 1e6
  const surfaceOhm = Math.sqrt(Math.PI * frequency * VACUUM_PERMEABILITY * resistivity)
  const skinDepthUm = (resistivity / surfaceOhm) * 1e6
  const rough = 1 + (2 / Math.PI) * Math.atan(1.4 * (copper.roughnessUm / skinDepthUm) ** 2)
  const steady = copper.resistivityOhmMm2PerM / basis.crossSectionMm2
  const resistance = Math.hypot(steady, surfaceOhm * basis.resistanceShape * rough)
  const phase = (Math.PI * frequency * Math.sqrt(basis.effectivePermittivity)) / SPEED_OF_LIGHT
  return {
    conductorDbPerM: (DB_PER_NEPER * resistance) / (2 * basis.impedanceOhm),
    dielectricDbPerMPerHundredth: DB_PER_NEPER * phase * basis.dielectricShare * 0.01,
    skinDepthUm,
  }
}
