import { requireNumber } from '../numerics'
import type { SourceKey } from '../sources'
import { inSentence } from '../units'

/**
 * Allowable deformation of copper by use, per cent, as reproduced from the design standard. No value was found for
 * electrodeposited foil that is flexed to install. Source SOURCES.ipc2223.
 */
export const HANDBOOK_DEFORMATION_PCT = {
  'fold-once': { 'rolled-annealed': 16, electrodeposited: 11 },
  'flex-to-install': { 'rolled-annealed': 10, electrodeposited: null },
  dynamic: { 'rolled-annealed': 0.3, electrodeposited: 0.3 },
} as const satisfies Record<string, Record<'rolled-annealed' | 'electrodeposited', number | null>>

/** What the formula needs to know of the construction; thicknesses of the finished circuit. */
export type HandbookConstruction =
  | { sides: 'single'; copperThicknessUm: number; coverThicknessUm: number }
  | { sides: 'double'; copperThicknessUm: number; coverThicknessUm: number; dielectricThicknessUm: number }
  | { sides: 'multilayer'; coverThicknessUm: number; midPlaneToOuterCopperUm: number }

export interface HandbookRadius {
  /** Not below 0. */
  minInsideRadiusMm: number
  /** What the formula gives, which may be negative. */
  formulaRadiusUm: number
  clamped: boolean
  /** In the standard's symbols. */
  formula: string
  source: SourceKey
  warning: string | null
}

const UM_PER_MM = 1000
const MAX_LAYER_UM = 1e5

/**
 * Minimum inside radius by the design standard's formula.
 *
 * Model    single-sided  R = (c / 2) (100 - E_B) / E_B - D
 *          double-sided  R = (d / 2 + c) (100 - E_B) / E_B - D
 *          multilayer    R = s (100 - E_B) / E_B - D
 *          c copper, d dielectric between the copper layers, D cover on the inside, E_B allowable deformation in %, s from
 *          the mid-plane to the outermost copper face
 * Holds    it is the strain geometry with an assumed axis: mid-copper, or the mid-plane. It has no floor and goes
 *          negative for thin copper under a thick cover: then 0 is returned, with a warning.
 * @param allowableDeformationPct  above 0 and below 100
 * @throws  RangeError naming the argument
 * Source   SOURCES.ipc2223 (single-sided), SOURCES.ipc2223Recalled (others); check values in test/standards/bending
 * @example 35 um copper under 50 um cover at 0.3 %: 5.77 mm
 */
export function computeHandbookRadius(
  construction: HandbookConstruction,
  allowableDeformationPct: number,
): HandbookRadius {
  requireNumber('allowableDeformationPct', allowableDeformationPct, { above: 0, below: 100, unit: '%' })
  const coverUm = requireLayer('coverThicknessUm', construction.coverThicknessUm)
  const { armUm, formula, source } = describeConstruction(construction)
  const formulaRadiusUm = (armUm * (100 - allowableDeformationPct)) / allowableDeformationPct - coverUm
  const clamped = formulaRadiusUm < 0
  return {
    minInsideRadiusMm: Math.max(0, formulaRadiusUm) / UM_PER_MM,
    formulaRadiusUm,
    clamped,
    formula,
    source,
    warning: clamped
      ? `The formula gives ${inSentence(formulaRadiusUm, 'um')}: it has no floor and cannot be used at ${inSentence(allowableDeformationPct, 'pct')} here. A fold this tight needs a former and a trial.`
      : null,
  }
}

function describeConstruction(construction: HandbookConstruction): {
  armUm: number
  formula: string
  source: SourceKey
} {
  switch (construction.sides) {
    case 'single':
      return {
        armUm: requireLayer('copperThicknessUm', construction.copperThicknessUm, true) / 2,
        formula: 'R = (c/2)(100 - E_B)/E_B - D',
        source: 'ipc2223',
      }
    case 'double':
      return {
        armUm:
          requireLayer('dielectricThicknessUm', construction.dielectricThicknessUm) / 2 +
          requireLayer('copperThicknessUm', construction.copperThicknessUm, true),
        formula: 'R = (d/2 + c)(100 - E_B)/E_B - D',
        source: 'ipc2223Recalled',
      }
    case 'multilayer':
      return {
        armUm: requireLayer('midPlaneToOuterCopperUm', construction.midPlaneToOuterCopperUm, true),
        formula: 'R = s(100 - E_B)/E_B - D',
        source: 'ipc2223Recalled',
      }
  }
}

function requireLayer(name: string, valueUm: number, positive = false): number {
  return requireNumber(
    name,
    valueUm,
    positive ? { above: 0, atMost: MAX_LAYER_UM, unit: 'um' } : { atLeast: 0, atMost: MAX_LAYER_UM, unit: 'um' },
  )
}
