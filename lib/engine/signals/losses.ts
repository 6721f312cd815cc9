import { SPEED_OF_LIGHT, VACUUM_PERMITTIVITY } from './constants'
import { getLineFigures } from './line-figures'
import type { LineConductor, LineSection } from './section'
import { solveSection } from './solve-section'

/** Permeability of vacuum, H/m, from the two constants that it follows from. */
const VACUUM_PERMEABILITY = 1 / (VACUUM_PERMITTIVITY * SPEED_OF_LIGHT ** 2)
const DB_PER_NEPER = 20 / Math.LN10
/** Walls recede by this share of the smallest dimension: small beside it, large beside what a solution is off. Our choice. */
const RECESSION_SHARE = 0.01
/** Permittivities rise by this share. */
const PERMITTIVITY_STEP = 0.02

/** What of a line's losses does not depend on frequency. */
export interface LossBasis {
  readonly impedanceOhm: number
  readonly effectivePermittivity: number
  /** Resistance per length over surface resistance, 1/m: current at the faces alone, return in the planes included. */
  readonly resistanceShape: number
  /** Share of the energy that is in dielectrics: 1 where the line is embedded, less where part of the field is in air. */
  readonly dielectricShare: number
  /** Copper of the line itself, where the current fills it. */
  readonly crossSectionMm2: number
}

/**
 * What the losses of a single line rest on, by three field solutions.
 *
 * Model    conductor: the rule of incremental inductance (Wheeler, Proc. IRE 30 (1942) 412, from memory): resistance is surface resistance / µ0 times the change of the
 *          outer inductance as every copper face recedes. Dielectric: the first-order change of the capacitance with the permittivity.
 * Range    faces thicker than two skin depths; one line
 * @returns null where the section has no solution, is a pair, or has copper without thickness
 */
export function findLossBasis(section: LineSection): LossBasis | null {
  const [line, ...others] = section.conductors
  if (line === undefined || others.length > 0 || line.thicknessUm === 0) return null
  const solved = solveSection(section)
  if (!solved.ok) return null
  const recessionUm = RECESSION_SHARE * Math.min(line.thicknessUm, line.bottomWidthUm, line.topWidthUm)
  const receded = solveSection(recede(section, line, recessionUm))
  const raised = solveSection({
    ...section,
    slabs: section.slabs.map(({ thicknessUm, relativePermittivity }) => ({
      thicknessUm,
      relativePermittivity: relativePermittivity === 1 ? 1 : relativePermittivity * (1 + PERMITTIVITY_STEP),
    })),
  })
  if (!receded.ok || !raised.ok) return null
  const inductanceOf = ({ capacitanceInAir }: typeof solved) =>
    1 / (SPEED_OF_LIGHT ** 2 * (capacitanceInAir[0]?.[0] ?? Number.NaN))
  const { impedanceOhm, effectivePermittivity } = getLineFigures(solved)
  const raisedPermittivity = getLineFigures(raised).effectivePermittivity
  return {
    impedanceOhm,
    effectivePermittivity,
    resistanceShape: (inductanceOf(receded) - inductanceOf(solved)) / (recessionUm * 1e-6) / VACUUM_PERMEABILITY,
    dielectricShare: (raisedPermittivity - effectivePermittivity) / (PERMITTIVITY_STEP * effectivePermittivity),
    crossSectionMm2: ((line.bottomWidthUm + line.topWidthUm) / 2) * line.thicknessUm * 1e-6,
  }
}

/** Every copper face moved back by the same length, planes included; without dielectrics, which an inductance does not see. */
function recede(section: LineSection, line: LineConductor, byUm: number): LineSection {
  const belowUm = section.hasPlaneBelow ? byUm : 0
  const aboveUm = section.hasPlaneAbove ? byUm : 0
  const heightUm = section.slabs.reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
  return {
    ...section,
    slabs: [{ thicknessUm: heightUm + belowUm + aboveUm, relativePermittivity: 1 }],
    conductors: [
      {
        ...line,
        bottomUm: line.bottomUm + belowUm + byUm,
        thicknessUm: line.thicknessUm - 2 * byUm,
        bottomWidthUm: line.bottomWidthUm - 2 * byUm,
        topWidthUm: line.topWidthUm - 2 * byUm,
      },
    ],
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
 * Loss of a line at a frequency.
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
